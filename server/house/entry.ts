/** Reading an entry's lines: fields by name, pours in order. A pure function of the entry, remembered per entry. */
import type { Content, Entry, FieldLine, Pour } from "../../grammar/tree.ts";

export interface FieldAt {
  readonly entry: Entry;
  /** The line's number within the entry. */
  readonly line: number;
  readonly field: FieldLine;
}

const indexes = new WeakMap<Entry, ReadonlyMap<string, readonly FieldAt[]>>();

/** Every field of an entry by its name in lower case, in the order written. */
export function fieldsIn(entry: Entry): ReadonlyMap<string, readonly FieldAt[]> {
  const known = indexes.get(entry);
  if (known) return known;
  const index = new Map<string, FieldAt[]>();
  for (const [line, { content }] of entry.lines.entries()) {
    if (content.kind !== "field") continue;
    const name = content.name.text.toLowerCase();
    const there = index.get(name);
    if (there) there.push({ entry, line, field: content });
    else index.set(name, [{ entry, line, field: content }]);
  }
  indexes.set(entry, index);
  return index;
}

/** The first field of a name; absent where there is none. */
export function findFieldIn(entry: Entry, name: string): FieldAt | undefined {
  return fieldsIn(entry).get(name)?.[0];
}

/** The lines of one kind with their numbers. */
export function* linesOf<K extends Content["kind"]>(
  entry: Entry,
  kind: K,
): Generator<{ readonly line: number; readonly content: Extract<Content, { kind: K }> }> {
  for (const [line, { content }] of entry.lines.entries()) {
    if (content.kind === kind) yield { line, content: content as Extract<Content, { kind: K }> };
  }
}

/** What a line pours: a pour, an alternative, or what a swap puts in. Not what a swap or a `without` takes out. */
export function pourOn(content: Content | undefined): Pour | undefined {
  if (content?.kind === "pour" || content?.kind === "or") return content.pour;
  return content?.kind === "swap" ? content.readings[0]?.in : undefined;
}
