/** What a pour's name means: a stock, a prep, a drink poured in a drink, or nothing that is declared. */
import type { Name } from "../../grammar/tree.ts";
import type { Model, Unknown } from "../engine/plan.ts";
import type { House } from "./house.ts";
import { has } from "./modifiers.ts";
import { notDeclared } from "./reasons.ts";
import type { Resolution, Scope } from "./scope.ts";
import { type StockFacts, stockFacts } from "./stock.ts";

export interface Ingredient {
  readonly resolution: Resolution;
  readonly model: Model;
  /** For a stock. */
  readonly facts?: StockFacts;
}

/** Resolves a pour's name and computes what stands behind it. */
export function ingredientOf(house: House, scope: Scope, name: Name): Ingredient {
  const resolution = house.resolve(scope, ["ingredient", "drink"], name);
  const entry = resolution.found?.entry;
  if (!entry) return { resolution, model: unknownModel(resolution.text) };
  if (entry.kind !== "stock") return { resolution, model: house.modelOf(entry) };
  const facts = stockFacts(house, entry);
  return { resolution, facts, model: has(resolution.modifiers, "juiced") ? juiceOf(house, scope, facts) : facts.model };
}

/** An ingredient that nothing is known of. */
export function unknownModel(name: string, because = notDeclared(name)): Model {
  const unknown: Unknown = { because };
  return {
    type: "stock",
    name,
    solid: false,
    abvPct: unknown,
    sugars: [{ amount: unknown, per: "100 ml", sugar: "sucrose" }],
    acids: [{ amount: unknown, per: "100 ml", acid: "citric", titrated: true }],
    salt: { amount: unknown, per: "100 ml" },
    solids: { amount: unknown, per: "100 ml" },
    fat: { amount: unknown, per: "100 ml" },
    caffeineMg: { amount: unknown, per: "100 ml" },
  };
}

/** A juiced fruit brings what its juice brings: `lime, juiced` is `lime juice`. */
function juiceOf(house: House, scope: Scope, facts: StockFacts): Model {
  const juice = house.lookup(scope, "ingredient", `${facts.name} juice`)[0]?.entry;
  if (juice?.kind === "stock") return stockFacts(house, juice).model;
  return unknownModel(facts.name, `what the juice of ${facts.name} holds is not given: declare “${facts.name} juice”`);
}
