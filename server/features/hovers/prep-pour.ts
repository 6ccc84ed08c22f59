/** A pour of a prep: its share of the whole, and what it brings. */
import type { Entry, Pour } from "../../../grammar/tree.ts";
import type { Amount, PrepPart } from "../../engine/plan.ts";
import { bringsOf } from "../../house/brings.ts";
import { linesOf } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { type Ingredient, ingredientOf } from "../../house/ingredient.ts";
import { has } from "../../house/modifiers.ts";
import { assessPrepEntry, isProportional, prepModel } from "../../house/prep.ts";
import type { Settings } from "../../house/settings.ts";
import { showShare } from "../../house/show.ts";
import { bold, paragraphs } from "../markdown.ts";
import { describeAmount, written } from "./amount.ts";
import { sourcesInBrief } from "./sources.ts";

export function describePrepPour(house: House, entry: Entry, line: number, pour: Pour, ingredient: Ingredient, settings: Settings): string {
  const part = partAt(house, entry, line);
  const title = bold(written(pour, ingredient));
  if (part?.discarded)
    return paragraphs(`${title} · strained out`, "It gives its taste and stays behind: it brings no weight that is counted.");
  const share = part && shareOf(house, entry, part);
  const head = share !== undefined ? `${title} · ${showShare(share)} of it by weight` : title;
  const known = part && !isProportional(entry) && plainAmount(house, entry, part);
  return paragraphs(head, known && describeAmount(ingredient, known, settings, pour.quantity), sourcesInBrief(house, ingredient));
}

/** The part of the model that a line became: one for each pour with a name that is not optional, in order. */
function partAt(house: House, entry: Entry, line: number): PrepPart | undefined {
  const model = prepModel(house, entry);
  if (model.type !== "prep") return undefined;
  const scope = house.scopeOf(entry);
  let index = 0;
  for (const { line: at, content } of linesOf(entry, "pour")) {
    const { name } = content.pour;
    const counted = name !== undefined && !has(ingredientOf(house, scope, name).resolution.modifiers, "optional");
    if (at === line) return counted ? model.parts[index] : undefined;
    if (counted) index++;
  }
  return undefined;
}

function shareOf(house: House, entry: Entry, part: PrepPart): number | undefined {
  const all = assessPrepEntry(house, entry).value("massG");
  const amount = plainAmount(house, entry, part);
  const brings = amount && bringsOf(part.of, amount);
  return all && brings && "g" in brings ? brings.g / all : undefined;
}

/** The amount; for what makes the prep up to a total, as much as is missing from it. */
function plainAmount(house: House, entry: Entry, part: PrepPart): Amount | undefined {
  if ("ml" in part.amount || "g" in part.amount) return part.amount;
  const model = prepModel(house, entry);
  const all = assessPrepEntry(house, entry).value("massG");
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
