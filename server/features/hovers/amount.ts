/** So much of an ingredient: what it brings, and the same amount in the other units. */
import type { Quantity } from "../../../grammar/tree.ts";
import { imperialOunceMl, usOunceMl } from "../../../grammar/units.ts";
import type { Amount } from "../../engine/plan.ts";
import { type Brings, bringsOf } from "../../house/brings.ts";
import type { Ingredient } from "../../house/ingredient.ts";
import type { Settings } from "../../house/settings.ts";
import { showNumber, showVolume, showWeight } from "../../house/show.ts";
import { asText, paragraphs } from "../markdown.ts";

export function describeAmount(ingredient: Ingredient, amount: Amount, settings: Settings, quantity?: Quantity): string {
  const brings = bringsOf(ingredient.model, amount);
  if ("unknown" in brings) return `What it brings is unknown: ${asText(brings.unknown)}.`;
  return paragraphs(contents(brings), sameAmount(brings, ingredient, settings, quantity));
}

/** The ounces that people pour by, and the house's own where it has one. What is weighed and solid has no volume worth a word. */
function sameAmount({ g, ml }: Brings, { model }: Ingredient, settings: Settings, quantity?: Quantity): string {
  const unit = quantity?.unit?.unit;
  const heap = model.type === "stock" && model.solid && unit?.dimension !== "volume";
  const texts = [unit?.id !== "g" && showWeight(g)];
  if (ml !== null && !heap) {
    const ounces = (ounceMl: number) => showVolume(ml, { units: "oz", ounceMl });
    const liquid = [unit?.id !== "ml" && `${showNumber(ml)} ml`];
    if (ml >= leastToConvertMl) {
      liquid.push(
        unit?.id !== "cl" && `${showNumber(ml / 10)} cl`,
        `${ounces(usOunceMl)} US`,
        `${ounces(imperialOunceMl)} imperial`,
        settings.pouringOunce && `${ounces(settings.ounceMl)} of ${showNumber(settings.ounceMl)} ml`,
      );
    }
    texts.unshift(...liquid);
  }
  const shown = texts.filter(Boolean);
  return shown.length > 0 ? `= ${shown.join(" · ")}` : "";
}

/** Less is dashed or dropped, and nobody reads it in ounces. */
const leastToConvertMl = 2;

/** `Brings 17 g alcohol · 0.25 g sugar · 30 g water`: what there is none of is left out. */
function contents(brings: Brings): string {
  const parts = [
    grams(brings.ethanolG, "alcohol"),
    grams(brings.sugarG, "sugar"),
    grams(brings.acidG, "acid as citric"),
    grams(brings.saltG, "salt", leastSaltG),
    brings.caffeineMg === null
      ? "caffeine unknown"
      : brings.caffeineMg >= leastCaffeineMg && `${showNumber(brings.caffeineMg)} mg caffeine`,
    grams(brings.waterG, "water"),
  ];
  const present = parts.filter(Boolean);
  return present.length > 0 ? `Brings ${present.join(" · ")}.` : "";
}

function grams(value: number | null, what: string, least = leastG): string {
  if (value === null) return `${what} unknown`;
  return value < least ? "" : `${showWeight(value)} ${what}`;
}

/** Less than this counts as none. */
const leastG = 0.005;
/** The salt that water and juice bring by themselves is not worth a word. */
const leastSaltG = 0.05;
const leastCaffeineMg = 0.5;
