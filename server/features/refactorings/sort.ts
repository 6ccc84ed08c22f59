/**
 * The pours of a drink in the order in which the house writes them. Nothing crosses a stage, a blank line
 * or any line that pours nothing; comments and alternatives go along with their pour. A drink that is
 * poured in its order (layers, or a method that says so) is left alone.
 */
import type { StockKind } from "../../../grammar/fields.ts";
import type { Entry } from "../../../grammar/tree.ts";
import type { Stage } from "../../engine/plan.ts";
import { isCyclic } from "../../house/cycles.ts";
import type { Edit } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { stepsOf } from "../../house/method.ts";
import { has } from "../../house/modifiers.ts";
import { prepPours } from "../../house/prep.ts";
import { proseOf } from "../../house/prose.ts";
import { type FlatPour, flatPour, flatten } from "../../house/riff.ts";
import { settingsOf } from "../../house/settings.ts";
import { isComment, replaceLine } from "./lines.ts";
import type { Refactoring } from "./refactoring.ts";

export const sortPours: Refactoring = {
  name: "sortPours",
  where: "Put the cursor in a drink whose pours are not in the house's order yet.",
  kind: "refactor.rewrite",
  offers({ house, entry }) {
    if (entry.kind !== "drink" || isPouredInOrder(house, entry)) return [];
    const { order } = settingsOf(house, house.scopeOf(entry));
    const edits = runsOf(house, entry, order ?? usualOrder).flatMap((run) => sorted(entry, run));
    if (edits.length === 0) return [];
    return [
      { title: `Sort the pours by ${order ? "the house's order" : "the usual order: strong, sour, sweet, long"}`, edits: () => edits },
    ];
  },
};

/**
 * From the strongest to what fills up, as specs are usually written: practice, no source. A house's `order:`
 * goes before it. Kinds of one row stay as they are written.
 */
const usualOrder: readonly (readonly StockKind[])[] = [
  ["spirit"],
  ["fortified wine", "vermouth", "bitter aperitif", "wine"],
  ["liqueur"],
  ["bitters"],
  ["juice", "puree", "acid", "vinegar", "fruit", "vegetable"],
  ["syrup", "sugar", "honey"],
  ["coffee", "tea", "sauce", "salt", "spice", "herb", "other"],
  ["egg", "dairy", "plant milk"],
  ["water", "mixer", "sparkling wine", "beer", "cider"],
];

/** A pour with the comments above it and its alternatives. */
interface Block {
  readonly first: number;
  readonly last: number;
  readonly stage: Stage;
  readonly rank: number;
}

/** Blocks that stand right below each other and belong to one stage. */
function runsOf(house: House, entry: Entry, order: readonly (readonly StockKind[])[]): Block[][] {
  const runs: Block[][] = [];
  let first = 0;
  for (const [line, { content }] of entry.lines.entries()) {
    if (isComment(entry.lines[line])) continue;
    const run = runs.at(-1);
    const above = run?.at(-1);
    const isNext = above?.last === first - 1;
    if (content.kind === "or") {
      // One that stands apart would stay behind, and so its pour stays.
      const block = run?.pop();
      if (isNext) run!.push({ ...block!, last: line });
    }
    if (content.kind === "pour" && content.pour.name) {
      const { stage, ingredient } = flatPour(house, house.scopeOf(entry), entry, line, content.pour);
      const block = {
        first,
        last: line,
        stage,
        rank: rankIn(order, kindOf(house, ingredient.resolution.found?.entry, ingredient.facts?.kind)),
      };
      if (isNext && above!.stage === stage) run!.push(block);
      else runs.push([block]);
    }
    first = line + 1;
  }
  return runs;
}

/** One edit for each line that another takes the place of. */
function sorted(entry: Entry, run: readonly Block[]): Edit[] {
  const lines = run.toSorted((one, other) => one.rank - other.rank).flatMap(({ first, last }) => entry.lines.slice(first, last + 1));
  return lines.flatMap(({ text }, index) => {
    const line = run[0]!.first + index;
    return text === entry.lines[line]!.text ? [] : [replaceLine(entry, line, text)];
  });
}

/** A kind that the order leaves out comes behind those that it names, in the usual order. */
function rankIn(order: readonly (readonly StockKind[])[], kind: StockKind): number {
  const rank = order.findIndex((kinds) => kinds.includes(kind));
  return rank >= 0 ? rank : order.length + usualOrder.findIndex((kinds) => kinds.includes(kind));
}

/** A stock's own; a prep and a drink that is poured go by what they name first, where sugar makes a syrup. */
function kindOf(house: House, entry: Entry | undefined, kind: StockKind | undefined): StockKind {
  if (kind) return kind;
  if (!entry || isCyclic(house, entry)) return "other";
  const first = (entry.kind === "drink" ? flatten(house, entry).pours : prepPours(house, entry)).at(0)?.ingredient;
  const made = first ? kindOf(house, first.resolution.found?.entry, first.facts?.kind) : "other";
  return made === "sugar" || made === "honey" ? "syrup" : made;
}

function isPouredInOrder(house: House, entry: Entry): boolean {
  const flat = flatten(house, entry);
  const method = flat.field("method");
  const steps = method ? stepsOf(house, method) : [];
  const says = `${method?.field.value?.text} ${proseOf(entry, "steps")}`;
  return /\border\b/i.test(says) || steps.some(({ technique }) => technique?.id === "layer") || flat.pours.some(isFloated);
}

function isFloated({ modifiers }: FlatPour): boolean {
  return has(modifiers, "floated");
}
