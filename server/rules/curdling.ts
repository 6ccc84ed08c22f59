/** Something sour with milk or cream. */
import type { Entry } from "../../grammar/tree.ts";
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import { fieldsIn, linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { stepsOf } from "../house/method.ts";
import { has } from "../house/modifiers.ts";
import { showFigure } from "../house/show.ts";
import { stockFacts } from "../house/stock.ts";
import { headPlace, placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";
import { isDraft } from "./windows.ts";

/** Acid in the finished drink, g/100 ml, above which milk and cream curdle within minutes: practice, no source. */
const mostAcid = 0.3;

export const curdling: Rule = {
  code: "curdling",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "Sour and cream",
    why: "Acid turns milk and cream to curd, at once or while the guest is holding the glass. Where it is meant, as in a clarified punch, say so with `# allow curdling: …`; a prep that is milk-clarified has left its curd behind and is not looked at.",
    bad: specimen(["45 ml brandy", "30 ml cream", "20 ml lemon juice", "20 ml plain syrup"], shaken),
    good: specimen(["45 ml brandy", "30 ml cream", "20 ml plain syrup"], shaken),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const { pours, outcome } = assessDrink(house, entry);
    const acid = outcome.value("acidGPer100Ml");
    if (acid === null || acid <= mostAcid) return;
    const milky = pours.find(({ ingredient }) => ingredient.resolution.found && isMilky(house, ingredient.resolution.found.entry));
    if (!milky) return;
    const figure = outcome.figure("acidGPer100Ml");
    if (acid - mostAcid <= 2 * (figure.plusMinus ?? 0)) return;
    const { start, end } = milky.ingredient.resolution;
    yield {
      ...(isDraft(entry) && { severity: "hint" as const }),
      place: milky.entry === entry ? placeOf(milky.line, { start, end }) : headPlace(entry),
      what: `The ${milky.ingredient.resolution.text} will curdle: the drink holds ${showFigure(figure, "g/100 ml")} of acid, and ${mostAcid} is about as much as it bears.`,
      todo: "Take the sour or the cream out, or clarify the two in a prep.",
    };
  },
};

/** Milk, cream, a cream liqueur, or a prep that holds one of them and was not clarified. */
function isMilky(house: House, entry: Entry): boolean {
  if (entry.kind === "stock") {
    const facts = stockFacts(house, entry);
    if (facts.kind === "dairy") return true;
    const allergens = facts.field("allergens")?.field.value?.text ?? "";
    return facts.kind === "liqueur" && /\bmilk\b/i.test(allergens);
  }
  return house.recall(entry, "milky", () => {
    if (isCyclic(house, entry)) return false;
    const scope = house.scopeOf(entry);
    const method = fieldsIn(entry).get("method")?.[0];
    if (method && stepsOf(house, method).some(({ technique }) => /clarify$/.test(technique?.id ?? ""))) return false;
    return [...linesOf(entry, "pour")].some(({ content }) => {
      const resolution = content.pour.name && house.resolve(scope, ["ingredient", "drink"], content.pour.name);
      if (!resolution?.found || has(resolution.modifiers, "strained out")) return false;
      return isMilky(house, resolution.found.entry);
    });
  });
}
