/** Every refactoring, in the order in which they are offered. */
import type { Range } from "vscode-languageserver-types";
import { entryAt, type SpecDocument } from "../../house/document.ts";
import type { House } from "../../house/house.ts";
import type { Refusal } from "../rename.ts";
import { markBatched } from "./batched.ts";
import { extractPrep } from "./extract.ts";
import { flattenRiff } from "./flatten.ts";
import { inlinePrep } from "./inline.ts";
import type { Offer, Refactoring, RefactoringKind, Spot } from "./refactoring.ts";
import { makeRiff } from "./riff.ts";
import { scale } from "./scale.ts";
import { sortPours } from "./sort.ts";
import { splitFile } from "./split.ts";

export const refactorings: readonly Refactoring[] = [
  makeRiff,
  flattenRiff,
  extractPrep,
  inlinePrep,
  scale,
  sortPours,
  markBatched,
  splitFile,
];

/** What the editor is told to expect. */
export const refactoringKinds: readonly RefactoringKind[] = ["refactor.extract", "refactor.inline", "refactor.move", "refactor.rewrite"];

export interface OfferedRefactoring extends Offer {
  readonly kind: RefactoringKind;
}

/** What is offered at a range; none over several entries. `createsFiles`: the editor makes new files where an edit says so. */
export function refactoringsAt(house: House, document: SpecDocument, range: Range, createsFiles: boolean): OfferedRefactoring[] {
  const spot = spotAt(house, document, range, createsFiles);
  return spot ? refactorings.flatMap(({ kind, offers }) => offers(spot).map((offer) => ({ ...offer, kind }))) : [];
}

/**
 * What a command of a `name` can do: at the range, else for the whole entry, as on its head, for whoever has
 * no menu to see where it is offered. Says where it can be asked for where there is nothing.
 */
export function refactoringNamed(
  house: House,
  document: SpecDocument,
  range: Range,
  name: string,
  createsFiles: boolean,
): readonly Offer[] | Refusal {
  const refactoring = refactorings.find((one) => one.name === name);
  const spot = refactoring && spotAt(house, document, range, createsFiles);
  if (!refactoring) return { because: `There is no refactoring “${name}”.` };
  const offers = spot ? refactoring.offers(spot) : [];
  const all = offers.length === 0 && spot ? refactoring.offers({ ...spot, first: 0, last: 0 }) : offers;
  return all.length > 0 ? all : { because: refactoring.where };
}

function spotAt(house: House, document: SpecDocument, { start, end }: Range, createsFiles: boolean): Spot | undefined {
  const first = entryAt(document, start.line);
  // A selection up to a line's start does not mean that line.
  const last = entryAt(document, end.character === 0 && end.line > start.line ? end.line - 1 : end.line);
  if (!first || first.entry !== last?.entry) return undefined;
  return { house, document, entry: first.entry, first: first.line, last: last.line, createsFiles };
}
