/** Which of two entries was declared first: by file, then by line. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";

export function isBefore(house: House, one: Entry, other: Entry): boolean {
  const [here, there] = [house.findDocumentOf(one), house.findDocumentOf(other)];
  if (!here || !there) return false;
  return here === there ? here.tree.entries.indexOf(one) < here.tree.entries.indexOf(other) : here.uri < there.uri;
}
