/** A pour of a prep: its share of what goes in, what it brings, and what it holds back. */
import type { Entry, Pour } from "../../../grammar/tree.ts";
import type { Amount, PrepPart } from "../../engine/plan.ts";
import { assessPrep } from "../../engine/prep.ts";
import { strained } from "../../engine/processes.ts";
import { bringsOf } from "../../house/brings.ts";
import type { House } from "../../house/house.ts";
import type { Ingredient } from "../../house/ingredient.ts";
import { isProportional, prepModel, prepPours } from "../../house/prep.ts";
import type { Settings } from "../../house/settings.ts";
import { showShare, showWeight } from "../../house/show.ts";
import { showPour } from "../../house/show-pour.ts";
import { asText, bold, paragraphs } from "../markdown.ts";
import { describeAmount } from "./amount.ts";
import { sourcesInBrief } from "./sources.ts";

export function describePrepPour(house: House, entry: Entry, line: number, pour: Pour, ingredient: Ingredient, settings: Settings): string {
  const part = prepPours(house, entry).find((one) => one.line === line)?.part;
  const title = bold(showPour(pour, ingredient));
  if (part?.discarded) return paragraphs(`${title} · strained out`, whatItHolds(part, isProportional(entry)));
  const share = part && shareOf(house, entry, part);
  const head = share !== undefined ? `${title} · ${showShare(share)} of what goes in by weight` : title;
  const known = part && !isProportional(entry) && plainAmount(house, entry, part);
  const sets =
    part?.sets &&
    (part.sets === "curd" ? "Its curd is strained out; its water and its sugar stay." : "Its fat is strained out; the rest stays.");
  return paragraphs(head, known && describeAmount(ingredient, known, settings, pour.quantity), sets, sourcesInBrief(house, ingredient));
}

/** How much of the liquid goes with it, where it is weighed. */
function whatItHolds(part: PrepPart, proportional: boolean): string {
  const [stays, brings] = ["It gives its taste and stays behind", "it brings no weight that is counted."];
  if (!part.strained) return `${stays}: ${brings}`;
  const { holdsG } = strained[part.strained];
  const itself = !proportional && ("g" in part.amount || "ml" in part.amount) ? bringsOf(part.of, part.amount) : undefined;
  const grams = itself && "g" in itself ? itself.g : undefined;
  const held = grams === undefined ? "some" : showWeight({ value: grams * holdsG.value, u: grams * holdsG.u });
  return `${stays}, and with it ${held} of the liquid (${asText(holdsG.why)}): ${brings}`;
}

/** Of all that goes in, whatever of it is left. */
function shareOf(house: House, entry: Entry, part: PrepPart): number | undefined {
  const all = massIn(house, entry);
  const amount = plainAmount(house, entry, part);
  const brings = amount && bringsOf(part.of, amount);
  return all && brings && "g" in brings ? brings.g / all : undefined;
}

function massIn(house: House, entry: Entry): number | null {
  const model = prepModel(house, entry);
  if (model.type !== "prep") return null;
  const { makes: _makes, ...asPoured } = model;
  return assessPrep(asPoured).value("massInG");
}

/** The amount; for what makes the prep up to a total, as much as is missing from it. */
function plainAmount(house: House, entry: Entry, part: PrepPart): Amount | undefined {
  if ("ml" in part.amount || "g" in part.amount) return part.amount;
  const model = prepModel(house, entry);
  const all = massIn(house, entry);
  if (model.type !== "prep" || all === null) return undefined;
  let others = 0;
  for (const one of model.parts) {
    if (one === part || one.discarded || !("ml" in one.amount || "g" in one.amount)) continue;
    const brings = bringsOf(one.of, one.amount);
    if ("unknown" in brings) return undefined;
    others += brings.g;
  }
  return { g: { value: Math.max(0, all - others), u: 0, why: "what is missing from the total" } };
}
