/**
 * Drinks and preps as recipes in schema.org's words, for a page or another program. A riff is told whole; what the vocabulary has no word for is left out, and said.
 */
import type { Entry } from "../../grammar/tree.ts";
import type { Figure } from "../engine/plan.ts";
import { assessDrink } from "../house/drink.ts";
import { findFieldIn, linesOf } from "../house/entry.ts";
import { familyOf } from "../house/family.ts";
import type { House } from "../house/house.ts";
import { proseOf } from "../house/prose.ts";
import { type Alternative, type FlatPour, flatten } from "../house/riff.ts";
import { unquoted } from "../house/scope.ts";
import { serveOf } from "../house/serve.ts";
import { capital, showCount, showValue } from "../house/show.ts";
import { showPourAmount } from "../house/show-pour.ts";
import { type Diet, suitabilityOf } from "../house/suitability.ts";
import { forGarnish, forRim, methodSection, prepCategory, serveIn } from "./recipe-words.ts";

/** The restricted diets that the vocabulary knows of ours. */
const diets = {
  vegan: "https://schema.org/VeganDiet",
  vegetarian: "https://schema.org/VegetarianDiet",
  halal: "https://schema.org/HalalDiet",
  kosher: "https://schema.org/KosherDiet",
  "gluten free": "https://schema.org/GlutenFreeDiet",
} as const satisfies Record<Diet, string>;

interface Step {
  readonly "@type": "HowToStep";
  readonly text: string;
}

/** What is told of a drink or a prep, in properties of the vocabulary's Recipe. */
export interface RecipeNode {
  readonly "@type": "Recipe";
  readonly name: string;
  readonly description?: string;
  readonly creditText?: string;
  readonly keywords?: string;
  readonly suitableForDiet?: readonly (typeof diets)[Diet][];
  readonly recipeCategory?: string;
  readonly recipeYield?: string;
  readonly recipeIngredient?: readonly string[];
  readonly recipeInstructions?: readonly (
    | Step
    | { readonly "@type": "HowToSection"; readonly name: string; readonly itemListElement: readonly Step[] }
  )[];
  /** In the form of the vocabulary's Energy: a number and its unit. */
  readonly nutrition?: { readonly "@type": "NutritionInformation"; readonly calories: string };
}

/** Fields that a recipe tells in its own way; of the prose for guests the first that is there. */
const told: ReadonlySet<string> = new Set([
  ...["family", "glass", "method", "garnish", "rim", "serves", "credit", "tags", "steps", "yield", "from"],
]);
const descriptions = ["guest", "headnote", "story"];

/** Entries that are no drinks and no preps, or have no name yet, are passed over. */
export function exportRecipes(house: House, entries: readonly Entry[]): { readonly text: string; readonly leftOut: readonly string[] } {
  const recipes = entries.flatMap((entry): RecipeNode[] => {
    if (!entry.name || (entry.kind !== "drink" && entry.kind !== "prep")) return [];
    return [entry.kind === "drink" ? drinkRecipe(house, entry) : prepRecipe(house, entry)];
  });
  const graph = { "@context": "https://schema.org", "@graph": recipes };
  // In a page the first `</script>` would end the data, and what follows would run.
  return { text: `${JSON.stringify(graph, null, 2).replaceAll("<", "\\u003c")}\n`, leftOut: leftOut(entries) };
}

function drinkRecipe(house: House, entry: Entry): RecipeNode {
  const flat = flatten(house, entry);
  const assessment = assessDrink(house, entry);
  const family = familyOf(house, flat).name;
  const items = (field: string) => flat.field(field)?.field.items ?? [];
  const glass = flat.field("glass")?.field.value?.text;
  const { serves } = assessment.plan;
  return {
    ...sharedParts(house, entry),
    ...(family && { recipeCategory: family }),
    recipeYield: showCount(serves, "serving"),
    recipeIngredient: [
      ...flat.pours.map(pourText),
      ...items("garnish").map(({ text }) => text + forGarnish),
      ...items("rim").map(({ text }) => text + forRim),
    ],
    ...instructions(
      items("method").map(({ text }) => text),
      glass,
      proseSteps(entry),
    ),
    ...nutrition(assessment.proportional ? undefined : serveOf(house, assessment).energyKcal),
  };
}

