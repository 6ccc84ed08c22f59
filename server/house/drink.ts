/** A drink as the engine wants it, and what the engine makes of it. */
import type { Entry } from "../../grammar/tree.ts";
import { assess } from "../engine/assess.ts";
import type { Known, Model, Outcome, PourPlan, PrepPart, Price, ServePlan, Uncertain } from "../engine/plan.ts";
import { amountOf, type Measuring, type PartSize } from "./amounts.ts";
import { besideGarnish, besidePours, forAll, rinseMl } from "./beside.ts";
import { defaultIce, isHot, serveIceOf, stepPlans } from "./chilling.ts";
import { isCyclic } from "./cycles.ts";
import { glassOf, glassTemperature } from "./glass.ts";
import type { House } from "./house.ts";
import { iceCosts } from "./ice-cost.ts";
import { type Ingredient, unknownModel } from "./ingredient.ts";
import { type Step, stepsOf } from "./method.ts";
import { has, temperatureIn } from "./modifiers.ts";
import { priceOfPour } from "./pour-price.ts";
import { madeFromItself, noAmount } from "./reasons.ts";
import { type FlatDrink, type FlatPour, flatten } from "./riff.ts";
import type { ModifierText, Scope } from "./scope.ts";
import { type Settings, settingsOf } from "./settings.ts";
import { isInert } from "./stock.ts";
import { isWrong, readQuantity, spreadOf } from "./values.ts";

export interface Assessment {
  readonly flat: FlatDrink;
  readonly plan: ServePlan;
  readonly outcome: Outcome;
  readonly steps: readonly Step[];
  /** For each pour of the plan the flat pour it is made from. */
  readonly pours: readonly FlatPour[];
  /** Parts without `total:` or `part:`: shares are right, amounts are nowhere stated. */
  readonly proportional: boolean;
  /** Garnish, rim and leaves that nobody knows the price of: the cost is without them. */
  readonly unpriced: readonly string[];
}

/** One part where a drink states no size: only shares matter then. */
export const nominalPartMl = 30;
/** A rinse that is poured away leaves a film: practice, no source. */
const rinseLeftMl: Uncertain = { value: 1, u: 0.5, why: "what a rinse leaves in the glass, practice" };
/** All of it is paid for, so its cost stands beside the drink. */
const paidBeside: Price = { amount: { value: 0, u: 0, why: "paid for beside the drink" }, per: "all" };

export function assessDrink(house: House, entry: Entry): Assessment {
  return house.recall(entry, "assessment", () => assessFlat(house, flatten(house, entry)));
}

/** A drink as its pours stand, written so anywhere or not; nothing of it is remembered. */
export function assessFlat(house: House, flat: FlatDrink): Assessment {
  const planned = planOf(house, house.scopeOf(flat.entry), flat);
  return { flat, ...planned, outcome: assess(planned.plan) };
}

/** A drink poured in a drink: its pours before ice. */
export function drinkModel(house: House, entry: Entry): Model {
  return house.recall(entry, "model", () => {
    const name = entry.name?.text ?? "";
    if (isCyclic(house, entry)) return unknownModel(name, madeFromItself(name));
    const { plan, flat } = assessDrink(house, entry);
    const parts = plan.pours.flatMap(({ of, amount, price }): PrepPart[] =>
      "top" in amount || "topToMl" in amount ? [] : [{ of, amount, ...(price && { price }) }],
    );
    const scope = house.scopeOf(entry);
    const { beside } = besidePours(house, scope, flat, measuringOf(flat, settingsOf(house, scope)).measuring, servesOf(flat));
    const infused = (plan.infused ?? []).map((of): PrepPart => ({ of, amount: { g: { value: 0, u: 0, why: "" } }, discarded: true }));
    return { type: "prep", name, parts: [...parts, ...infused, ...beside.map((one) => ({ ...one, discarded: true }))] };
  });
}

function planOf(house: House, scope: Scope, flat: FlatDrink) {
  const settings = settingsOf(house, scope);
  const method = flat.field("method");
  const steps = method ? stepsOf(house, method) : [];
  const { measuring, proportional } = measuringOf(flat, settings);
  const serves = servesOf(flat);
  const pours: FlatPour[] = [];
  const plans: PourPlan[] = [];
  const infused: Model[] = [];
  for (const pour of flat.pours) {
    const plan = pourPlan(house, scope, pour, measuring, serves);
    if (!plan) {
      if (!has(pour.modifiers, "optional") && !has(pour.modifiers, "to rim")) infused.push(pour.ingredient.model);
      continue;
    }
    pours.push(pour);
    plans.push(plan);
  }
  const glass = glassOf(house, scope, flat);
  const ice = defaultIce(house, scope, flat, settings);
  const chilling = { settings, ice, glass, serves, hot: plans.some(isHot) };
  const serveIce = serveIceOf(steps, chilling);
  const glassC = glassTemperature(house, scope, flat, steps, settings);
  const poured = besidePours(house, scope, flat, measuring, serves);
  const garnish = besideGarnish(house, scope, flat, measuring, serves);
  const plan: ServePlan = {
    pours: plans,
    steps: stepPlans(steps, chilling),
    ice,
    ambientC: settings.ambientC,
    serves,
    ...(glass && { glass: glass.plan }),
    ...(glassC && { glassC }),
    ...(serveIce && { serveIceG: serveIce.massG, serveIceKind: serveIce.kind }),
    ...(infused.length > 0 && { infused }),
  };
  const iceName = flat.field("ice")?.field.value?.text ?? settings.ice;
  const beside = [...poured.beside, ...garnish.beside, ...iceCosts(house, scope, steps, plan, iceName, settings)];
  return { plan: { ...plan, beside }, steps, pours, proportional, unpriced: [...poured.unpriced, ...garnish.unpriced] };
}

