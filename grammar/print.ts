/** From a tree back to its text, character for character. */
import type { Tree } from "./tree.ts";

export function print(tree: Tree): string {
  const parts: string[] = [];
  for (const entry of tree.entries) for (const line of entry.lines) parts.push(line.text, line.eol);
  return parts.join("");
}
