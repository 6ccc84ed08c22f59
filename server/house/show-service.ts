/** A drink as it is poured from its pre-mixed bottle, in words. */
import type { Quantity } from "../../grammar/tree.ts";
import type { Figure } from "../engine/plan.ts";
import { unitText } from "./measurable.ts";
import type { Beside, ServiceSpec } from "./service-spec.ts";
import { type Measure, ounceFraction, showNumber, showVolume, showWeight } from "./show.ts";
import { showVolumeBriefly } from "./show-brief.ts";
import { showPourAmount, showQuantity } from "./show-pour.ts";

/** What the words are made of. */
export interface ServiceWords {
  readonly batchMl: Figure;
  readonly jiggerMl: number | null;
  /** As `besideTexts` words them. */
  readonly beside: readonly string[];
}

/** `75 ml batch + 25 ml lemon juice + top soda water`, each for one serve. */
export function showService({ batchMl, jiggerMl, beside }: ServiceWords, measure: Measure): string {
  return [showBatch(batchMl, jiggerMl, measure), ...beside].join(" + ");
}

function showBatch(batchMl: Figure, jiggerMl: number | null, measure: Measure): string {
  if (batchMl.value === null) return "batch, nobody knows how much";
  return `${jiggerMl === null ? showVolumeBriefly(batchMl, measure) : showVolume(jiggerMl, measure)} batch`;
}

/** What is poured beside the batch for one serve, with what is done with it. */
export function besideTexts({ beside, waterMl }: ServiceSpec, serves: number, measure: Measure): string[] {
  const water = waterMl > 0 ? [`${showWaterBeside(waterMl, measure)} water`] : [];
  return [...beside.map((one) => besideText(one, serves, measure)), ...water];
}

/** Water is measured as nearly as anybody pours it. */
export function showWaterBeside(waterMl: number, measure: Measure): string {
  return showVolumeBriefly({ value: waterMl, plusMinus: 0.01 * waterMl }, measure);
}

function besideText(one: Beside, serves: number, measure: Measure): string {
  const { ingredient, modifiers } = one.pour;
  const words = [besideAmount(one, serves, measure), ingredient.resolution.text].filter(Boolean).join(" ");
  return [words, ...modifiers.map(({ text }) => text)].join(", ");
}

/** What stands before the name of what is poured for one serve: `40 ml`, `top`; empty where nothing does. */
export function besideAmount({ pour, part }: Beside, serves: number, measure: Measure): string {
  const { quantity, lead } = pour;
  const amount = part ? partText(part, serves, measure) : quantity && serves !== 1 && quantityOfOne(quantity, serves);
  return amount ? [lead?.text, amount].filter(Boolean).join(" ") : showPourAmount(pour);
}

function partText(part: NonNullable<Beside["part"]>, serves: number, measure: Measure): string | undefined {
  const known = "ml" in part ? part.ml : part.g;
  if ("because" in known) return undefined;
  return "ml" in part ? showVolume(known.value / serves, measure) : showWeight(known.value / serves);
}

/** A share of what is written, in its unit: `320 ml` for eight is `40 ml`. */
function quantityOfOne(quantity: Quantity, serves: number): string {
  const { value, upTo, unit, about } = quantity;
  if (value === undefined) return showQuantity(quantity);
  const one = (amount: number) => (unit?.unit.id === "oz" && ounceFraction(amount)) || showNumber(amount);
  const numbers = [value, upTo].flatMap((amount) => (amount === undefined ? [] : one(amount / serves)));
  const word = unit && unitText(unit.unit, unit.text, (upTo ?? value) / serves);
  return [about?.text, numbers.join(" to "), word].filter(Boolean).join(" ");
}
