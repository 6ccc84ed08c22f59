/** Figures that are unknown, and why. */
import type { Entry, Pour } from "../../grammar/tree.ts";
import type { Figure, Known } from "../engine/plan.ts";
import { amountOf, type Measuring } from "../house/amounts.ts";
import { isCyclic } from "../house/cycles.ts";
import { assessDrink } from "../house/drink.ts";
import { linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import type { Ingredient } from "../house/ingredient.ts";
import { assessPrepEntry } from "../house/prep.ts";
import { madeFromItself, noAmount, notDeclared, noWater } from "../house/reasons.ts";
import { flatten } from "../house/riff.ts";
import { settingsOf } from "../house/settings.ts";
import { capital, showList } from "../house/show.ts";
import { headPlace, isFaulty } from "./places.ts";
import { poursNamed } from "./pours.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";
import { stepsWritten } from "./steps.ts";
import { hasStrangeUnit } from "./unknown-unit.ts";

const bottle = (line: string) => `stock chart room bottle\n  kind: ${line}\n\n`;

export const unknownFigures: Rule = {
  code: "unknown-figures",
  severity: "information",
  entries: ["drink", "prep"],
  docs: {
    title: "Figures are unknown",
    why: "A strength that nobody states is unknown, not nothing, and so is everything that it goes into. Each reason is named once, where it arises; what another finding already says is not said again.",
    bad: `${bottle("other")}${specimen(["50 ml chart room bottle"])}`,
    good: `${bottle("spirit")}${specimen(["50 ml chart room bottle"])}`,
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    const { unknown, reasons } = unknownIn(house, entry);
    if (reasons.length === 0) return;
    const said = saidElsewhere(house, entry);
    const fresh = reasons.filter((reason) => !said.has(reason));
    if (fresh.length === 0) return;
    yield {
      place: headPlace(entry),
      what: `${capital(showList(unknown))} of this ${entry.kind} cannot be computed: ${showList(fresh, 6)}.`,
      todo:
        entry.kind === "prep"
          ? "State what is missing, or what it makes as `yield:`; what was measured counts, with its day (`brix:`, `abv:`, `measured:`)."
          : "State what is missing; a rough figure, such as `about 40 %`, is better than none.",
    };
  },
};

/** The main figures that are unknown, in words, and every reason that any of them gives. */
function unknownIn(house: House, entry: Entry): { unknown: string[]; reasons: string[] } {
  const figures: [string, Figure][] = entry.kind === "prep" ? prepFigures(house, entry) : drinkFigures(house, entry);
  const unknown = figures.filter(([, figure]) => figure.value === null && figure.because?.length);
  return { unknown: unknown.map(([name]) => name), reasons: [...new Set(unknown.flatMap(([, figure]) => figure.because ?? []))] };
}

/** A value is cheap: a figure with its uncertainty is asked for only where the value is unknown. */
function drinkFigures(house: House, entry: Entry): [string, Figure][] {
  const { outcome, pours } = assessDrink(house, entry);
  if (pours.length === 0) return [];
  const names = [
    ["the volume", "afterVolumeMl"],
    ["strength", "strengthPct"],
    ["sweetness", "sweetnessGPer100Ml"],
    ["acid", "acidGPer100Ml"],
  ] as const;
  return names.filter(([, name]) => outcome.value(name) === null).map(([words, name]) => [words, outcome.figure(name)]);
}

function prepFigures(house: House, entry: Entry): [string, Figure][] {
  if (linesOf(entry, "pour").next().done) return [];
  const outcome = assessPrepEntry(house, entry);
  const names = [
    ["the weight", "massG"],
    ["strength", "strengthPct"],
    ["sugar", "sugarGPer100Ml"],
    ["acid", "acidGPer100Ml"],
  ] as const;
  return names.filter(([, name]) => outcome.value(name) === null).map(([words, name]) => [words, outcome.figure(name)]);
}

/** Reasons that have a finding of their own: on a line here, on the parent, or on the prep or drink that is poured. */
function saidElsewhere(house: House, entry: Entry): Set<string> {
  const scope = house.scopeOf(entry);
  const measuring: Measuring = { settings: settingsOf(house, scope), jigger: true, part: { because: "" } };
  const said = new Set<string>();
  const say = (reasons: readonly string[]) => {
    for (const reason of reasons) said.add(reason);
  };
  for (const { line, pour, ingredient } of poursNamed(house, entry)) {
    const { resolution } = ingredient;
    const used = resolution.found?.entry;
    if (!used) said.add(notDeclared(resolution.text));
    else if (isCyclic(house, used)) said.add(madeFromItself(used.name?.text ?? ""));
    else if (used.kind !== "stock") say(unknownIn(house, used).reasons);
    if (!used || isFaulty(entry.lines[line]!) || hasStrangeUnit(house, scope, pour)) say(reasonsOf(pour, ingredient, measuring));
  }
  for (const { technique } of (entry.kind === "drink" && stepsWritten(house, entry)?.steps) || []) {
    if (technique?.dilutes) said.add(noWater(technique.words[0]!));
  }
  const parent = entry.kind === "drink" ? flatten(house, entry).parent : undefined;
  if (parent) say(unknownIn(house, parent.entry).reasons);
  return said;
}

/** Why the amount of a pour is unknown; nothing where it is known. */
function reasonsOf({ quantity }: Pour, ingredient: Ingredient, measuring: Measuring): string[] {
  if (!quantity) return [noAmount(ingredient.resolution.text)];
  return Object.values<Known>(amountOf(quantity, ingredient, measuring)).flatMap((known) => ("because" in known ? [known.because] : []));
}
