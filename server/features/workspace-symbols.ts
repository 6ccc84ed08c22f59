/** Everything that is declared in the texts at hand, found by some letters of its name in their order. */

import type { WorkspaceSymbol } from "vscode-languageserver-types";
import { isOwnKind } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { unaccented } from "../house/names.ts";
import { rangeOnLine } from "./place.ts";
import { symbolKinds } from "./symbols.ts";

/** More than these nobody scrolls through: another letter says more. */
const most = 300;

/** Names that start so first, then those that hold the letters somewhere; each kind of entry may be asked for by its word. */
export function workspaceSymbols(house: House, query: string, spelling = (uri: string) => uri): WorkspaceSymbol[] {
  const asked = unaccented(query);
  const found: { rank: number; key: string; symbol: WorkspaceSymbol }[] = [];
  for (const { uri, tree } of house.documents()) {
    for (const [index, entry] of tree.entries.entries()) {
      if (!entry.name?.text || !isOwnKind(entry.kind)) continue;
      const key = unaccented(entry.name.text);
      const rank = rankOf(key, asked);
      if (rank === undefined) continue;
      const range = rangeOnLine(tree.starts[index]!, entry.name);
      found.push({
        rank,
        key,
        symbol: {
          name: entry.name.text,
          kind: symbolKinds[entry.kind],
          containerName: entry.kind,
          location: { uri: spelling(uri), range },
        },
      });
    }
  }
  return found
    .sort((one, other) => one.rank - other.rank || (one.key < other.key ? -1 : 1))
    .slice(0, most)
    .map(({ symbol }) => symbol);
}

/** 0 starts so, 1 holds it, 2 holds its letters in their order; absent where it does not. */
function rankOf(name: string, asked: string): number | undefined {
  if (name.startsWith(asked)) return 0;
  if (name.includes(asked)) return 1;
  let at = 0;
  for (const letter of asked) {
    at = name.indexOf(letter, at) + 1;
    if (at === 0) return undefined;
  }
  return 2;
}
