/**
 * How names are compared. Three steps, each looser than the one before: as written (case and runs of
 * blanks aside), without accents, with plurals folded. A looser step never beats a stricter one.
 */

/** The classes of names that never meet: a glass and a stock may share a name. */
export type NameClass = "ingredient" | "drink" | "menu" | "family" | "glass" | "ice" | "house" | "book" | "printed";

/** 0: as written, 1: without accents, 2: with plurals folded. */
export type Step = 0 | 1 | 2;

/** Words that look like plurals and are things of their own. */
const notPlurals = new Set(["bitters", "molasses", "citrus", "hibiscus", "asparagus", "swiss", "couscous", "schnapps"]);

const irregular = new Map([
  ["leaves", "leaf"],
  ["halves", "half"],
  ["loaves", "loaf"],
]);

/** As written: lower case, blanks folded, quotation marks around the whole left out. */
export function plain(name: string): string {
  return name
    .trim()
    .replace(/^["“”](.*)["“”]$/u, "$1")
    .trim()
    .replace(/\s+/g, " ")
    .toLowerCase()
    .normalize("NFC");
}

/** Without accents. */
export function unaccented(name: string): string {
  return plain(name).normalize("NFD").replace(/\p{M}/gu, "").replace(/[’‘]/g, "'");
}

const folded = new Map<string, string>();

/** With plurals folded: the key that names are indexed by. Remembered, since the same names come again and again. */
export function fold(name: string): string {
  let key = folded.get(name);
  if (key === undefined) {
    key = unaccented(name).split(" ").map(singular).join(" ");
    if (folded.size > 50_000) folded.clear();
    folded.set(name, key);
  }
  return key;
}

/** The strictest step at which two names of one key are the same. */
export function stepBetween(one: string, other: string): Step {
  if (one === other || plain(one) === plain(other)) return 0;
  return unaccented(one) === unaccented(other) ? 1 : 2;
}

function singular(word: string): string {
  if (word.length < 4 || notPlurals.has(word)) return word;
  const known = irregular.get(word);
  if (known) return known;
  if (word.endsWith("ies")) return `${word.slice(0, -3)}y`;
  if (/(?:ch|sh|x|z|ss|o)es$/.test(word)) return word.slice(0, -2);
  if (word.endsWith("s") && !/(?:ss|us|is)$/.test(word)) return word.slice(0, -1);
  return word;
}
