/**
 * Where names live: the nearest folder with a `house` above a file, its parents, and the larder below
 * them all.
 */
import type { Entry, Name } from "../../grammar/tree.ts";
import type { NameClass } from "./names.ts";

/** A name that an entry is known by: its head, or one of its `aka`. */
export interface Declaration {
  readonly entry: Entry;
  readonly nameClass: NameClass;
  readonly name: string;
  readonly alias: boolean;
}

export interface Scope {
  /** The folder's URI without a closing slash; "larder:" for the larder, a Markdown file's own where that has a `house`. */
  readonly folder: string;
  readonly parent: Scope | undefined;
  /** The `house` entries of the folder: the first governs, any further one is found fault with. */
  houses: readonly Entry[];
  /** The books of the folder, whichever was declared first. */
  books?: Set<Entry>;
  /** Declarations by class and folded name. */
  readonly names: Map<string, Declaration[]>;
}

/** What a name turned out to mean. */
export interface Resolution {
  /** Absent where nothing of that name is declared. */
  readonly found?: Declaration;
  /** The part of the text that is the name: the declared one, or what stands before the first comma. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** What follows the name, split at its commas. */
  readonly modifiers: readonly ModifierText[];
}

export interface ModifierText {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** The readings of a name, the longest first: the whole text, then cut at each comma from the last. */
export function* candidates(name: Name): Generator<{ text: string; end: number; cut: number }> {
  yield { text: name.text, end: name.end, cut: name.commas.length };
  for (let index = name.commas.length - 1; index >= 0; index--) {
    const comma = name.commas[index]!;
    const text = name.text.slice(0, indexIn(name, comma)).trimEnd();
    if (text) yield { text, end: name.start + text.length, cut: index };
  }
}

/** The texts behind the name's first `cut` commas. */
export function modifierTexts(name: Name, cut: number): ModifierText[] {
  const modifiers: ModifierText[] = [];
  for (let index = cut; index < name.commas.length; index++) {
    const from = name.commas[index]! + 1;
    const to = index + 1 < name.commas.length ? name.commas[index + 1]! : name.end;
    const raw = name.text.slice(indexIn(name, from), indexIn(name, to));
    const text = raw.trim();
    if (!text) continue;
    const start = from + raw.indexOf(text);
    modifiers.push({ text, start, end: start + text.length });
  }
  return modifiers;
}

/** A quoted name without its quotes; where it was not quoted, the whole text. */
export function unquoted(name: Name): string {
  return name.quoted ? name.text.slice(0, indexIn(name, name.quoted.end)).trimEnd() : name.text;
}

/** A place on the line as a place in the name's text, which may have lost quotes at its start. */
function indexIn(name: Name, offset: number): number {
  return name.text.length - (name.end - offset);
}
