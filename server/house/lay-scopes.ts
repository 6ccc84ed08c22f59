/**
 * Which scope each text belongs to: that of the nearest `house` above it, else that of the open folder
 * that holds it. A `house` in a Markdown file governs that file alone.
 */
import type { Entry } from "../../grammar/tree.ts";
import { folderOf, type SpecDocument } from "./document.ts";
import type { Scope } from "./scope.ts";

/** The answer for any text, the same object for the same scope. No names are declared in the scopes yet. */
export function layScopes(
  texts: readonly SpecDocument[],
  roots: readonly string[],
  larder: Scope,
): (document: Pick<SpecDocument, "uri">) => Scope {
  const scopes = scopesOfHouses(
    texts.filter(({ margins }) => !margins),
    larder,
  );
  const unhoused = new Map<string, Scope>();
  const known = new Map<string, Scope>();
  const ofFolder = (folder: string) => {
    let scope = known.get(folder) ?? nearest(scopes, folder, roots);
    if (!scope) {
      const root = roots.find((one) => folder === one || folder.startsWith(`${one}/`)) ?? folder;
      // Not among those of the houses: what is found must not depend on which text was asked about first.
      scope = unhoused.get(root) ?? { folder: root, parent: larder, houses: [], names: new Map() };
      unhoused.set(root, scope);
    }
    known.set(folder, scope);
    return scope;
  };
  const own = new Map<string, Scope>();
  for (const { uri, tree, margins } of texts) {
    const houses = margins ? housesIn(tree) : [];
    if (houses.length > 0) own.set(uri, { folder: uri, parent: ofFolder(folderOf(uri)), houses, names: new Map() });
  }
  return ({ uri }) => own.get(uri) ?? ofFolder(folderOf(uri));
}

function housesIn({ entries }: SpecDocument["tree"]): Entry[] {
  return entries.filter(({ kind }) => kind === "house");
}

/** The scope of a folder or of one above it, up to the folder that is open. */
function nearest(scopes: ReadonlyMap<string, Scope>, folder: string, roots: readonly string[]): Scope | undefined {
  for (let at = folder; at !== ""; at = folderOf(at)) {
    const scope = scopes.get(at);
    if (scope) return scope;
    if (at === folderOf(at) || roots.includes(at)) return undefined;
  }
  return undefined;
}

/** By folder. A house within a house takes from the outer one what it does not say itself. */
function scopesOfHouses(texts: readonly SpecDocument[], larder: Scope): Map<string, Scope> {
  const houses = new Map<string, Entry[]>();
  for (const document of [...texts].sort((one, other) => (one.uri < other.uri ? -1 : 1))) {
    const here = housesIn(document.tree);
    if (here.length > 0) houses.set(folderOf(document.uri), [...(houses.get(folderOf(document.uri)) ?? []), ...here]);
  }
  const scopes = new Map<string, Scope>();
  for (const [folder, entries] of [...houses].sort(([one], [other]) => one.length - other.length)) {
    const parent = nearest(scopes, folderOf(folder), []) ?? larder;
    scopes.set(folder, { folder, parent, houses: entries, names: new Map() });
  }
  return scopes;
}
