/**
 * How often each drink of a menu is asked for beside the others, from a small file: `Lantern Sour: 3` on a line, or
 * CSV with the name first and the share second. Blank lines and lines that start with `#` say nothing.
 */
import { parse } from "csv-parse/sync";
import type { Entry } from "../../grammar/tree.ts";
import { fold } from "./names.ts";
import { nearestOf } from "./nearest.ts";

export interface Mix {
  readonly shares: ReadonlyMap<Entry, number>;
  /** Names that are not on the menu, with those that were probably meant; nothing is counted for them. */
  readonly strange: readonly { readonly name: string; readonly line: number; readonly near: readonly string[] }[];
}

/** A line that cannot be counted with. */
export interface UnreadMix {
  readonly line: number;
  readonly problem: string;
}

/** Shares may be any numbers from 0 on; a drink that stands twice has both. */
export function readMix(text: string, drinks: readonly { readonly drink: Entry; readonly names: readonly string[] }[]): Mix | UnreadMix {
  const byName = new Map(drinks.flatMap(({ drink, names }) => names.map((name) => [fold(name), drink] as const)));
  const shares = new Map<Entry, number>();
  const strange: Mix["strange"][number][] = [];
  let first = true;
  for (const [index, written] of text
    .replace(/^\uFEFF/, "")
    .split(/\r\n|[\r\n]/)
    .entries()) {
    const line = index + 1;
    if (/^\s*(?:#|$)/.test(written)) continue;
    const read = readShare(written);
    const isHead = first && read && !/\d/.test(read.share);
    first = false;
    if (isHead) continue;
    if (!read) return { line, problem: `“${written.trim()}” does not read as a drink and its share` };
    const share = /^\d+(?:\.\d+)?$/.test(read.share) ? Number(read.share) : Number.NaN;
    if (!(share >= 0)) return { line, problem: `“${read.share}” behind ${read.name} is no share` };
    const drink = byName.get(fold(read.name));
    if (drink) shares.set(drink, (shares.get(drink) ?? 0) + share);
    else {
      const known = drinks.flatMap(({ names }) => names);
      strange.push({ name: read.name, line, near: nearestOf(read.name, known) });
    }
  }
  return { shares, strange };
}

/** A colon before the last number, or CSV with commas or semicolons. */
function readShare(line: string): { name: string; share: string } | undefined {
  const plain = /^([^"]+?)\s*:\s*([\d.]+)\s*$/.exec(line);
  if (plain) return { name: plain[1]!.trim(), share: plain[2]! };
  try {
    const [cells = []]: string[][] = parse(line, { delimiter: [",", ";"], trim: true, relax_column_count: true });
    const [name, share, ...more] = cells;
    // Our own tables mark what a spreadsheet would take for a formula.
    return name && share !== undefined && more.every((cell) => cell === "")
      ? { name: name.replace(/^'(?=[=+\-@])/, ""), share }
      : undefined;
  } catch {
    return undefined;
  }
}
