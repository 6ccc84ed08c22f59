/** Allergens, diets and keeping in words: for hovers, reports and whatever else a person reads. */
import type { Keeping } from "./keeping.ts";
import { capital, showList } from "./show.ts";
import { type Contained, type Diet, type Suitability, usAllergens } from "./suitability.ts";

/** How an allergen is called in a country, by its two letters. */
export function wordFor(allergen: Contained["allergen"], country: string | undefined): string {
  return (country === "US" && usAllergens[allergen]) || allergen;
}

/**
 * `Contains egg; assumed to contain sulphites.`, and `Not stated for clove bitters.`; the second is empty where
 * all that goes in is answered for. In the United States the nine that count there come first.
 */
export function showAllergens({ contains, notStated }: Pick<Suitability, "contains" | "notStated">, country: string | undefined) {
  const wordsOf = (those: readonly Contained[]) =>
    showList(
      inOrder(those, country).map(({ allergen }) => wordFor(allergen, country)),
      14,
    );
  const stated = wordsOf(contains.filter(({ assumed }) => !assumed));
  const assumed = wordsOf(contains.filter((one) => one.assumed));
  const found = [stated && `contains ${stated}`, assumed && `assumed to contain ${assumed}`].filter(Boolean).join("; ");
  const silent = notStated.length > 0 ? `${found ? "Not" : "Allergens not"} stated for ${showList(notStated)}.` : "";
  return { contains: found ? `${capital(found)}.` : silent ? "" : "No allergens, by all that is stated or assumed.", notStated: silent };
}

/** With what brings them: `gluten and fish (worcester sauce in deck mix), celery (celery stick, assumed)`. */
export function showSources(contains: readonly Contained[], country: string | undefined): string {
  const sources = grouped(
    inOrder(contains, country).map(({ allergen, names, assumed }) => [
      showList(names) + (assumed ? ", assumed" : ""),
      wordFor(allergen, country),
    ]),
  );
  return sources.map(([source, words]) => `${showList(words, 14)} (${source})`).join(", ");
}

function inOrder(contains: readonly Contained[], country: string | undefined): readonly Contained[] {
  if (country !== "US") return contains;
  return [...contains].sort((one, other) => Number(other.allergen in usAllergens) - Number(one.allergen in usAllergens));
}

/**
 * What is decided: `vegan`, `assumed vegan` where only the larder says so of a part, `not vegan or gluten free
 * (milk stout)`. What is vegan is not called vegetarian as well.
 */
export function showDiets(
  diets: readonly { diet: Diet; suits?: boolean | null; assumed?: boolean; because: readonly string[] }[],
): string[] {
  const suiting = diets
    .flatMap(({ diet, suits }) => (suits ? [diet] : []))
    .filter((diet, _, all) => diet !== "vegetarian" || !all.includes("vegan"))
    .map((diet) => (diets.some((one) => one.diet === diet && one.assumed) ? `assumed ${diet}` : diet));
  const against = grouped(
    diets.flatMap(({ diet, suits, because }): [string, string][] => (suits === false ? [[showList(because), diet]] : [])),
  );
  return [...suiting, ...against.map(([because, words]) => `not ${showList(words, 5).replace(/ and ([^,]*)$/, " or $1")} (${because})`)];
}

/** `1 day chilled (lemon juice)`. */
export function showKeeping({ text, name }: Pick<Keeping, "text" | "name">): string {
  return `${text} (${name})`;
}

/** What goes with the same key together, in the order of the first. */
function grouped(pairs: readonly (readonly [key: string, word: string])[]): [key: string, words: string[]][] {
  const groups = new Map<string, string[]>();
  for (const [key, word] of pairs) groups.set(key, [...(groups.get(key) ?? []), word]);
  return [...groups];
}
