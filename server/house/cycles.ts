/** Whether an entry is made, directly or by way of others, from itself. */
import type { Entry } from "../../grammar/tree.ts";
import { findFieldIn, pourOn } from "./entry.ts";
import type { House } from "./house.ts";
import type { Declaration } from "./scope.ts";

export interface Use {
  /** The line of the using entry, counted within it. */
  readonly line: number;
  readonly entry: Entry;
}

/** What an entry is made from: the preps and drinks that its pours, swaps and `from:` name. */
export function usesOf(house: House, entry: Entry): readonly Use[] {
  return house.recall(entry, "uses", () => {
    if (entry.kind !== "prep" && entry.kind !== "drink") return [];
    const scope = house.scopeOf(entry);
    const uses: Use[] = [];
    const add = (line: number, found: Declaration | undefined) => {
      if (found && (found.entry.kind === "prep" || found.entry.kind === "drink")) uses.push({ line, entry: found.entry });
    };
    for (const [line, { content }] of entry.lines.entries()) {
      const name = pourOn(content)?.name;
      if (name) add(line, house.resolve(scope, ["ingredient", "drink"], name).found);
    }
    const from = findFieldIn(entry, "from");
    if (from?.field.value && entry.kind === "drink") add(from.line, house.lookup(scope, "drink", from.field.value.text)[0]);
    return uses;
  });
}

/** Whether the entry's making comes back to it. */
export function isCyclic(house: House, entry: Entry): boolean {
  return house.recall(entry, "cyclic", () => cycleThrough(house, entry) !== undefined);
}

/** Whether an entry is made from another, directly or by way of further ones; every entry is from itself. */
export function isMadeFrom(house: House, entry: Entry, other: Entry): boolean {
  const known = new Set([entry]);
  for (const one of known) for (const use of usesOf(house, one)) known.add(use.entry);
  return known.has(other);
}

/** The shortest way from an entry back to itself, as the uses that lead there; absent where there is none. */
export function cycleThrough(house: House, start: Entry): readonly { readonly by: Entry; readonly use: Use }[] | undefined {
  const cameBy = new Map<Entry, { by: Entry; use: Use }>();
  const pending = [start];
  for (let index = 0; index < pending.length; index++) {
    const by = pending[index]!;
    for (const use of usesOf(house, by)) {
      if (use.entry === start) return pathTo(by, { by, use }, start, cameBy);
      if (cameBy.has(use.entry)) continue;
      cameBy.set(use.entry, { by, use });
      pending.push(use.entry);
    }
  }
  return undefined;
}

function pathTo(by: Entry, last: { by: Entry; use: Use }, start: Entry, cameBy: ReadonlyMap<Entry, { by: Entry; use: Use }>) {
  const path = [last];
  for (let at = by; at !== start; ) {
    const step = cameBy.get(at)!;
    path.unshift(step);
    at = step.by;
  }
  return path;
}
