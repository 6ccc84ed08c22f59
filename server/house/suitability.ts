/**
 * What a guest may not be able to take, and which diets it suits: carried through preps, drinks poured in
 * drinks, riffs, alternatives, options, rims and garnishes. What nobody states is "not stated", never "free
 * from", and no step of a method clears anything.
 */
import { allergenWords, dietWords, type StockKind } from "../../grammar/fields.ts";
import type { Entry } from "../../grammar/tree.ts";
import { isCyclic } from "./cycles.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import { garnishesOf } from "./garnish.ts";
import type { House } from "./house.ts";
import { readMethod } from "./method.ts";
import { flatten } from "./riff.ts";
import type { Resolution } from "./scope.ts";
import { type StockFacts, stockFacts } from "./stock.ts";
import { isNone } from "./values.ts";

export type Allergen = (typeof allergenWords)[number];
export type Diet = (typeof dietWords)[number];

export interface Suitability {
  /** In the order of the regulation's list. */
  readonly contains: readonly Contained[];
  /** The names of which nobody states the allergens. */
  readonly notStated: readonly string[];
  /** One for each diet. */
  readonly diets: readonly DietAnswer[];
}

export interface Contained {
  readonly allergen: Allergen;
  /** What brings it, in the order in which it is poured. */
  readonly names: readonly string[];
  /** Nobody but the larder says so. */
  readonly assumed: boolean;
}

export interface DietAnswer {
  readonly diet: Diet;
  /** Absent: not stated. */
  readonly suits?: boolean;
  /** Where it does not suit, what decides that. */
  readonly because: readonly string[];
}

/** Of a drink, a prep or a stock. */
export function suitabilityOf(house: House, entry: Entry): Suitability {
  return house.recall(entry, "suitability", () => {
    const parts = partsOf(house, entry);
    return {
      contains: containedIn(parts),
      notStated: namesOf(parts.filter((part) => !part.answered)),
      diets: dietWords.map((diet) => answer(diet, parts)),
    };
  });
}

/** The nine that the United States count, by their names there: 21 U.S.C. 321(qq), with sesame since 2023. Of the gluten cereals only wheat. */
export const usAllergens: Partial<Record<Allergen, string>> = {
  milk: "milk",
  egg: "egg",
  fish: "fish",
  crustaceans: "crustacean shellfish",
  nuts: "tree nuts",
  gluten: "gluten (perhaps wheat)",
  peanut: "peanut",
  soya: "soybean",
  sesame: "sesame",
};

/** What one thing that goes in is known to bring, before it is put together. */
interface Part {
  readonly name: string;
  /** The prep or the drink that is poured with it in; the outermost, for that is what a spec names. */
  readonly within?: string;
  readonly kind?: StockKind;
  readonly allergens: readonly Allergen[];
  /** The list is whole: whoever made it stated it. */
  readonly answered: boolean;
  readonly assumed: boolean;
  /** Which it is stated to suit. */
  readonly diets: ReadonlySet<Diet>;
}

function containedIn(parts: readonly Part[]): Contained[] {
  return allergenWords.flatMap((allergen) => {
    const bringing = parts.filter((part) => part.allergens.includes(allergen));
    if (bringing.length === 0) return [];
    return [{ allergen, names: namesOf(bringing), assumed: bringing.every((part) => part.assumed) }];
  });
}

function answer(diet: Diet, parts: readonly Part[]): DietAnswer {
  const against = parts.filter((part) => isAgainst(part, diet));
  if (against.length > 0) return { diet, suits: false, because: namesOf(against) };
  const suits = parts.length > 0 && parts.every(({ diets }) => diets.has(diet) || (diet === "vegetarian" && diets.has("vegan")));
  return { diet, ...(suits && { suits }), because: [] };
}

const fromAnimals: ReadonlySet<string> = new Set<Allergen | StockKind>([
  "milk",
  "egg",
  "fish",
  "crustaceans",
  "molluscs",
  "dairy",
  "honey",
]);
const flesh: ReadonlySet<string> = new Set<Allergen>(["fish", "crustaceans", "molluscs"]);

/** For halal and kosher only what somebody states counts: what a faith allows is not for a program to weigh. */
function isAgainst({ allergens, kind }: Part, diet: Diet): boolean {
  if (diet === "gluten free") return allergens.includes("gluten");
  if (diet === "vegan") return fromAnimals.has(kind ?? "") || allergens.some((one) => fromAnimals.has(one));
  return diet === "vegetarian" && allergens.some((one) => flesh.has(one));
}

function namesOf(parts: readonly Part[]): string[] {
  return [...new Set(parts.map(({ name, within }) => (within ? `${name} in ${within}` : name)))];
}

