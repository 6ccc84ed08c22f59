/** The sample houses' drinks and preps, those in Markdown too, and a style to print them in. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readMarkdown } from "../../../grammar/markdown.ts";
import { read } from "../../../grammar/read.ts";
import type { Entry } from "../../../grammar/tree.ts";
import { usOunceMl } from "../../../grammar/units.ts";
import type { BookStyle } from "../../../server/house/book/style.ts";
import { House } from "../../../server/house/house.ts";
import { readLarder } from "../../../server/larder/larder.ts";

export interface SampleRecipe {
  readonly house: House;
  readonly entry: Entry;
}

export function recipesIn(folder: string): SampleRecipe[] {
  const house = new House({ larder: readLarder(), roots: [`file:///${folder}`] });
  for (const file of readdirSync(folder)) {
    const text = /\.(?:drink|md)$/.test(file) ? readFileSync(join(folder, file), "utf8") : undefined;
    if (text === undefined) continue;
    const parsed = file.endsWith(".md") ? readMarkdown(text) : { tree: read(text) };
    house.setDocument({ uri: `file:///${folder}/${file}`, version: null, ...parsed });
  }
  return [...house.documents()].flatMap(({ tree }) =>
    tree.entries.flatMap((entry) => (entry.kind === "drink" || entry.kind === "prep" ? [{ house, entry }] : [])),
  );
}

export const plain: BookStyle = {
  systems: ["metric", "US"],
  ounceStep: 1 / 4,
  ounceMl: usOunceMl,
  writtenOunceMl: usOunceMl,
  order: undefined,
  numbers: "figures",
  method: "sentences",
  typeface: "serif",
  spelling: "British",
  required: [],
  avoided: [],
  glassware: [],
  tools: [],
  indexes: [],
};
