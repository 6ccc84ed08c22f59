/** What is out tonight, which drinks that takes off, and which have something to fall back on. */
import type { Entry, Pour } from "../../grammar/tree.ts";
import { isCyclic } from "./cycles.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { ingredientOf } from "./ingredient.ts";
import { has } from "./modifiers.ts";
import { type Alternative, type FlatPour, flatten } from "./riff.ts";

/** A pour that cannot be made as it is written. */
export interface Missing {
  readonly pour: FlatPour;
  /** What is out: the ingredient itself, or what it is made of. */
  readonly out: Entry;
  /** The ingredient that is made of it, as the drink names it; absent where that itself is out. */
  readonly through?: string;
  /** The first of its `or` lines that is there. */
  readonly instead?: Alternative;
}

/** Every pour that something is out for; empty for most drinks. Options are left out: without them it is still the drink. */
export function missingIn(house: House, drink: Entry): readonly Missing[] {
  return house.recall(drink, "missing", () => {
    if (isCyclic(house, drink)) return [];
    return flatten(house, drink).pours.flatMap((pour): Missing[] => {
      const used = pour.ingredient.resolution.found?.entry;
      const out = used && !has(pour.modifiers, "optional") ? outBehind(house, used) : undefined;
      if (!out) return [];
      const instead = pour.alternatives.find(({ ingredient }) => isThere(house, ingredient.resolution.found?.entry));
      const { text } = pour.ingredient.resolution;
      return [{ pour, out, ...(used !== out && { through: text }), ...(instead && { instead }) }];
    });
  });
}

/** `mint is out`, `sea buckthorn cordial needs sea buckthorn juice, which is out`. */
export function showMissing({ out, through }: { readonly out: string; readonly through?: string | null }): string {
  return through ? `${through} needs ${out}, which is out` : `${out} is out`;
}

/** Whether a drink is off: something is out that nothing stands in for. */
export function isOff(missing: readonly Missing[]): boolean {
  return missing.some(({ instead }) => !instead);
}

/**
 * What is out behind a stock, a prep or a drink that is poured; absent where nothing is. A prep dies with what
 * it is made of, unless it says `status: in`: then there is some left.
 */
export function outBehind(house: House, entry: Entry): Entry | undefined {
  const status = findFieldIn(entry, "status")?.field.value?.text.toLowerCase();
  if (entry.kind === "drink") return missingIn(house, entry).find(({ instead }) => !instead)?.out;
  if (status === "out") return entry;
  if (entry.kind !== "prep" || status === "in") return undefined;
  return house.recall(entry, "out", () => (isCyclic(house, entry) ? undefined : outOf(house, entry)));
}

/** The drinks that something which is out takes off, and those that fall back; looks at the whole house. */
export function drinksWithout(house: House, out: Entry): { readonly off: readonly Entry[]; readonly fallBack: readonly Entry[] } {
  const off: Entry[] = [];
  const fallBack: Entry[] = [];
  for (const { tree } of house.documents()) {
    for (const entry of tree.entries) {
      if (entry.kind !== "drink" || isRetired(entry)) continue;
      const mine = missingIn(house, entry).filter((one) => one.out === out);
      if (mine.length > 0) (isOff(mine) ? off : fallBack).push(entry);
    }
  }
  return { off, fallBack };
}

/** A drink that nobody pours any more. */
export function isRetired(drink: Entry): boolean {
  return findFieldIn(drink, "status")?.field.value?.text.toLowerCase() === "retired";
}

function isThere(house: House, entry: Entry | undefined): boolean {
  return entry !== undefined && outBehind(house, entry) === undefined;
}

function outOf(house: House, prep: Entry): Entry | undefined {
  return choicesIn(prep)
    .map((pours) => outOfAll(house, prep, pours))
    .find(Boolean);
}

/** What is out of a pour where none of its `or` lines is there either. */
function outOfAll(house: House, prep: Entry, pours: readonly Pour[]): Entry | undefined {
  const scope = house.scopeOf(prep);
  const outs = pours.map(({ name }) => {
    const { resolution } = ingredientOf(house, scope, name!);
    const optional = has(resolution.modifiers, "optional");
    return resolution.found && !optional ? outBehind(house, resolution.found.entry) : undefined;
  });
  return outs.every(Boolean) ? outs[0] : undefined;
}

/** Each pour of a prep with its `or` lines. */
function choicesIn(prep: Entry): readonly (readonly Pour[])[] {
  const choices: Pour[][] = [];
  for (const { content } of prep.lines) {
    if (content.kind === "pour" && content.pour.name) choices.push([content.pour]);
    if (content.kind === "or" && content.pour?.name) choices.at(-1)?.push(content.pour);
  }
  return choices;
}
