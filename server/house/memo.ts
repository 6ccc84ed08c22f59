/**
 * What was computed for an entry, and which names it was computed from.
 *
 * While something is computed for an entry, every name that is looked up is noted as a key, found or
 * not. When the meaning of a key changes, everything computed for the entries that noted it is
 * dropped; and since others may have found *those* entries by name, their own keys change in turn.
 */
import type { Entry } from "../../grammar/tree.ts";

interface Cell {
  readonly values: Map<string, unknown>;
  readonly keys: Set<string>;
}

export class Memo {
  private readonly cells = new Map<Entry, Cell>();
  private readonly dependents = new Map<string, Set<Entry>>();
  private readonly working: Entry[] = [];
  /** How many values were computed so far; tests count with it. */
  computed = 0;

  /** The value of a query for an entry, computed once until a name it was computed from changes meaning. */
  get<T>(entry: Entry, query: string, compute: () => T): T {
    let cell = this.cells.get(entry);
    if (!cell) {
      cell = { values: new Map(), keys: new Set() };
      this.cells.set(entry, cell);
    }
    if (cell.values.has(query)) return cell.values.get(query) as T;
    this.working.push(entry);
    try {
      const value = compute();
      this.computed++;
      cell.values.set(query, value);
      return value;
    } finally {
      this.working.pop();
    }
  }

  /** Notes that what is being computed depends on what this key means. */
  note(key: string): void {
    const entry = this.working[this.working.length - 1];
    if (!entry) return;
    const cell = this.cells.get(entry);
    if (!cell || cell.keys.has(key)) return;
    cell.keys.add(key);
    const entries = this.dependents.get(key);
    if (entries) entries.add(entry);
    else this.dependents.set(key, new Set([entry]));
  }

  /** Drops what was computed for an entry; answers whether there was anything. */
  drop(entry: Entry): boolean {
    const cell = this.cells.get(entry);
    if (!cell) return false;
    this.cells.delete(entry);
    for (const key of cell.keys) {
      const entries = this.dependents.get(key);
      entries?.delete(entry);
      if (entries?.size === 0) this.dependents.delete(key);
    }
    return true;
  }

  /** The entries whose values were computed from this key. */
  dependentsOf(key: string): readonly Entry[] {
    const entries = this.dependents.get(key);
    return entries ? [...entries] : [];
  }

  clear(): void {
    this.cells.clear();
    this.dependents.clear();
  }
}
