/** Keeps what was computed when a file is read afresh, as after a change of branch: equal entries stay the same objects. */
import { textOf } from "../../grammar/positions.ts";
import type { Entry, Tree } from "../../grammar/tree.ts";

/** The new tree with each entry that reads as one of the old tree's replaced by that one. A tree that was edited shares its entries already. */
export function reuse(before: Tree, after: Tree): Tree {
  const known = new Set(before.entries);
  if (after.entries.some((entry) => known.has(entry))) return after;
  const byText = new Map<string, number[]>();
  for (const [index, entry] of before.entries.entries()) {
    const text = keyOf(entry);
    const same = byText.get(text);
    if (same) same.push(index);
    else byText.set(text, [index]);
  }
  // Never out of order: which of two equal names counts depends on where they stand.
  let last = -1;
  const entries = after.entries.map((entry) => {
    const index = byText.get(keyOf(entry))?.find((one) => one > last);
    if (index === undefined) return entry;
    last = index;
    return before.entries[index]!;
  });
  return { ...after, entries };
}

/** Equal text may be of another kind, what stands above the first entry and what follows it, and of one line more: the empty last one. */
function keyOf(entry: Entry): string {
  return `${entry.kind} ${entry.lines.length}\n${textOf(entry)}`;
}
