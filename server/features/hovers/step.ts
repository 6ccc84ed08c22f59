/** A step of a method: what it does to water and temperature, and what is in the vessel then. */
import type { Item } from "../../../grammar/tree.ts";
import { assess } from "../../engine/assess.ts";
import type { Outcome } from "../../engine/plan.ts";
import type { Assessment } from "../../house/drink.ts";
import type { Step } from "../../house/method.ts";
import { type Measure, showFigure, showList, showTemperature, showVolume, showWeight } from "../../house/show.ts";
import { asText, bold, paragraphs } from "../markdown.ts";

/** A step of a drink's method, computed for that drink. Absent for prose. */
export function describeStep(assessment: Assessment, item: Item, measure: Measure): string | undefined {
  const step = assessment.steps.find((one) => one.item === item);
  if (!step?.technique) return undefined;
  return paragraphs(describeTechnique(step), whatItDoes(assessment, step, measure), inTheVessel(assessment));
}

/** What the table of techniques says of a step. */
export function describeTechnique({ technique }: Step): string {
  return technique ? `${bold(technique.words[0]!)} · ${technique.doc} *(${technique.source})*` : "";
}

function whatItDoes(assessment: Assessment, step: Step, measure: Measure): string | undefined {
  if (!step.technique?.chill) return undefined;
  const counted = assessment.steps.filter((one) => one.technique);
  const index = counted.indexOf(step);
  const before = outcomeAfter(assessment, index);
  const after = outcomeAfter(assessment, index + 1);
  const [dry, wet] = [before.value("waterMl"), after.value("waterMl")];
  if (dry === null || wet === null) return "How much water it adds is unknown, because something that is poured is.";
  const ice = after.melt && `, of ${showWeight(after.melt.iceG)} ice`;
  return [
    `Adds ${showVolume(wet - dry, measure)} water${ice || ""}`,
    `takes it from ${showTemperature(before.value("temperatureC") ?? 0)} to ${showTemperature(after.value("temperatureC") ?? 0)}`,
    `and leaves ${showVolume(after.value("afterVolumeMl") ?? 0, measure)} of ${showFigure(after.value("strengthPct") ?? 0, "% vol", 1)}.`,
  ].join(", ");
}

/** What is in the vessel after so many of the plan's steps. */
function outcomeAfter({ plan }: Assessment, steps: number): Outcome {
  const { serveIceG: _ice, glass: _glass, ...rest } = plan;
  return assess({ ...rest, pours: plan.pours.filter((pour) => pour.stage === "vessel"), steps: plan.steps.slice(0, steps) });
}

function inTheVessel({ pours }: Assessment): string | undefined {
  const names = (stage: "vessel" | "after") => pours.filter((pour) => pour.stage === stage).map((pour) => pour.ingredient.resolution.text);
  const [inside, later] = [names("vessel"), names("after")];
  if (inside.length === 0) return undefined;
  return `In the vessel: ${asText(showList(inside, 12))}.${later.length > 0 ? ` Poured after it: ${asText(showList(later, 12))}.` : ""}`;
}
