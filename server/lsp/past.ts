/**
 * The house as it once was. What has not changed is taken from the house as it is, entry by entry, so that it need
 * not be read again, nor computed again where it hangs on nothing that did change.
 */
import { readMarkdown } from "../../grammar/markdown.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { House } from "../house/house.ts";
import { readHouseFile } from "../house/house-files.ts";
import { reuse } from "../house/reuse.ts";
import { readLarder } from "../larder/larder.ts";
import type { PastTexts } from "./environment.ts";
import type { Workspace } from "./workspace.ts";

/** In a commit. `goOn` is awaited between two texts and says whether to go on; the answer is absent where it did not. */
export async function pastHouse(
  { house: now, roots }: Workspace,
  { top, texts, ignored }: PastTexts,
  goOn: () => Promise<boolean>,
): Promise<House | undefined> {
  const house = new House({ larder: readLarder(), roots });
  const isBelow = (uri: string, folder: string) => uri.startsWith(`${folder}/`);
  const isIgnored = (uri: string) => ignored.some((one) => uri === one || isBelow(uri, one));
  // In the order of the house as it is: of two things of one name, the first is compared.
  for (const uri of new Set([...[...now.documents()].map((document) => document.uri), ...texts.keys()])) {
    const here = now.document(uri);
    const text = texts.get(uri);
    // What another repository holds, or none, is as it is, and so is what git was told to look away from.
    const past = here && (!isBelow(uri, top) || isIgnored(uri)) ? here : text === undefined ? undefined : pastDocument(uri, text, here);
    if (past && (here || roots.some((root) => isBelow(uri, root)))) house.setDocument(past);
    if (!(await goOn())) return undefined;
  }
  return house;
}

function pastDocument(uri: string, text: string, here: SpecDocument | undefined): SpecDocument | undefined {
  if (here && !here.margins && print(here.tree) === text) return here;
  const given = readHouseFile(uri, text);
  if (!given) return undefined;
  return { uri, version: null, ...given, tree: here ? reuse(here.tree, given.tree) : given.tree };
}

export interface EarlierHouse {
  /** The house as it is now, but for this text; brought up to date with each call. */
  of(workspace: Workspace, document: SpecDocument, text: string): House;
  forget(uri: string): void;
}

/** The house with one text as it was: the last that was asked for is kept while the other texts change. */
export function earlierHouse(): EarlierHouse {
  let kept: { readonly uri: string; readonly text: string; readonly roots: readonly string[]; readonly house: House } | undefined;
  let given = new Map<string, Tree>();
  return {
    of({ house: now, roots }, document, text) {
      const { uri } = document;
      if (kept?.uri !== uri || kept.text !== text || kept.roots !== roots) {
        const earlier = document.margins ? readMarkdown(text) : { tree: read(text) };
        kept = { uri, text, roots, house: now.supposing([{ ...document, ...earlier }]) };
        given = new Map([...now.documents()].map((one) => [one.uri, one.tree]));
      }
      const { house } = kept;
      for (const one of now.documents()) {
        if (one.uri === uri || given.get(one.uri) === one.tree) continue;
        given.set(one.uri, one.tree);
        house.setDocument(one);
      }
      for (const gone of [...given.keys()].filter((one) => !now.document(one))) {
        given.delete(gone);
        house.removeDocument(gone);
      }
      return house;
    },
    forget(uri) {
      if (kept?.uri === uri) kept = undefined;
    },
  };
}
