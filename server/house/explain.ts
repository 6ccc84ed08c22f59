/** The sum behind every figure of a drink: which pour brought what, by which formula, on which assumptions. */
import { liquidOf } from "../engine/composition.ts";
import { waterDensity } from "../engine/ethanol-water.ts";
import { addMasses, at, noMasses, sugarOf } from "../engine/liquid.ts";
import { type Figure, type FigureName, figures, type Uncertain } from "../engine/plan.ts";
import { standardDrinkOf } from "../engine/standard-drinks.ts";
import { type Brings, bringsOf } from "./brings.ts";
import { type Assessment, nominalPartMl } from "./drink.ts";
import { type Facts, formulas } from "./formulas.ts";
import type { House } from "./house.ts";
import { type NamedSource, namedSources } from "./named-sources.ts";
import { paidFor } from "./paid.ts";
import { settingsOf } from "./settings.ts";
import { showFigure } from "./show.ts";

export interface Explanation {
  /** One for each pour that counts, in their order, then the water from the ice where there is any. */
  readonly brought: readonly Brought[];
  readonly sums: readonly Sum[];
  /** What nobody stated and was taken from the larder or from practice, ingredient by ingredient. */
  readonly assumptions: readonly string[];
}

export interface Brought extends Omit<Brings, "because"> {
  readonly name: string;
}

export interface Sum {
  readonly figure: FigureName;
  readonly label: string;
  /** For a cost the currency; empty where the house names none. */
  readonly unit: string;
  readonly result: Figure;
  /** Absent where the figure is unknown: its reasons say why. */
  readonly working?: string;
  readonly source?: string;
  readonly doubts: readonly Doubt[];
}

/** Where a part of a figure's uncertainty comes from. */
export interface Doubt {
  readonly what: string;
  /** Of the variance, 0…1. */
  readonly share: number;
}

export function explain(house: House, assessment: Assessment): Explanation {
  const names = namedSources(assessment);
  const brought = broughtBy(assessment);
  const facts = factsOf(house, assessment, brought);
  return {
    brought,
    sums: formulas.flatMap(({ figure, working, source, ...rest }): Sum[] => {
      if (figure === "costPerServe" && facts.paid.length === 0) return [];
      if ((figure === "caffeineMg" || figure === "ethanolG") && !(facts.value(figure) > 0)) return [];
      if (assessment.proportional && figures[figure].grows) return [];
      const result = assessment.outcome.figure(figure);
      const formula = {
        ...rest,
        ...(figure === "costPerServe" && { unit: facts.currency ?? "" }),
        ...(source && { source: typeof source === "string" ? source : source(facts) }),
      };
      if (result.value === null) return figure === "fillShare" ? [] : [{ ...formula, figure, result, doubts: [] }];
      return [{ ...formula, figure, result, working: working(facts), doubts: doubtsOf(assessment, figure, names) }];
    }),
    assumptions: [
      ...(assessment.proportional
        ? [`one part: ${nominalPartMl} ml, for nothing says how large it is; what is a share of the drink holds for any size`]
        : []),
      ...assumptionsIn(assessment, names),
    ],
  };
}

function broughtBy({ outcome, plan, pours }: Assessment): Brought[] {
  const brought: Brought[] = [];
  for (const [index, { of }] of plan.pours.entries()) {
    const poured = outcome.poured(index);
    const name = pours[index]?.ingredient.resolution.text ?? of.name;
    const brings = poured && bringsOf(of, { g: { value: poured.g, u: 0, why: "" } });
    if (brings && !("unknown" in brings)) brought.push({ ...brings, ml: poured.ml, name });
  }
  const water = outcome.value("waterMl");
  if (water)
    brought.push({ ...nothing, name: "water from ice and method", g: water * waterGPerMl, ml: water, waterG: water * waterGPerMl });
  return brought;
}

const nothing = { ethanolG: 0, sugarG: 0, sweetnessG: 0, acidG: 0, saltG: 0, caffeineMg: 0 };
const waterGPerMl = waterDensity / 1000;

function factsOf(house: House, assessment: Assessment, brought: readonly Brought[]): Facts {
  const { outcome, plan, flat } = assessment;
  const { country, currency } = settingsOf(house, house.scopeOf(flat.entry));
  const sum = (of: (one: Brought) => number | null) => brought.reduce((total, one) => total + (of(one) ?? 0), 0);
  return {
    plan,
    contacts: outcome.contacts,
    value: (name) => outcome.value(name) ?? Number.NaN,
    ethanolG: sum(({ ethanolG }) => ethanolG),
    sugarG: sum(({ sugarG }) => sugarG),
    sweetnessG: sum(({ sweetnessG }) => sweetnessG),
    acidG: sum(({ acidG }) => acidG),
    saltG: sum(({ saltG }) => saltG),
    feeds: feedsIn(assessment),
    paid: paidFor(assessment),
    currency,
    counted: standardDrinkOf(country),
  };
}

function feedsIn({ outcome, plan }: Assessment): Facts["feeds"] {
  const masses = noMasses();
  for (const [index, { of }] of plan.pours.entries()) addMasses(masses, liquidOf(of).perGram, outcome.poured(index)?.g ?? 0);
  return {
    ethanol: masses[at.ethanol]!,
    carbohydrate: sugarOf(masses),
    organicAcid: masses[at.acid]!,
    fat: masses[at.fat]!,
    solids: masses[at.solids]!,
  };
}

/** The largest few, as long as each is worth a word. */
function doubtsOf({ outcome }: Assessment, figure: FigureName, names: ReadonlyMap<Uncertain, NamedSource>): Doubt[] {
  const parts = [...outcome.gradient(figure)].flatMap(([source, slope]) => {
    const variance = (slope * source.u) ** 2;
    return variance > 0 ? [{ what: names.get(source)?.what ?? source.why, variance }] : [];
  });
  const whole = parts.reduce((sum, { variance }) => sum + variance, 0);
  return parts
    .map(({ what, variance }) => ({ what, share: variance / whole }))
    .filter(({ share }) => share >= worthAWord)
    .sort((one, other) => other.share - one.share)
    .slice(0, mostDoubts);
}
const worthAWord = 0.1;
const mostDoubts = 3;

/** By ingredient and source: `lemon juice (the larder's lemon juice): citric acid 6 ± 0.3 g/100 ml, density 1.03 g/ml`. */
function assumptionsIn({ outcome }: Assessment, names: ReadonlyMap<Uncertain, NamedSource>): string[] {
  const telling = new Set<Uncertain>();
  for (const figure of ["strengthPct", "sweetnessGPer100Ml", "acidGPer100Ml", "waterMl", "saltGPer100Ml"] as const)
    for (const [source, slope] of outcome.gradient(figure)) if (slope !== 0) telling.add(source);
  const grouped = new Map<string, string[]>();
  for (const [source, { of, short, unit }] of names) {
    if (!source.assumed || (source.value === 0 && !telling.has(source))) continue;
    const owner = `${of} (${source.why})`;
    grouped.set(owner, [...(grouped.get(owner) ?? []), `${short} ${showFigure(source, unit)}`]);
  }
  return [...grouped].map(([owner, figures]) => `${owner}: ${figures.join(", ")}`);
}
