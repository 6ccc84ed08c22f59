/** The built-in larder, written in the language itself and read like any other text. */
import { read } from "../../grammar/read.ts";
import type { SpecDocument } from "../house/document.ts";
import bittersAcids from "./bitters-acids.drink";
import coffeeTea from "./coffee-tea.drink";
import dairyEggs from "./dairy-eggs.drink";
import families from "./families.drink";
import fruitHerbs from "./fruit-herbs.drink";
import glasses from "./glasses.drink";
import ice from "./ice.drink";
import juices from "./juices.drink";
import kinds from "./kinds.drink";
import liqueurs from "./liqueurs.drink";
import mixers from "./mixers.drink";
import spirits from "./spirits.drink";
import sweeteners from "./sweeteners.drink";
import wines from "./wines.drink";

const texts: Readonly<Record<string, string>> = {
  spirits,
  liqueurs,
  wines,
  juices,
  sweeteners,
  mixers,
  "dairy-eggs": dairyEggs,
  "coffee-tea": coffeeTea,
  "bitters-acids": bittersAcids,
  "fruit-herbs": fruitHerbs,
  kinds,
  families,
  glasses,
  ice,
};

/** Every text of the larder, read once for the process. */
export function readLarder(): readonly SpecDocument[] {
  larder ??= Object.entries(texts).map(([name, text]) => ({ uri: `larder:/${name}.drink`, version: null, tree: read(text) }));
  return larder;
}

let larder: readonly SpecDocument[] | undefined;
