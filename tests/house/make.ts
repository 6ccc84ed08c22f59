/** A house from one text (`=== file.drink` starts a file; what stands above the first is `spec.drink`), or from a folder. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type Margins, readMarkdown } from "../../grammar/markdown.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { SpecDocument } from "../../server/house/document.ts";
import { House } from "../../server/house/house.ts";
import { readLarder } from "../../server/larder/larder.ts";

export const root = "file:///house";

export function documentsOf(text: string): SpecDocument[] {
  const files: { name: string; lines: string[] }[] = [{ name: "spec.drink", lines: [] }];
  for (const line of text.split("\n")) {
    const start = /^=== (\S+)$/.exec(line);
    if (start) files.push({ name: start[1]!, lines: [] });
    else files[files.length - 1]!.lines.push(line);
  }
  return files
    .filter((file) => file.lines.length > 0)
    .map(({ name, lines }) => {
      return documentOf(`${root}/${name}`, lines.join("\n"));
    });
}

const rawTexts = new WeakMap<Margins, string>();

/** A text as the house takes it: Markdown by its name's end. */
export function documentOf(uri: string, text: string): SpecDocument {
  if (!uri.endsWith(".md")) return { uri, version: null, tree: read(text) };
  const { tree, margins } = readMarkdown(text);
  rawTexts.set(margins, text);
  return { uri, version: null, tree, margins };
}

/** The whole text that such a document was read from. */
export function textOf({ tree, margins }: SpecDocument): string {
  return margins ? rawTexts.get(margins)! : print(tree);
}

export function houseOf(text: string): House {
  const house = new House({ larder: readLarder(), roots: [root] });
  for (const document of documentsOf(text)) house.setDocument(document);
  return house;
}

/** A house from the specs below a folder of the project. */
export function houseIn(folder: string): House {
  const house = new House({ larder: readLarder(), roots: [`file:///${folder}`] });
  for (const file of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    if (!/\.(?:drink|md)$/.test(file)) continue;
    house.setDocument(documentOf(`file:///${folder}/${file}`, readFileSync(join(folder, file), "utf8")));
  }
  return house;
}

/** The entry of a name, wherever it stands. */
export function entryNamed(house: House, name: string) {
  for (const document of house.documents()) {
    for (const entry of document.tree.entries) if (entry.name?.text === name) return entry;
  }
  throw new Error(`no entry named ${name}`);
}
