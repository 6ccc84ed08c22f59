/** What a rule finds and how it could be put right, by places within entries, so that it stays true while other entries move. */
import type { Entry } from "../../grammar/tree.ts";
import type { Place } from "./document.ts";
import type { Severity } from "./settings.ts";

/** A change of text within one line of an entry; `text` may hold line breaks ("\n"; the file's own are put in on the way out). */
export interface Edit extends Place {
  readonly entry: Entry;
  readonly text: string;
}

/** A change that adds to the end of a text: a new entry. */
export interface Addition {
  readonly uri: string;
  readonly text: string;
  /** The text is a new file's: nothing may be there yet. */
  readonly fresh?: true;
}

export interface Fix {
  readonly title: string;
  readonly edits: readonly (Edit | Addition)[];
  /** The drink stays the same drink: may be applied without looking. */
  readonly safe: boolean;
}

export interface Finding {
  readonly code: string;
  readonly severity: Exclude<Severity, "off">;
  readonly entry: Entry;
  readonly place: Place;
  /** What is wrong and why it matters; then what to do. One or two plain sentences each. */
  readonly what: string;
  readonly todo: string;
  /** Other places that belong to it. */
  readonly related?: readonly { readonly entry: Entry; readonly place: Place; readonly what: string }[];
  /** Made only when asked for. */
  readonly fixes?: () => readonly Fix[];
}

/** The finding's two parts as one text. */
export function messageOf(finding: Finding): string {
  return `${finding.what} ${finding.todo}`.trim();
}
