/** What completion is asked, what it offers, and how an offer becomes the editor's item: which part of the line it takes the place of. */
import type { CompletionItem, CompletionItemKind, CompletionList, Range } from "vscode-languageserver-types";
import { InsertTextFormat } from "vscode-languageserver-types";
import type { Entry } from "../../../grammar/tree.ts";
import type { SpecDocument } from "../../house/document.ts";
import type { House } from "../../house/house.ts";
import { plain, unaccented } from "../../house/names.ts";
import type { Scope } from "../../house/scope.ts";
import type { Usage } from "../../house/usage.ts";
import type { About, Data } from "./about.ts";

/** What the client can do, and what day it is there. */
export interface CompletionOptions {
  /** Places to fill in (`${1:25} ml`) may be sent. */
  readonly snippets?: boolean;
  /** An item may say what it takes the place of when it is inserted, and when it replaces. */
  readonly insertReplace?: boolean;
  /** A word may stand beside an item's label. */
  readonly labelDetails?: boolean;
  /** ISO, for fields that hold a date. */
  readonly today?: string;
}

/** Where completion was asked for. */
export interface Asked {
  readonly house: House;
  readonly scope: Scope;
  readonly document: SpecDocument;
  readonly entry: Entry;
  /** The line's number within the entry, and in the file. */
  readonly line: number;
  readonly fileLine: number;
  /** The line up to the cursor, and what stands behind it, without its comment. */
  readonly before: string;
  readonly behind: string;
  readonly options: CompletionOptions;
  /** What the house pours and writes; counted up once a request, where it is wanted. */
  readonly usage: () => Usage;
}

/** One thing to offer. */
export interface Offer {
  readonly label: string;
  /** What is written, where that is not the label. */
  readonly text?: string;
  /** The same with a place to fill in, for clients that can; where there is a snippet alone, others get the label. */
  readonly snippet?: string;
  /** What the letters typed are held against, where that is not the label. */
  readonly filter?: string;
  readonly kind: CompletionItemKind;
  /** Where it comes from, in a word beside the label, for clients that show one. */
  readonly from?: string;
  /** What is nearer comes first, then what is used more, then by the alphabet. */
  readonly near: number;
  readonly used?: number;
  readonly about: About;
}

/** How near a thing is to what is probably meant. */
export const near = { first: 0, usual: 1, likely: 2, field: 3, word: 4, poured: 5, own: 6, drink: 7, larder: 8, last: 9 } as const;

/** Offers for one stretch of the line. */
export interface Group {
  /** Where what is being typed starts. */
  readonly start: number;
  /** What ends it, besides the end of the line. */
  readonly until: RegExp;
  readonly offers: readonly Offer[];
  /** It touches what stands before it: no blank goes between. */
  readonly isJoined?: boolean;
  /** There is more than is offered: other letters would bring it up. */
  readonly isLong?: boolean;
}

/** What ends the thing being typed: nothing but the line, a blank, a comma, what parts a list. */
export const lineEnd = /$/;
export const blank = /\s|$/;
export const comma = /,|$/;
export const listEnd = /[,;]|$/;

/** More are not sent at once; what the letters typed leave of them is asked for again. */
export const most = 250;

export function toList(asked: Asked, groups: readonly Group[]): CompletionList {
  const items: CompletionItem[] = [];
  let isIncomplete = false;
  for (const group of groups) {
    const { start, offers, isLong = offers.length > most } = group;
    const letters = lettersOf(asked.before.slice(start));
    const left = offers.length > most ? offers.filter((one) => isBegun(letters, lettersOf(one.filter ?? one.label))).sort(byRank) : offers;
    const found = items.length;
    for (const offer of left) {
      const item = items.length - found < most && itemOf(asked, group, offer);
      if (item) items.push(item);
    }
    isIncomplete ||= isLong;
  }
  return { isIncomplete, items };
}

