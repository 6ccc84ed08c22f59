/**
 * The pours of a drink in the order in which the house writes them. Nothing crosses a stage, a blank line
 * or any line that pours nothing; comments and alternatives go along with their pour. A drink that is
 * poured in its order (layers, or a method that says so) is left alone.
 */
import type { Entry } from "../../../grammar/tree.ts";
import type { Stage } from "../../engine/plan.ts";
import type { Edit } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { isPouredInOrder, type Order, rankIn, usualOrder } from "../../house/order.ts";
import { flatPour } from "../../house/riff.ts";
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

/** A pour with the comments above it and its alternatives. */
interface Block {
  readonly first: number;
  readonly last: number;
  readonly stage: Stage;
  readonly rank: number;
}

/** Blocks that stand right below each other and belong to one stage. */
function runsOf(house: House, entry: Entry, order: Order): Block[][] {
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
        rank: rankIn(house, order, ingredient),
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
