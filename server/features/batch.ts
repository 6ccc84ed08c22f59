/** A drink mixed ahead, for as much as a person types. */
import type { Entry } from "../../grammar/tree.ts";
import { type Batch, type BatchOptions, type BatchSize, batchOf, type NoBatch } from "../house/batch.ts";
import { entryAt, type SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { readSize } from "./refactorings/scale.ts";

/** Of the drink on a line; `typed` is `40`, `40 serves`, `5 l`, or `700 ml bottle` for as many serves as fill it. */
export function batchAt(house: House, document: SpecDocument, line: number, typed: string, options: BatchOptions): Batch | NoBatch {
  const entry = entryAt(document, line)?.entry;
  if (entry?.kind !== "drink") return { problem: "Put the cursor in a drink first." };
  const filled = /^(.*?)\s*bottle$/i.exec(typed.trim());
  if (!filled) return batchTyped(house, entry, typed, options);
  if (!filled[1]) return batchOf(house, entry, { fill: true }, options);
  const size = readBottle(house, entry, filled[1]);
  return "problem" in size ? size : batchOf(house, entry, { fill: true }, { ...options, bottleMl: size.ml });
}

/** For a number of serves or a volume. */
export function batchTyped(house: House, entry: Entry, typed: string, options: BatchOptions): Batch | NoBatch {
  const size: BatchSize | NoBatch = readSize(house, entry, typed);
  return "problem" in size ? size : batchOf(house, entry, size, options);
}

/** How large a bottle is: `700 ml`. */
export function readBottle(house: House, entry: Entry, typed: string): { readonly ml: number } | NoBatch {
  const size = readSize(house, entry, typed);
  return "serves" in size ? { problem: `“${typed.trim()}” is no size of a bottle. Write one, such as \`700 ml\`.` } : size;
}
