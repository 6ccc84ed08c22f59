/** Every refactoring, in the order in which they are offered. */
import type { Range } from "vscode-languageserver-types";
import { entryAt, type SpecDocument } from "../../house/document.ts";
import type { House } from "../../house/house.ts";
import { markBatched } from "./batched.ts";
import { extractPrep } from "./extract.ts";
import { flattenRiff } from "./flatten.ts";
import { inlinePrep } from "./inline.ts";
import type { Offer, Refactoring, RefactoringKind } from "./refactoring.ts";
import { makeRiff } from "./riff.ts";
import { scale } from "./scale.ts";
import { sortPours } from "./sort.ts";
import { splitFile } from "./split.ts";

const refactorings: readonly Refactoring[] = [makeRiff, flattenRiff, extractPrep, inlinePrep, scale, sortPours, markBatched, splitFile];

/** What the editor is told to expect. */
export const refactoringKinds: readonly RefactoringKind[] = ["refactor.extract", "refactor.inline", "refactor.move", "refactor.rewrite"];

export interface OfferedRefactoring extends Offer {
  readonly kind: RefactoringKind;
}

/** What is offered at a range; none over several entries. `createsFiles`: the editor makes new files where an edit says so. */
export function refactoringsAt(house: House, document: SpecDocument, { start, end }: Range, createsFiles: boolean): OfferedRefactoring[] {
  const first = entryAt(document, start.line);
  // A selection up to a line's start does not mean that line.
  const last = entryAt(document, end.character === 0 && end.line > start.line ? end.line - 1 : end.line);
  if (!first || first.entry !== last?.entry) return [];
  const spot = { house, document, entry: first.entry, first: first.line, last: last.line, createsFiles };
  return refactorings.flatMap(({ kind, offers }) => offers(spot).map((offer) => ({ ...offer, kind })));
}
