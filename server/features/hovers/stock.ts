/** A bought ingredient: its figures, each with where it comes from. */
import type { Entry } from "../../../grammar/tree.ts";
import type { StockModel } from "../../engine/plan.ts";
import { assessPrep } from "../../engine/prep.ts";
import type { House } from "../../house/house.ts";
import { showFigure, showList, showSugarToWater } from "../../house/show.ts";
import { stockFacts } from "../../house/stock.ts";
import { asText, bold, lineBreak, paragraphs, table } from "../markdown.ts";
import { showFreezing } from "./cold.ts";
import { describeAllergens } from "./guest.ts";
import { describeOut } from "./out.ts";
import { isNothing, sourcesOf } from "./sources.ts";

export function describeStock(house: House, entry: Entry): string {
  const facts = stockFacts(house, entry);
  const all = sourcesOf(house, facts);
  const sources = all.filter((source) => source.stated || !isNothing(source));
  const nothing = all.filter((source) => !sources.includes(source)).map(({ label }) => label);
  const rows = sources.map(({ label, value, from, note }) => [label, asText(value), asText(note ? `${from}: ${note}` : from)]);
  const title = [
    bold(facts.name || "A stock without a name"),
    facts.kind ?? "kind not stated",
    facts.fizz && "it bubbles",
    facts.stored && `from the ${facts.stored}`,
  ];
  const freezing = facts.stored === "freezer" && showFreezing(house, entry, facts.model);
  const missing = missingIn(all.map(({ label }) => label));
  return paragraphs(
    [title.filter(Boolean).join(" · "), describeOut(house, entry), describeAllergens(house, entry)].filter(Boolean).join(lineBreak),
    rows.length > 0 && table(["", "", "from"], rows),
    asSyrup(facts.model),
    nothing.length > 0 && `Assumed from the larder to hold no ${showList(nothing, 6).replace(" and ", " or ")}.`,
    freezing && `It freezes ${freezing}.`,
    missing.length > 0 && `Nobody states its ${missing.join(" or ")}, so what it is poured in cannot be computed in full.`,
  );
}

/** What a syrup is called by, whatever its label gives. */
function asSyrup(model: StockModel): string | undefined {
  if (model.solid) return undefined;
  const spoonful = assessPrep({ type: "prep", name: model.name, parts: [{ of: model, amount: { g: { value: 100, u: 0, why: "" } } }] });
  const ratio = spoonful.figure("sugarToWater");
  if (ratio.value === null || spoonful.value("strengthPct") !== 0) return undefined;
  return `As a syrup: ${showFigure(spoonful.figure("brix"), "°Bx")}, ${showSugarToWater(ratio)} of sugar to water by weight.`;
}

function missingIn(labels: readonly string[]): string[] {
  return ["strength", "sugar", "acid"].filter((label) => !labels.includes(label));
}
