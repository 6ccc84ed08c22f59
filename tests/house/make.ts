/** A house from one text (`=== file.drink` starts a file; what stands above the first is `spec.drink`), or from a folder. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readMarkdown } from "../../grammar/markdown.ts";
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
      const text = lines.join("\n");
      return { uri: `${root}/${name}`, version: null, ...(name.endsWith(".md") ? readMarkdown(text) : { tree: read(text) }) };
    });
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
    if (!file.endsWith(".drink")) continue;
    house.setDocument({ uri: `file:///${folder}/${file}`, version: null, tree: read(readFileSync(join(folder, file), "utf8")) });
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
