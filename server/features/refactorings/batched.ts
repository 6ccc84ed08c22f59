/**
 * Which pours go into a drink's pre-mixed bottle. Spirits, liqueurs, bitters, fortified wines, syrups and
 * water stand in a bottle as they are; juice turns, egg and dairy spoil, bubbles go, leaves wilt: practice,
 * no source. What a house says of how long something keeps goes before its kind.
 */
import type { StockKind } from "../../../grammar/fields.ts";
import type { Entry, Pour } from "../../../grammar/tree.ts";
import { longEnough } from "../../house/batch-apart.ts";
import { isCyclic } from "../../house/cycles.ts";
import { findFieldIn, pourOn } from "../../house/entry.ts";
import type { Edit } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import type { Ingredient } from "../../house/ingredient.ts";
import { shortestKeeping } from "../../house/keeping.ts";
import { has } from "../../house/modifiers.ts";
import { prepPours } from "../../house/prep.ts";
import { type FlatPour, flatten } from "../../house/riff.ts";
import { showCount } from "../../house/show.ts";
import type { Refactoring } from "./refactoring.ts";

/** Offered together: what is not marked yet, and what is. Not in a riff, where a modifier replaces those of the parent's pour. */
export const markBatched: Refactoring = {
  name: "markBatched",
  where: "Put the cursor in a drink with pours that keep in a bottle; a riff is marked in its parent.",
  kind: "refactor.rewrite",
  offers({ house, entry }) {
    if (entry.kind !== "drink" || findFieldIn(entry, "from")) return [];
    const { pours } = flatten(house, entry);
    const marked = pours.filter(({ modifiers }) => has(modifiers, "batched"));
    const markable = pours.filter((pour) => !marked.includes(pour) && isMarkable(house, pour));
    const what = marked.length > 0 ? "more stable pour" : "stable pour";
    return [
      ...(markable.length > 0
        ? [{ title: `Mark ${showCount(markable.length, what)} as batched`, edits: () => markable.map((pour) => mark(entry, pour)) }]
        : []),
      ...(marked.length > 0
        ? [{ title: `Unmark ${showCount(marked.length, "batched pour")}`, edits: () => marked.map((pour) => unmark(entry, pour)) }]
        : []),
    ];
  },
};

function isMarkable(house: House, pour: FlatPour): boolean {
  const { stage, lead, quantity, modifiers, ingredient, alternatives } = pour;
  const isAside = asideWords.some((word) => has(modifiers, word));
  if (stage !== "vessel" || lead || !quantity || isAside || pourOf(pour).turned) return false;
  return [ingredient, ...alternatives.map((one) => one.ingredient)].every((one) => isStable(house, one));
}
/** What is done with it at the bar, or left to the guest. */
const asideWords = ["optional", "muddled", "hot", "juiced", "discarded", "strained out", "to taste"];

/** Whether it stands in a bottle for as long as one is poured from. */
function isStable(house: House, { resolution, facts }: Ingredient): boolean {
  const found = resolution.found?.entry;
  if (!found || found.kind === "drink" || facts?.fizz || (facts?.kind && never.has(facts.kind))) return false;
  const keeping = shortestKeeping(house, found);
  if (keeping) return keeping.seconds >= longEnough;
  if (facts) return facts.kind !== undefined && stable.has(facts.kind);
  return !isCyclic(house, found) && prepPours(house, found).every(({ ingredient }) => isStableDissolved(house, ingredient));
}

/** In a prep sugar, acid and salt are as good as the syrup that they make. */
function isStableDissolved(house: House, ingredient: Ingredient): boolean {
  const kind = ingredient.facts?.kind;
  return kind !== undefined && dissolved.has(kind) ? true : isStable(house, ingredient);
}

const stable: ReadonlySet<StockKind> = new Set([
  "spirit",
  "liqueur",
  "bitters",
  "fortified wine",
  "vermouth",
  "bitter aperitif",
  "syrup",
  "water",
]);
const dissolved: ReadonlySet<StockKind> = new Set(["sugar", "honey", "acid", "salt"]);
/** However long it keeps by itself, in a bottle with the rest it does not, or is not poured from one. */
const never: ReadonlySet<StockKind> = new Set([
  "egg",
  "dairy",
  "plant milk",
  "fruit",
  "vegetable",
  "herb",
  "spice",
  "sugar",
  "honey",
  "acid",
  "salt",
]);

/** Behind all that the pour says, before its comment. */
function mark(entry: Entry, pour: FlatPour): Edit {
  const { end } = pourOf(pour).name!;
  return { entry, line: pour.line, start: end, end, text: ", batched" };
}

/** The word with the comma before it. */
function unmark(entry: Entry, pour: FlatPour): Edit {
  const { start, end } = pour.modifiers.find(({ text }) => text.toLowerCase() === "batched")!;
  return { entry, line: pour.line, start: entry.lines[pour.line]!.text.lastIndexOf(",", start), end, text: "" };
}

function pourOf({ entry, line }: FlatPour): Pour {
  return pourOn(entry.lines[line]!.content)!;
}
