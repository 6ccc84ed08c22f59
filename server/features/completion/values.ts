/** Reading the part of a value that is being typed. */

/** A field's value up to the cursor: the item and the part of it that the cursor is in. */
export interface ValueAt {
  /** Where the part being typed starts, and its text up to the cursor. */
  readonly start: number;
  readonly part: string;
  /** The item's first part is being typed, not what qualifies it. */
  readonly first: boolean;
  /** Where the whole value starts. */
  readonly from: number;
}

/** `;` parts items and `,` what qualifies them, but for one between digits. */
export function valueAt(before: string, from: number): ValueAt {
  const item = Math.max(from, before.lastIndexOf(";") + 1);
  let part = item;
  for (const { index } of before.slice(item).matchAll(/,(?!\d)|(?<!\d),/g)) part = item + index + 1;
  const start = wordStart(before, part);
  return { start, part: before.slice(start), first: part === item, from };
}

const number = /(?:^|[\s:;,])[-−]?(?:\d+(?:\.\d+)?|\.\d+|\d+\/\d+|\d*[½¼¾⅓⅔⅛⅜⅝⅞])(\s*)([^\s\d,;]*)$/u;

/** The place for a unit, where a number and at most the first letters of its unit stand before the cursor; else absent. */
export function numberAt(before: string, from: number): { readonly start: number } | undefined {
  const match = number.exec(before.slice(Math.max(0, from - 1)));
  return match ? { start: before.length - match[2]!.length } : undefined;
}

/** Where the next word starts. */
export function wordStart(text: string, from: number): number {
  return from + /^\s*/.exec(text.slice(from))![0].length;
}
