/** What a drink's ice costs, where the house pays for it. */
import type { Beside, ServePlan, Uncertain } from "../engine/plan.ts";
import { isOf } from "./currency.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { unknownModel } from "./ingredient.ts";
import { iceFacts, type Step } from "./method.ts";
import type { Scope } from "./scope.ts";
import type { Settings } from "./settings.ts";
import { isWrong, readPrice, times } from "./values.ts";

/** The ice of each contact, and what stands fresh in the glasses; nothing for ice without a price: it comes from the machine. */
export function iceCosts(
  house: House,
  scope: Scope,
  steps: readonly Step[],
  plan: ServePlan,
  iceName: string,
  settings: Settings,
): Beside[] {
  const known = steps.filter((step) => step.technique && !step.toGlass);
  const contacts = plan.steps.flatMap(({ technique, ice }, index) => {
    if (!technique.chill) return [];
    const massG = ice?.massG ?? plan.ice.massG ?? { value: technique.chill.iceG * plan.serves, u: 0, why: "the usual ice" };
    return costOfIce(house, scope, known[index]?.ice?.name ?? iceName, massG, settings);
  });
  const served = steps.findLast((one) => one.over && !one.technique?.chill);
  if (!served || !plan.serveIceG) return contacts;
  return [...contacts, ...costOfIce(house, scope, served.ice?.name ?? iceName, times(plan.serveIceG, plan.serves), settings)];
}

function costOfIce(house: House, scope: Scope, name: string, massG: Uncertain, settings: Settings): Beside[] {
  const entry = house.lookup(scope, "ice", name)[0]?.entry;
  const at = entry && findFieldIn(entry, "price");
  const read = at && readPrice(at.field, "0.35 per 1");
  if (!read || isWrong(read) || !isOf(read.value.currency, settings.currency)) return [];
  const { amount, per = {} } = read.value;
  const pieceG = iceFacts(house, scope, name)?.pieceG?.value;
  // What is bought by the piece is counted, whatever each weighs.
  const cost =
    per.count && pieceG ? certain((massG.value / pieceG) * (amount / per.count)) : per.g ? times(massG, amount / per.g) : undefined;
  return cost ? [{ of: unknownModel(name), amount: { g: massG }, price: { amount: cost, per: "all" } }] : [];
}

function certain(value: number): Uncertain {
  return { value, u: 0, why: "what the ice costs" };
}
