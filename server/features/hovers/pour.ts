/** A pour of a drink: what it brings, how much that is in the other units, how cold it is and what that saves. */
import { assess } from "../../engine/assess.ts";
import type { Amount, ServePlan } from "../../engine/plan.ts";
import type { Assessment } from "../../house/drink.ts";
import type { House } from "../../house/house.ts";
import { has } from "../../house/modifiers.ts";
import type { FlatPour } from "../../house/riff.ts";
import type { Settings } from "../../house/settings.ts";
import { type Measure, showShare, showTemperature, showVolume } from "../../house/show.ts";
import { showPour } from "../../house/show-pour.ts";
import { isInert } from "../../house/stock.ts";
import { asText, bold, lineBreak, paragraphs } from "../markdown.ts";
import { describeAmount } from "./amount.ts";
import { describeAllergens } from "./guest.ts";
import { sourcesInBrief } from "./sources.ts";

/** A pour of a drink, with what the drink makes of it. */
export function describePour(house: House, assessment: Assessment, pour: FlatPour, settings: Settings, measure: Measure): string {
  const index = assessment.pours.indexOf(pour);
  const plan = assessment.plan.pours[index];
  const amount = plan && amountPoured(assessment, index);
  const { found } = pour.ingredient.resolution;
  return paragraphs(
    [
      [bold(showPour(pour, pour.ingredient)), ...circumstances(assessment, pour, index)].join(" · "),
      ...(found ? [describeAllergens(house, found.entry)] : []),
    ].join(lineBreak),
    amount ? describeAmount(pour.ingredient, amount, settings, pour.quantity) : whyNothing(pour),
    plan && temperatureOf(assessment, index, measure),
    sourcesInBrief(house, pour.ingredient),
  );
}

function circumstances({ outcome, plan }: Assessment, pour: FlatPour, index: number): string[] {
  const stage = pour.stage === "after" ? "after the ice" : plan.steps.some((step) => step.technique.chill) ? "in with the ice" : "";
  const mine = outcome.poured(index)?.ml;
  let all = 0;
  for (let other = 0; other < plan.pours.length; other++) all += outcome.poured(other)?.ml ?? 0;
  const share = mine !== undefined && all > 0 ? `${showShare(mine / all)} of what is poured` : "";
  return [stage, share].filter(Boolean);
}

/** As planned; for a top what it came to. */
function amountPoured({ outcome, plan }: Assessment, index: number): Amount {
  const { amount } = plan.pours[index]!;
  if ("ml" in amount || "g" in amount) return amount;
  const poured = outcome.poured(index);
  return { ml: poured ? { value: poured.ml, u: 0, why: "as much as fits" } : { because: "how full the glass is by then is not known" } };
}

function whyNothing({ ingredient, modifiers }: FlatPour): string {
  if (has(modifiers, "optional")) return "Optional: the figures are without it, allergens and diets with it.";
  if (has(modifiers, "to rim")) return "On the rim: not counted in the drink.";
  if (ingredient.facts && isInert(ingredient.facts)) return "It gives its taste and brings no liquid that is counted.";
  return "It brings nothing that is counted.";
}

/** How cold it goes in and, where it meets the ice, how much water that saves or costs. */
function temperatureOf({ plan, outcome }: Assessment, index: number, measure: Measure): string | undefined {
  const { temperatureC, stage } = plan.pours[index]!;
  const differs = Math.abs(temperatureC.value - plan.ambientC.value) >= 0.5;
  if (!differs) return undefined;
  const at = `At ${showTemperature(temperatureC.value)}, ${asText(temperatureC.why)}`;
  const water = outcome.value("waterMl");
  const ambient = stage === "vessel" ? waterAtAmbient(plan, index) : null;
  if (water === null || ambient === null || Math.abs(ambient - water) < 0.05) return `${at}.`;
  const saved = ambient - water;
  const change = `${showVolume(Math.abs(saved), measure)} ${saved > 0 ? "less" : "more"} water`;
  return `${at}: the drink takes up **${change}** than with it at ${showTemperature(plan.ambientC.value)}, ${showVolume(water, measure)} instead of ${showVolume(ambient, measure)}.`;
}

/** The water that the same drink takes up with one pour at the room's temperature, ml. */
function waterAtAmbient(plan: ServePlan, index: number): number | null {
  const pours = plan.pours.map((pour, at) => (at === index ? { ...pour, temperatureC: plan.ambientC } : pour));
  return assess({ ...plan, pours }).value("waterMl");
}
