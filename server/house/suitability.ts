/**
 * What a guest may not be able to take, and which diets it suits: carried through preps, drinks poured in
 * drinks, riffs, alternatives, options, rims and garnishes. What nobody states is "not stated", never "free
 * from", and no step of a method clears anything.
 */
import { allergenWords, dietWords, type StockKind } from "../../grammar/fields.ts";
import type { Entry } from "../../grammar/tree.ts";
import { allergensNamedIn } from "./allergen-words.ts";
import { isCyclic } from "./cycles.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import { garnishesOf } from "./garnish.ts";
import type { House } from "./house.ts";
import { stepsOf } from "./method.ts";
import { pouredIn } from "./poured.ts";
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
  /** Nobody says so but the larder, or a word in its name. */
  readonly assumed: boolean;
}

export interface DietAnswer {
  readonly diet: Diet;
  /** Absent: not stated. */
  readonly suits?: boolean;
  /** Of something that goes in nobody but the larder says that it suits. */
  readonly assumed?: true;
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
  gluten: "wheat or other gluten",
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
  /** Those of them of which only the larder says so. */
  readonly assumedDiets: ReadonlySet<Diet>;
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
  const assumed = suits && parts.some(({ diets, assumedDiets }) => assumedDiets.has(diets.has(diet) ? diet : "vegan"));
  return { diet, ...(suits && { suits }), ...(assumed && { assumed }), because: [] };
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
  return [...partsPoured(house, entry), ...milkOf(house, findFieldIn(entry, "method"))];
}

function partsPoured(house: House, entry: Entry): Part[] {
  return pouredIn(house, entry).flatMap(({ ingredient }) => partsBehind(house, ingredient.resolution));
}

/** What clarifies is milk, also where it is only named as a step. */
function milkOf(house: House, method: FieldAt | undefined): Part[] {
  const clarified = method && stepsOf(house, method).some(({ technique }) => technique?.id === "milk-clarify");
  return clarified ? [{ ...unanswered("milk-clarify"), allergens: ["milk"], answered: true, assumed: false }] : [];
}

function partsOfDrink(house: House, entry: Entry): Part[] {
  const flat = flatten(house, entry);
  return [
    ...partsPoured(house, entry),
    ...garnishesOf(house, house.scopeOf(entry), flat).flatMap(({ name, ingredient }) =>
      ingredient ? partsBehind(house, ingredient.resolution) : [unanswered(name)],
    ),
    ...milkOf(house, flat.field("method")),
  ];
}

/** What stands behind a name; what is made of several says of each that it is in there. */
function partsBehind(house: House, { found, text }: Pick<Resolution, "found" | "text">): readonly Part[] {
  if (!found) return [unanswered(text)];
  const parts = partsOf(house, found.entry);
  const name = found.entry.name?.text ?? "";
  if (found.entry.kind === "stock") return found.alias ? parts.map((part) => ({ ...part, name: text })) : parts;
  return parts.map((part) => (part.name === name ? part : { ...part, within: name }));
}

/** May be fined with milk or egg, which only the label of each bottle tells. */
const fined: ReadonlySet<StockKind | undefined> = new Set(["wine", "fortified wine", "sparkling wine", "vermouth"]);

/** What the kind alone is known for counts against it, and is no answer: a stock of another name may hold more. */
function stockPart(house: House, facts: StockFacts): Part {
  const { name, kind } = facts;
  const named = facts.namedField("allergens");
  const at = named ?? facts.field("allergens");
  const { allergens, whole } = allergensIn(at);
  const diet = facts.namedField("diet");
  // What is distilled from a cereal holds no gluten: Regulation (EU) 1169/2011, Annex II.
  const byName = allergensNamedIn(name).filter((one) => one !== "gluten" || kind !== "spirit");
  return {
    name,
    ...(kind && { kind }),
    allergens: named ? allergens : both(allergens, byName),
    answered: named !== undefined && whole && !(house.isLarder(named.entry) && fined.has(kind)),
    assumed: named === undefined || house.isLarder(named.entry),
    diets: dietsIn(diet),
    assumedDiets: dietsIn(diet && house.isLarder(diet.entry) ? diet : undefined),
  };
}

/** A prep's or a drink's own lines answer for what is silent inside it and add to what is not; they take nothing away. */
function stated(entry: Entry, name: string, inside: readonly Part[]): readonly Part[] {
  const at = findFieldIn(entry, "allergens");
  const { allergens, whole } = allergensIn(at);
  const own = dietsIn(findFieldIn(entry, "diet"));
  const parts = inside.map((part) => ({
    ...part,
    answered: part.answered || whole,
    diets: new Set([...part.diets, ...own]),
    assumedDiets: new Set([...part.assumedDiets].filter((diet) => !own.has(diet))),
  }));
  if (allergens.length === 0) return parts;
  return [...parts, { name, allergens, answered: true, assumed: false, diets: new Set(dietWords), assumedDiets: new Set() }];
}

/** Nobody states anything of it, and its name may tell: crushed peanuts are peanut. */
function unanswered(name: string): Part {
  return { name, allergens: allergensNamedIn(name), answered: false, assumed: true, diets: new Set(), assumedDiets: new Set() };
}

/** `whole`: an answer is there, and every word of it is one that is known. Another word counts for what it names, and answers nothing. */
function allergensIn(at: FieldAt | undefined): { allergens: Allergen[]; whole: boolean } {
  if (!at) return { allergens: [], whole: false };
  if (isNone(at.field)) return { allergens: [], whole: true };
  const words = wordsIn(at);
  const isKnown = (word: string) => allergenWords.some((one) => one === word);
  const allergens = words.flatMap((word) => (isKnown(word) ? [word as Allergen] : allergensNamedIn(word)));
  return { allergens: both(allergens, []), whole: words.length > 0 && words.every(isKnown) };
}

function both(some: readonly Allergen[], others: readonly Allergen[]): Allergen[] {
  return allergenWords.filter((word) => some.includes(word) || others.includes(word));
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
