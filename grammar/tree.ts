/**
 * The shape of a parsed text: lines, and the entries that the lines make up.
 *
 * The tree is lossless: a line keeps its text and its line break as they were read, and everything
 * else is a span into that text. Nodes know no position in the file: a span counts UTF-16 units from
 * the start of its own line, an entry knows nothing of what stands above it. So an untouched entry is
 * the same object before and after an edit, and whatever was computed for it still holds.
 */
import type { EntryKind } from "./fields.ts";
import type { Unit } from "./units.ts";

/** UTF-16 units from the start of the line; `end` is exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A span and the text that stands there. */
export interface Words extends Span {
  readonly text: string;
}

/** What is wrong with a line as text, found by the parser; never more than one a line. */
export interface SyntaxProblem extends Span {
  readonly code: SyntaxCode;
  /** What is wrong, in plain words. */
  readonly what: string;
  /** What to do about it, in plain words. */
  readonly todo: string;
  /** The text that would put the span right, where there is just one. */
  readonly instead?: string;
}

export type SyntaxCode =
  | "syntax" // the line reads as nothing at all, or lacks a part
  | "unindented" // a body line at the margin
  | "unknown-entry" // a margin line that opens nothing known
  | "decimal-comma" // 2,5 cl
  | "thousands-comma" // 1,000 ml: not computed
  | "hyphen-fraction" // 1-1/2 oz
  | "reversed-range" // 15-10 ml
  | "turned-pour" // gin 50 ml
  | "unclosed-quote"
  | "allow-without-reason"
  | "missing-amount" // a pour of no quantity
  | "bare-count"; // 30 12 year rye: a number straight after a count

/** A number as written, with what was made of it. */
export interface Quantity extends Span {
  /** The amount in its own unit; for a range the lower end as written first. Absent where the text cannot be computed (1,000 ml). */
  readonly value?: number;
  /** The other end of a range. */
  readonly upTo?: number;
  /** `about 3 g` */
  readonly about?: Words;
  /** The numeral alone, without `about` and unit. */
  readonly numeral: Words;
  /** The unit word, if the next whole word is one. Without a unit the quantity is a count. */
  readonly unit?: Words & { readonly unit: Unit };
}

/**
 * A name as far as it may reach: everything up to the comment. Which part of it is the name is
 * decided by the house, which knows what is declared: the longest comma-joined text that is declared,
 * else the text before the first comma. `text` is trimmed, and has lost its quotes; what stands behind
 * the closing quote follows as it was written.
 */
export interface Name extends Words {
  /** Where each comma stands (line offsets), outside quotes and not between digits. */
  readonly commas: readonly number[];
  /** Set when the name was quoted; the span of the quoted text with its quotes. */
  readonly quoted?: Span;
}

/** What stands before the ingredient's name on a pour. */
export type PourLead = "top" | "to" | "rinse" | "some";

/** So much of this. Also the body of `or` and the second half of `swap`. */
export interface Pour extends Span {
  readonly lead?: Words & { readonly lead: PourLead };
  readonly quantity?: Quantity;
  readonly name?: Name;
  /** Written name first (`gin 50 ml`, `Lemon juice: 25 ml`). */
  readonly turned?: boolean;
}

/** One comma-separated part of an item. */
export interface Part extends Words {
  /** The part's leading quantity, if it starts with one (`12 s with cracked ice` has none: see `words`). */
  readonly quantity?: Quantity;
  /** Every quantity inside the part, in order (`shake 12 s`, `hold at -5 C`, `4 to 13`, `26.50 per 700 ml`). */
  readonly quantities: readonly Quantity[];
}

/** One `;`-separated item of a field's value: a head and its qualifiers. */
export interface Item extends Words {
  readonly parts: readonly Part[];
}

