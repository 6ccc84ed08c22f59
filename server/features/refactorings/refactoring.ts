/** What a refactoring is: where it is offered, as what, and the change that it makes once it is chosen. */
import type { Entry } from "../../../grammar/tree.ts";
import type { SpecDocument } from "../../house/document.ts";
import type { Fix } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import type { Refusal } from "../rename.ts";

/** Where the editor stands: lines of one entry. */
export interface Spot {
  readonly house: House;
  readonly document: SpecDocument;
  readonly entry: Entry;
  /** The lines within the entry that the selection touches; both the cursor's where nothing is selected. */
  readonly first: number;
  readonly last: number;
  /** The editor makes new files where an edit says so. */
  readonly createsFiles: boolean;
}

export type RefactoringKind = "refactor.extract" | "refactor.inline" | "refactor.move" | "refactor.rewrite";

export interface Offer {
  /** What it will do, in full: of all that is offered in one place no two say the same. */
  readonly title: string;
  /** Asked for only once it is chosen; may say why it cannot be done after all. */
  readonly edits: () => Fix["edits"] | Refusal;
}

/** One file each; listed in `all.ts`. */
export interface Refactoring {
  /** What an editor's command calls it by. */
  readonly name: string;
  /** Where it can be asked for, in words for whoever asked elsewhere. */
  readonly where: string;
  readonly kind: RefactoringKind;
  /** Asked on every move of the cursor: no more than the entry's own lines and what its names mean may be looked at. */
  readonly offers: (spot: Spot) => readonly Offer[];
}

/** Whether the cursor is on the entry's head or on one of its fields: where what is done to all of it belongs. */
export function isOnHeadOrField({ entry, first }: Spot): boolean {
  const kind = entry.lines[first]?.content.kind;
  return kind === "entry" || kind === "field";
}
