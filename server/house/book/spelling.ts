/**
 * Words that British and American books spell differently. What the program writes itself is spelled as
 * the book says; what a person wrote, and the name of anything, stays as it is.
 */
import { capital } from "../show.ts";
import type { Spelling } from "./style.ts";

/** From memory of the Concise Oxford and Merriam-Webster's Collegiate; forms in -s, -d and -ed follow the first. */
export const spellings: readonly Readonly<Record<Spelling, string>>[] = [
  ["millilitre", "milliliter"],
  ["centilitre", "centiliter"],
  ["decilitre", "deciliter"],
  ["litre", "liter"],
  ["per cent", "percent"],
  ["sulphite", "sulfite"],
  ["sulphur", "sulfur"],
  ["colour", "color"],
  ["flavour", "flavor"],
  ["savoury", "savory"],
  ["odour", "odor"],
  ["vapour", "vapor"],
  ["centre", "center"],
  ["fibre", "fiber"],
  ["grey", "gray"],
  ["mould", "mold"],
  ["draught", "draft"],
  ["yoghurt", "yogurt"],
  ["liquorice", "licorice"],
  ["aluminium", "aluminum"],
  ["ageing", "aging"],
  ["pasteurise", "pasteurize"],
  ["unpasteurise", "unpasteurize"],
  ["caramelise", "caramelize"],
  ["atomiser", "atomizer"],
  ["mollusc", "mollusk"],
].map(([British, American]) => ({ British: British!, American: American! }));

/** A text of the program's own in the book's spelling. */
export function spelled(text: string, spelling: Spelling): string {
  return spelling === "British" ? text : text.replace(anyBritish, american);
}

const anyBritish = new RegExp(`\\b(${spellings.map(({ British }) => British).join("|")})(s|d|ed)?\\b`, "gi");

function american(found: string, stem: string, ending = ""): string {
  const text = spellings.find(({ British }) => British === stem.toLowerCase())!.American + ending;
  return /^\p{Lu}/u.test(found) ? capital(text) : text;
}