/** Offers in the order in which they are given. */
export function inOrder(offers: readonly Offer[]): Offer[] {
  return offers.map((offer, index) => ({ ...offer, used: offers.length - index }));
}

function byRank(one: Offer, other: Offer): number {
  return one.near - other.near || (other.used ?? 0) - (one.used ?? 0) || (one.label < other.label ? -1 : 1);
}

/** What of a text is compared: its letters without accents, blanks and quotation marks. */
export function lettersOf(text: string): string {
  return unaccented(text).replace(/[\s"“”]+/g, "");
}

/** Whether the letters stand in the others in their order: no editor would show it otherwise. */
export function isBegun(letters: string, others: string): boolean {
  let at = 0;
  for (const letter of letters) {
    at = others.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

/** Absent where the line would hold something twice. */
function itemOf(asked: Asked, { start, until, isJoined }: Group, offer: Offer): CompletionItem | undefined {
  const { before, behind, fileLine, options } = asked;
  const column = before.length;
  const snippet = options.snippets ? offer.snippet : undefined;
  const written = offer.text ?? offer.label;
  const rest = restUpTo(behind, until);
  // What stands in this one place alone is what is being typed, not what is written elsewhere.
  if (offer.about.what === "written" && offer.used === 1 && written === `${before.slice(start)}${rest}`) return undefined;
  const end = column + lengthTaken(before, start, rest, written);
  if (end < 0) return undefined;
  const next = behind.slice(end - column);
  const bare = withoutTail(snippet ?? written, next);
  const text = isJoined ? bare : withLead(before, start, bare);
  const range = (from: number, to: number): Range => ({
    start: { line: fileLine, character: from },
    end: { line: fileLine, character: to },
  });
  const both = options.insertReplace && end > column && start < column;
  const data: Data = { uri: asked.document.uri, ...offer.about };
  return {
    label: offer.label,
    kind: offer.kind,
    ...(options.labelDetails && offer.from && { labelDetails: { description: offer.from } }),
    filterText: offer.filter ?? offer.label,
    sortText: `${offer.near}${String(99_999 - (offer.used ?? 0)).padStart(5, "0")}${offer.label.toLowerCase()}`,
    textEdit: both
      ? { newText: text, insert: range(start, column), replace: range(start, end) }
      : { newText: text, range: range(start, end) },
    ...(snippet && { insertTextFormat: InsertTextFormat.Snippet }),
    data,
  };
}

/** What of the thing being typed stands behind the cursor. */
function restUpTo(behind: string, until: RegExp): string {
  const end = behind.search(until);
  return (end < 0 ? behind : behind.slice(0, end)).trimEnd();
}

/**
 * How much of what stands behind the cursor goes: the rest of a name that the cursor is in; behind a blank
 * only what the offer ends in itself. Negative where the offer would stand beside a thing that is there.
 */
function lengthTaken(before: string, start: number, rest: string, written: string): number {
  if (rest === "") return 0;
  const isTyped = start < before.length;
  if (!/^\s/.test(rest) && (!isTyped || /\S$/.test(before))) return rest.length;
  const said = plain(rest);
  const offered = plain(written);
  if (offered === said || offered.endsWith(` ${said}`)) return rest.length;
  return isTyped ? 0 : Number.NEGATIVE_INFINITY;
}

/** A blank where the last thing on the line would touch it: behind a colon, a dash, a number. */
function withLead(before: string, start: number, text: string): string {
  const last = before.slice(0, start).at(-1);
  const touches = last !== undefined && /\S/.test(last) && (start === before.length ? /[^\s("“]/.test(last) : /\d/.test(last));
  return touches ? ` ${text}` : text;
}

/** Without the colon, the dot and the blanks that stand there already. */
function withoutTail(text: string, next: string): string {
  if (next === "") return text;
  if (/^\s*:/.test(next) && text.endsWith(": ")) return text.slice(0, -2);
  return /^\s/.test(next) ? text.trimEnd() : text;
}
