/** From a tree back to its text, character for character. */
import { textOf } from "./positions.ts";
import type { Tree } from "./tree.ts";

export function print(tree: Tree): string {
  return tree.entries.map(textOf).join("");
}
