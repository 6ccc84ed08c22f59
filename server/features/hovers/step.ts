/** A step of a method: what it does to water and temperature, the sum behind that, and what is in the vessel then. */
import type { Item } from "../../../grammar/tree.ts";
import { assess } from "../../engine/assess.ts";
import type { Contact, Outcome } from "../../engine/plan.ts";
import type { Assessment } from "../../house/drink.ts";
import { heatBalance } from "../../house/heat-balance.ts";
import { isAerated, layersOf } from "../../house/layers.ts";
import type { Step } from "../../house/method.ts";
import { type Measure, showFigure, showList, showNumber, showShare, showTemperature, showVolume } from "../../house/show.ts";
import { asText, bold, paragraphs } from "../markdown.ts";

/** A step of a drink's method, computed for that drink. Absent for prose. */
export function describeStep(assessment: Assessment, item: Item, measure: Measure): string | undefined {
  const step = assessment.steps.find((one) => one.item === item);
  if (!step?.technique) return undefined;
  const layers = showLayers(assessment, step);
  if (layers) return paragraphs(describeTechnique(step), layers);
  if (step.toGlass) return paragraphs(describeTechnique(step), glassWarmth(assessment));
  const index = assessment.steps.filter(({ technique, toGlass }) => technique && !toGlass).indexOf(step);
  const [before, after] = [outcomeAfter(assessment, index), outcomeAfter(assessment, index + 1)];
  return paragraphs(describeTechnique(step), whatItDoes(before, after, step, measure), carbonated(step), inTheVessel(assessment));
}

/** What the table of techniques says of a step. */
export function describeTechnique({ technique }: Pick<Step, "technique">): string {
  return technique ? `${bold(technique.words[0]!)} · ${technique.doc} *(${technique.source})*` : "";
}

function whatItDoes(before: Outcome, after: Outcome, { technique }: Step, measure: Measure): string | undefined {
  if (!technique?.chill && !technique?.dilutes && !technique?.brings) return undefined;
  const because = after.figure("temperatureC").because ?? after.figure("waterMl").because;
  if (because) return `What it does is unknown: ${asText(showList(because, 3))}.`;
  const [dry, wet] = [before.value("waterMl")!, after.figure("waterMl")];
  const added = dry === 0 ? wet : { ...wet, value: wet.value! - dry, plusMinus: null };
  const contact = technique.chill && after.contacts.at(-1);
  return paragraphs(
    [
      added.value! > 0 && `Adds ${showVolume(added, measure)} water`,
      `takes it from ${showTemperature(before.value("temperatureC")!)} to ${showTemperature(after.figure("temperatureC"))}`,
      `and leaves ${showVolume(after.value("afterVolumeMl")!, measure)} of ${showFigure(after.value("strengthPct")!, "% vol", 1)}.`,
    ]
      .filter(Boolean)
      .join(", ")
      .replace(/^t/, "T"),
    contact ? heatSum(contact) : frozen(after),
  );
}

/** The balance of heat, so that a reader can redo it. */
function heatSum(contact: Contact): string {
  const { iceG, clingingG, share, step } = contact;
  if (iceG === 0) return "No ice: nothing melts.";
  const parts = [
    heatBalance(contact),
    clingingG >= 0.5 && `${showFigure(clingingG, "g", 1)} of water clung to it`,
    share < 0.995 &&
      `in ${showNumber(step.seconds?.value ?? step.technique.chill!.usualS)} s ${showShare(share)} of ice and vessel take part`,
  ];
  return `*Heat:* ${parts.filter(Boolean).join("; ")}. ${coldSum(contact)}`;
}
function coldSum({ alpha, freezingC, afterC, iceG, meltG }: Contact): string {
  const freezes = `*Cold:* it starts to freeze at ${showTemperature(freezingC)} by then`;
  if (meltG >= iceG - 1e-9) return `${freezes}; all the ice melts before it is so cold.`;
  if (afterC < freezingC - 0.05) return `${freezes}, so part of it is ice.`;
  if (Math.abs(afterC - alpha * freezingC) > 0.05) return `${freezes}.`;
  return alpha > 0.995
    ? `${freezes}, and that is as far as ice can go.`
    : `${freezes}; this goes ${showShare(alpha)} of the way from 0 °C.`;
}

/** Whether it is liquid at its temperature. */
function frozen(outcome: Outcome): string | undefined {
  const [at, start] = [outcome.value("temperatureC"), outcome.value("freezingC")];
  if (at === null || start === null || at > 0) return undefined;
  return at < start - 1e-6
    ? `It starts to freeze at ${showTemperature(start)}: part of it is ice.`
    : `It starts to freeze at ${showTemperature(start)}: it stays liquid.`;
}

/** A mole of gas fills 22.414 litres at 0 °C and one atmosphere, and one of carbon dioxide weighs 44.01 g. */
const gramsPerVolume = 44.01 / 22.414;

function carbonated({ volumes }: Step): string | undefined {
  return volumes === undefined
    ? undefined
    : `${showNumber(volumes)} volumes are ${showNumber(volumes * gramsPerVolume)} g of carbon dioxide in a litre.`;
}

function glassWarmth({ plan }: Assessment): string | undefined {
  return plan.glassC && `The glass is then at ${showTemperature(plan.glassC)}.`;
}

/** For a step that lays one thing on another: all of them with what they weigh, the lowest first. */
function showLayers(assessment: Assessment, { technique }: Step): string | undefined {
  if (technique?.id !== "layer" && technique?.id !== "float") return undefined;
  const layers = layersOf(assessment);
  if (layers.length < 2) return undefined;
  const texts = layers.map((layer) => {
    const density = isAerated(layer) ? "beaten with air" : showFigure(layer.outcome.figure("densityGPerMl"), "g/ml", 3);
    return `${layer.name} (${density})`;
  });
  return `From the bottom: ${asText(showList(texts, 12))}, at 20 °C. What is heavier than the layer below it sinks.`;
}

/** What is in the vessel after so many of the plan's steps. */
function outcomeAfter({ plan }: Assessment, steps: number): Outcome {
  const { serveIceG: _ice, glass: _glass, glassC: _warmth, ...rest } = plan;
  return assess({ ...rest, pours: plan.pours.filter((pour) => pour.stage === "vessel"), steps: plan.steps.slice(0, steps) });
}

function inTheVessel({ pours }: Assessment): string | undefined {
  const names = (stage: "vessel" | "after") => pours.filter((pour) => pour.stage === stage).map((pour) => pour.ingredient.resolution.text);
  const [inside, later] = [names("vessel"), names("after")];
  if (inside.length === 0) return undefined;
  return `In the vessel: ${asText(showList(inside, 12))}.${later.length > 0 ? ` Poured after it: ${asText(showList(later, 12))}.` : ""}`;
}
