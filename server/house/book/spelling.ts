/**
 * Words that British and American books spell differently. What the program writes itself is spelled as
 * the book says; what a person wrote, and the name of anything, stays as it is.
 */
import { capital } from "../show.ts";
import type { Spelling } from "./style.ts";

/** From memory of the Concise Oxford and Merriam-Webster's Collegiate. */
const spellings: readonly Readonly<Record<Spelling, string>>[] = [
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

const endings = ["", "s", "ed", "ing", "ings"];

/** Every form of every word in the table, small letters; which of them a word really has is no matter. */
export const wordForms = spellings.flatMap(({ British, American }) =>
  endings.map((ending): Readonly<Record<Spelling, string>> => ({ British: ended(British, ending), American: ended(American, ending) })),
);

/** `centre` is `centred` and `centring`, `center` is `centered`; `savoury` is `savouries`. */
function ended(word: string, ending: string): string {
  if (word.endsWith("e") && /^[ei]/.test(ending)) return word.slice(0, -1) + ending;
  return /[^aeo]y$/.test(word) && /^s|^e/.test(ending) ? `${word.slice(0, -1)}ie${ending.replace("e", "")}` : word + ending;
}

/** A text of the program's own in the book's spelling. */
export function spelled(text: string, spelling: Spelling): string {
  return spelling === "British" ? text : text.replace(anyBritish, (found) => respelled(found, "American") ?? found);
}

const byForm: Readonly<Record<Spelling, ReadonlyMap<string, string>>> = {
  American: new Map(wordForms.map(({ British, American }) => [British, American])),
  British: new Map(wordForms.map(({ British, American }) => [American, British])),
};
const anyBritish = new RegExp(`\\b(?:${longestFirst([...byForm.American.keys()]).join("|")})\\b`, "gi");

/** A word of the other spelling in this one, in capitals where it was; absent for what is in no row. */
export function respelled(word: string, spelling: Spelling): string | undefined {
  const text = byForm[spelling].get(word.toLowerCase());
  if (text === undefined) return undefined;
  if (word === word.toUpperCase()) return text.toUpperCase();
  return /^\p{Lu}/u.test(word) ? capital(text) : text;
}

/** So that a pattern of these words takes the whole of one. */
export function longestFirst(words: readonly string[]): string[] {
  return words.toSorted((one, other) => other.length - one.length);
}