export interface BlankLine {
  readonly kind: "blank";
}
export interface CommentLine {
  readonly kind: "comment";
}
/** Inside a prose field: raw text, no comments, no pours. */
export interface ProseLine extends Words {
  readonly kind: "prose";
}
/** A margin line that opens an entry. `entry` is absent where the first word opens nothing known. */
export interface EntryLine {
  readonly kind: "entry";
  readonly word: Words;
  readonly entry?: EntryKind;
  readonly name?: Name;
}
export interface FieldLine {
  readonly kind: "field";
  readonly name: Words;
  /** The whole value, trimmed, without its comment; absent where empty. Where it is one item, that very item. */
  readonly value?: Words;
  /** The value taken apart; empty for prose. */
  readonly items: readonly Item[];
}
export interface PourLine {
  readonly kind: "pour";
  readonly pour: Pour;
}
export interface OrLine {
  readonly kind: "or";
  readonly word: Words;
  readonly pour?: Pour;
}
/** `swap A for B`. The word ` for ` splits at its first place where both sides are there; the other candidate places are kept. */
export interface SwapLine {
  readonly kind: "swap";
  readonly word: Words;
  /** Candidate readings, the first ` for ` first; empty where there is no ` for `. */
  readonly readings: readonly { readonly out: Pour; readonly in: Pour }[];
}
export interface WithoutLine {
  readonly kind: "without";
  readonly word: Words;
  readonly all?: Words;
  readonly pour?: Pour;
}
export interface SectionLine {
  readonly kind: "section";
  readonly word: Words;
  readonly title?: Words;
}
/** `- name price`: the candidate reading with a price is kept beside the whole name. */
export interface MenuLine {
  readonly kind: "menu";
  readonly dash: Words;
  /** Everything after the dash. */
  readonly whole?: Name;
  /** The name without its trailing price, and the prices (`12.50 / 45.00 carafe`), where the text ends in one. */
  readonly priced?: { readonly name: Name; readonly prices: readonly MenuPrice[]; readonly sure: boolean };
}
export interface MenuPrice extends Span {
  readonly amount: number;
  /** A sign or a code as written (`£`, `GBP`). */
  readonly currency?: Words;
  readonly label?: Words;
}
/** A line of a Markdown text outside the specs: a heading has its level. */
export interface TextLine {
  readonly kind: "text";
  readonly level?: number;
  /** In the order written. */
  readonly directives: readonly Directive[];
}
/** `:strength[Lantern Sour]{words}`, or `::spec[Lantern Sour]` as a block. The span goes from the colon to the last bracket. */
export interface Directive extends Span {
  readonly name: Words;
  /** What stands between the brackets, blanks and all. */
  readonly label?: Words;
  readonly attributes: readonly Attribute[];
  readonly block: boolean;
}
export interface Attribute {
  readonly name: Words;
  readonly value?: Words;
}
/** A line that reads as nothing: kept as it is, with one problem. */
export interface UnreadLine extends Words {
  readonly kind: "unread";
}

export type Content =
  | BlankLine
  | CommentLine
  | ProseLine
  | EntryLine
  | FieldLine
  | PourLine
  | OrLine
  | SwapLine
  | WithoutLine
  | SectionLine
  | MenuLine
  | TextLine
  | UnreadLine;

/** `# allow CODE: reason` */
export interface Allowance extends Span {
  readonly code: Words;
  readonly reason?: Words;
}

export interface Comment extends Words {
  readonly allow?: Allowance;
}

/** What one line says, whatever stands around it. Shared between equal lines: never change one. */
export interface Reading {
  readonly content: Content;
  readonly comment?: Comment;
  readonly problem?: SyntaxProblem;
}

export interface Line extends Reading {
  /** Without its line break. */
  readonly text: string;
  /** "\n", "\r\n", "\r", or "" on the last line. */
  readonly eol: string;
}

/**
 * A margin line and what belongs to it. The first entry of a tree may be the preamble: what stands
 * above the first margin line, of kind "preamble" and without a head. In a Markdown text each block
 * may have one. What stands between the blocks are entries of kind "text", a new one from each heading
 * on. An entry of kind "unknown" is parsed and coloured, computed nowhere and found fault with nowhere.
 */
export interface Entry {
  readonly kind: EntryKind | "unknown" | "preamble" | "text";
  readonly lines: readonly Line[];
  /** The head's name; absent where nothing was typed yet. */
  readonly name?: Name;
}

/** Whether an entry of this kind is one of the language's own. */
export function isOwnKind(kind: Entry["kind"]): kind is EntryKind {
  return kind !== "unknown" && kind !== "preamble" && kind !== "text";
}

export interface Tree {
  readonly entries: readonly Entry[];
  /** For each entry the number of the file's line that it starts on. */
  readonly starts: readonly number[];
  readonly lineCount: number;
}