// What goes in

/** Remembered for each entry, so that a syrup in a hundred drinks is gone through once. */
function partsOf(house: House, entry: Entry): readonly Part[] {
  return house.recall(entry, "suitability parts", () => {
    if (entry.kind === "stock") return [stockPart(house, stockFacts(house, entry))];
    const name = entry.name?.text ?? "";
    if (isCyclic(house, entry)) return [unanswered(name)];
    const inside = entry.kind === "prep" ? partsOfPrep(house, entry) : partsOfDrink(house, entry);
    return stated(entry, name, inside.length > 0 || entry.kind === "drink" ? inside : [unanswered(name)]);
  });
}

function partsOfPrep(house: House, entry: Entry): Part[] {
  const scope = house.scopeOf(entry);
  const parts: Part[] = [];
  for (const { content } of entry.lines) {
    if ((content.kind !== "pour" && content.kind !== "or") || !content.pour?.name) continue;
    parts.push(...partsBehind(house, house.resolve(scope, ["ingredient", "drink"], content.pour.name)));
  }
  const method = findFieldIn(entry, "method");
  const clarified = method && readMethod(house, scope, method.field).some(({ technique }) => technique?.id === "milk-clarify");
  if (clarified) parts.push({ ...unanswered("milk-clarify"), allergens: ["milk"], answered: true });
  return parts;
}

function partsOfDrink(house: House, entry: Entry): Part[] {
  const flat = flatten(house, entry);
  const poured = flat.pours.flatMap(({ ingredient, alternatives }) => [ingredient, ...alternatives.map((one) => one.ingredient)]);
  return [
    ...poured.flatMap(({ resolution }) => partsBehind(house, resolution)),
    ...garnishesOf(house, house.scopeOf(entry), flat).flatMap(({ name, ingredient }) =>
      ingredient ? partsBehind(house, ingredient.resolution) : [unanswered(name)],
    ),
  ];
}

/** What stands behind a name; what is made of several says of each that it is in there. */
function partsBehind(house: House, { found, text }: Pick<Resolution, "found" | "text">): readonly Part[] {
  if (!found) return [unanswered(text)];
  const parts = partsOf(house, found.entry);
  const name = found.entry.name?.text ?? "";
  return found.entry.kind === "stock" ? parts : parts.map((part) => (part.name === name ? part : { ...part, within: name }));
}

/** What the kind alone is known for counts against it, and is no answer: a stock of another name may hold more. */
function stockPart(house: House, facts: StockFacts): Part {
  const { name, kind } = facts;
  const named = facts.namedField("allergens");
  const at = named ?? facts.field("allergens");
  const { allergens, whole } = allergensIn(at);
  return {
    name,
    ...(kind && { kind }),
    allergens,
    answered: named !== undefined && whole,
    assumed: at !== undefined && house.isLarder(at.entry),
    diets: dietsIn(facts.namedField("diet")),
  };
}

/** A prep's or a drink's own lines answer for what is silent inside it and add to what is not; they take nothing away. */
function stated(entry: Entry, name: string, inside: readonly Part[]): readonly Part[] {
  const at = findFieldIn(entry, "allergens");
  const { allergens, whole } = allergensIn(at);
  const own = dietsIn(findFieldIn(entry, "diet"));
  const parts = inside.map((part) => ({ ...part, answered: part.answered || whole, diets: new Set([...part.diets, ...own]) }));
  if (allergens.length === 0) return parts;
  return [...parts, { name, allergens, answered: true, assumed: false, diets: new Set(dietWords) }];
}

function unanswered(name: string): Part {
  return { name, allergens: [], answered: false, assumed: false, diets: new Set() };
}

/** `whole`: an answer is there, and every word of it is one that is known. */
function allergensIn(at: FieldAt | undefined): { allergens: Allergen[]; whole: boolean } {
  if (!at) return { allergens: [], whole: false };
  if (isNone(at.field)) return { allergens: [], whole: true };
  const words = wordsIn(at);
  const allergens = allergenWords.filter((word) => words.includes(word));
  return { allergens, whole: words.length > 0 && words.every((word) => allergens.some((one) => one === word)) };
}

function dietsIn(at: FieldAt | undefined): ReadonlySet<Diet> {
  const words = at ? wordsIn(at) : [];
  return new Set(dietWords.filter((word) => words.includes(word)));
}

function wordsIn({ field }: FieldAt): string[] {
  return (field.value?.text.toLowerCase() ?? "")
    .split(/[,;]/)
    .map((word) => word.trim())
    .filter(Boolean);
}