function prepRecipe(house: House, entry: Entry): RecipeNode {
  const yielded = findFieldIn(entry, "yield")?.field.value?.text;
  const steps = findFieldIn(entry, "method")?.field.items ?? [];
  return {
    ...sharedParts(house, entry),
    recipeCategory: prepCategory,
    ...(yielded && { recipeYield: yielded }),
    recipeIngredient: flatten(house, entry).pours.map(pourText),
    ...instructions(
      steps.map(({ text }) => text),
      undefined,
      proseSteps(entry),
    ),
  };
}

function sharedParts(house: House, entry: Entry): RecipeNode {
  const value = (field: string) => {
    const text = findFieldIn(entry, field)?.field.value?.text;
    return text?.toLowerCase() === "none" ? undefined : text;
  };
  const description = descriptions.map((field) => proseOf(entry, field)).find(Boolean);
  const [credit, tags] = [value("credit"), value("tags")];
  // Only what somebody states of everything that goes in, never what the larder assumes.
  const suited = suitabilityOf(house, entry).diets.filter(({ suits, assumed }) => suits && !assumed);
  return {
    "@type": "Recipe",
    name: unquoted(entry.name!),
    ...(description && { description }),
    ...(credit && { creditText: credit }),
    ...(tags && { keywords: tags.replace(/\s*;\s*/g, ", ") }),
    ...(suited.length > 0 && { suitableForDiet: suited.map(({ diet }) => diets[diet]) }),
  };
}

function pourText({ lead, quantity, name, alternatives }: FlatPour): string {
  const whole = [showPourAmount({ ...(lead && { lead }), ...(quantity && { quantity }) }), name.text].filter(Boolean).join(" ");
  return [whole, ...alternatives.map((one) => alternativeText(one, quantity))].join(" or ");
}

function alternativeText({ quantity, name }: Alternative, before: FlatPour["quantity"]): string {
  const of = quantity ?? before;
  return [showPourAmount({ ...(of && { quantity: of }) }), name.text].filter(Boolean).join(" ");
}

/** The method and the glass in a section of their own, since they are in closed words; what is told in sentences below. */
function instructions(method: readonly string[], glass: string | undefined, steps: readonly string[]): Partial<RecipeNode> {
  const closed = [...method.map((text) => `${capital(text)}.`), ...(glass ? [serveIn(glass)] : [])];
  const section = closed.length > 0 ? [{ "@type": "HowToSection" as const, name: methodSection, itemListElement: closed.map(step) }] : [];
  const all = [...section, ...steps.map(step)];
  return all.length > 0 ? { recipeInstructions: all } : {};
}

function step(text: string): Step {
  return { "@type": "HowToStep", text };
}

/** Sentences have no closed form, so all of them are one step. */
function proseSteps(entry: Entry): string[] {
  const text = proseOf(entry, "steps");
  return text ? [text] : [];
}

function nutrition(energyKcal: Figure | undefined): Partial<RecipeNode> {
  if (energyKcal?.value == null) return {};
  return { nutrition: { "@type": "NutritionInformation", calories: `${showValue(energyKcal, 0)} kcal` } };
}

function leftOut(entries: readonly Entry[]): string[] {
  const names = new Set<string>();
  for (const entry of entries) {
    if (entry.kind !== "drink" && entry.kind !== "prep") continue;
    const description = descriptions.find((field) => proseOf(entry, field));
    for (const { content } of linesOf(entry, "field")) {
      const name = content.name.text.toLowerCase();
      if (!told.has(name) && name !== description) names.add(name);
    }
  }
  return names.size > 0 ? [`Recipes have no place for these fields, which are not in the file: ${[...names].join(", ")}.`] : [];
}