/** How a drink's pours are measured, and whether its parts have no size. */
export function measuringOf(flat: FlatDrink, settings: Settings): { measuring: Measuring; proportional: boolean } {
  const { part, proportional } = partOf(flat, settings);
  return { measuring: { settings, jigger: true, part }, proportional };
}

/** What a pour brings to the engine; absent where it brings nothing to the liquid (a leaf, a rim, an option). */
function pourPlan(house: House, scope: Scope, pour: FlatPour, measuring: Measuring, serves: number): PourPlan | undefined {
  const { ingredient, modifiers, stage } = pour;
  if (has(modifiers, "optional") || has(modifiers, "to rim") || has(modifiers, "strained out")) return undefined;
  if (ingredient.facts && isInert(ingredient.facts)) return undefined;
  const { lead, quantity } = pour;
  const away = lead?.lead === "rinse" && has(modifiers, "discarded");
  const price = away ? paidBeside : priceOfPour(house, scope, ingredient, quantity);
  const temperatureC = temperatureOf(ingredient, modifiers, measuring.settings);
  const base = { of: ingredient.model, stage, temperatureC, ...(price && { price }) };
  if (lead?.lead === "top") {
    if (!quantity) return { ...base, amount: { top: true } };
    const amount = amountOf(quantity, ingredient, measuring);
    return { ...base, amount: { topToMl: "ml" in amount ? amount.ml : { because: "a drink is topped up to a volume, not to a weight" } } };
  }
  if (lead?.lead === "rinse") return { ...base, amount: { ml: rinsed(pour, measuring, serves) } };
  if (has(modifiers, "discarded")) return undefined;
  if (!quantity) return { ...base, amount: { ml: { because: noAmount(ingredient.resolution.text) } } };
  return { ...base, amount: amountOf(quantity, ingredient, measuring) };
}

/** Every glass is rinsed; a stated amount is for all of them. */
function rinsed(pour: FlatPour, measuring: Measuring, serves: number): Known {
  if (has(pour.modifiers, "discarded")) return forAll(rinseLeftMl, serves);
  if (!pour.quantity) return forAll(rinseMl, serves);
  const amount = amountOf(pour.quantity, pour.ingredient, measuring);
  return "ml" in amount ? amount.ml : forAll(rinseMl, serves);
}

function temperatureOf({ facts }: Ingredient, modifiers: readonly ModifierText[], settings: Settings): Uncertain {
  const stated = temperatureIn(modifiers);
  if (stated) return stated;
  if (has(modifiers, "frozen")) return settings.freezerC;
  if (has(modifiers, "chilled")) return settings.fridgeC;
  if (has(modifiers, "hot")) return settings.hotC;
  if (facts?.stored === "freezer") return settings.freezerC;
  if (facts?.stored === "fridge") return settings.fridgeC;
  if (facts?.stored === "hot") return settings.hotC;
  return settings.ambientC;
}

/** One part: `part:`, or `total:` shared out, or a nominal size that only shares may be read from. */
function partOf(flat: FlatDrink, settings: Settings): { part: PartSize; proportional: boolean } {
  const parts = flat.pours.filter((pour) => pour.quantity?.unit?.unit.dimension === "part" && !has(pour.modifiers, "optional"));
  if (parts.length === 0) return { part: { because: "no parts are poured" }, proportional: false };
  const by = flat.field("parts by")?.field.value?.text.toLowerCase();
  if (!by && parts.some((pour) => pour.ingredient.facts?.model.solid)) {
    return { part: { because: "there is a solid among the parts and nothing says `parts by: weight` or `volume`" }, proportional: false };
  }
  const size = (value: Known): PartSize => (by === "weight" ? { g: value } : { ml: value });
  const one = flat.field("part");
  const total = flat.field("total");
  const stated = one ?? total;
  const read = stated && readQuantity(stated.field, "30 ml");
  if (!stated || !read || isWrong(read)) return { part: size({ value: nominalPartMl, u: 0, why: "one part" }), proportional: true };
  const unit = read.value.unit?.unit;
  const ml = (unit?.id === "oz" ? settings.ounceMl : (unit?.ml ?? unit?.g)) ?? 1;
  const shares = parts.reduce((sum, pour) => sum + (spreadOf(pour.quantity!, () => 0, "")?.value ?? 0), 0);
  const divisor = one ? 1 : shares;
  const spread = spreadOf(read.value, (value) => 0.02 * value, "the size as stated")!;
  if (!(divisor > 0)) return { part: { because: "the parts add up to nothing" }, proportional: false };
  return { part: size({ ...spread, value: (spread.value * ml) / divisor, u: (spread.u * ml) / divisor }), proportional: false };
}

function servesOf(flat: FlatDrink): number {
  const serves = flat.field("serves")?.field;
  const read = serves && readQuantity(serves, "1");
  return read && !isWrong(read) && read.value.value! > 0 ? read.value.value! : 1;
}
