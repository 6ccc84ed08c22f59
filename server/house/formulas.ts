/** How each figure of a drink comes about, so that a reader can redo it by hand. One row each. */
import { energyFactors, proteinShare } from "../engine/energy.ts";
import { ethanolDensity } from "../engine/ethanol-water.ts";
import { glassHeat } from "../engine/glass.ts";
import type { Contact, FigureName, Outcome, ServePlan } from "../engine/plan.ts";
import type { StandardDrink } from "../engine/standard-drinks.ts";
import { heatBalance } from "./heat-balance.ts";
import type { Paid } from "./paid.ts";
import { showMoney, showNumber, showShare, showTemperature } from "./show.ts";

export interface Formula {
  readonly figure: FigureName;
  readonly label: string;
  /** Of the figure; `%` for a share. */
  readonly unit: string;
  /** The sum with its numbers, up to the result. All that it names is known where the figure is. */
  working(facts: Facts): string;
  /** Absent where it is arithmetic. */
  readonly source?: string | ((facts: Facts) => string);
}

export interface Facts {
  readonly plan: ServePlan;
  readonly contacts: Outcome["contacts"];
  value(name: FigureName): number;
  /** Sums over the whole drink, g. */
  readonly ethanolG: number;
  readonly sugarG: number;
  readonly sweetnessG: number;
  readonly acidG: number;
  readonly saltG: number;
  /** What feeds, in grams of its own. */
  readonly feeds: Readonly<Record<"ethanol" | "carbohydrate" | "organicAcid" | "fat" | "solids", number>>;
  readonly paid: readonly Paid[];
  readonly currency: string | undefined;
  /** What the house's country counts alcohol in. */
  readonly counted: StandardDrink;
}

const volumes = "ethanol and water: OIML R 22 (1975); sugar: ICUMSA polynomial, Sugar Technologists Manual (1995)";

export const formulas: readonly Formula[] = [
  {
    figure: "beforeVolumeMl",
    label: "Before the ice",
    unit: "ml",
    working: ({ value }) =>
      `masses add, volumes do not: what is in the vessel weighs ${showNumber(value("beforeMassG"))} g, and so much water, alcohol and sugar together fill`,
    source: volumes,
  },
  {
    figure: "waterMl",
    label: "Water added",
    unit: "ml",
    working: waterWorking,
    source: "heat balance, heats from the CRC Handbook; how far each technique goes stands in the table of techniques",
  },
  {
    figure: "dilutionShare",
    label: "Dilution",
    unit: "%",
    working: ({ value }) => `${showNumber(value("waterMl"))} ml of water ÷ ${showNumber(value("beforeVolumeMl"))} ml before`,
  },
  {
    figure: "afterVolumeMl",
    label: "As served",
    unit: "ml",
    working: () => "all that is poured and melted, by mass, and what so much water, alcohol and sugar together fill",
    source: volumes,
  },
  {
    figure: "strengthPct",
    label: "Strength",
    unit: "% vol",
    working: ({ ethanolG, value }) =>
      `${showNumber(ethanolG)} g of alcohol ÷ ${showNumber(gramsPerMl)} g/ml = ${showNumber(ethanolG / gramsPerMl)} ml, of ${showNumber(value("afterVolumeMl"))} ml`,
    source: "density of ethanol at 20 °C: OIML R 22 (1975)",
  },
  per100("sugarGPer100Ml", "Sugar", "sugar", ({ sugarG }) => sugarG),
  per100(
    "sweetnessGPer100Ml",
    "Sweetness",
    "sucrose that is as sweet",
    ({ sweetnessG }) => sweetnessG,
    "relative sweetness of each sugar: published ranges (Public Health Nutr. 2022;26:952, table 2, and others)",
  ),
  per100(
    "acidGPer100Ml",
    "Acid",
    "acid, each by its equivalent weight as citric",
    ({ acidG }) => acidG,
    "molar masses and protons titrated to pH 8.2; AOAC/OIV factors",
  ),
  {
    figure: "ratio",
    label: "Ratio",
    unit: "",
    working: ({ value }) => `${showNumber(value("sweetnessGPer100Ml"))} of sweetness ÷ ${showNumber(value("acidGPer100Ml"))} of acid`,
    source: "the sugar–acid ratio of the fruit-juice trade",
  },
  per100("saltGPer100Ml", "Salt", "salt", ({ saltG }) => saltG),
  {
    figure: "temperatureC",
    label: "Temperature",
    unit: "°C",
    working: temperatureWorking,
    source: "freezing points: CRC Handbook, 102nd ed., each solute's depression added",
  },
  {
    figure: "fillShare",
    label: "Filled",
    unit: "%",
    working: ({ plan, value }) =>
      `(${showNumber(value("afterVolumeMl") / plan.serves)} ml of liquid + what the ice displaces, its own weight of it) ÷ ${showNumber(plan.glass?.capacityMl.value ?? 0)} ml`,
    source: "Archimedes' principle",
  },
  {
    figure: "ethanolG",
    label: "Alcohol",
    unit: "g",
    working: ({ ethanolG, counted: { grams, word }, plan: { serves } }) =>
      `what each pour brings, added up; ÷ ${serves === 1 ? "" : `${showNumber(serves)} serves ÷ `}${showNumber(grams)} g, one ${word}, = ${showNumber(ethanolG / serves / grams, 1)}`,
    source: ({ counted }) => `one ${counted.word}: ${counted.source}`,
  },
  energy("energyKJ", "kJ"),
  energy("energyKcal", "kcal"),
  {
    figure: "caffeineMg",
    label: "Caffeine",
    unit: "mg",
    working: () => "what each pour brings, added up",
  },
  { figure: "costPerServe", label: "Cost", unit: "", working: costWorking },
];

const gramsPerMl = ethanolDensity / 1000;

function per100(figure: FigureName, label: string, what: string, grams: (facts: Facts) => number, source?: string): Formula {
  return {
    figure,
    label,
    unit: "g/100 ml",
    working: (facts) => `${showNumber(grams(facts))} g of ${what} ÷ ${showNumber(facts.value("afterVolumeMl"))} ml × 100`,
    ...(source && { source }),
  };
}

function energy(figure: "energyKJ" | "energyKcal", unit: "kJ" | "kcal"): Formula {
  const solids = energyFactors.fibre[unit] + proteinShare.value * (energyFactors.protein[unit] - energyFactors.fibre[unit]);
  const rows = [
    ["alcohol", "ethanol", energyFactors.ethanol[unit]],
    ["sugar", "carbohydrate", energyFactors.carbohydrate[unit]],
    ["acid", "organicAcid", energyFactors.organicAcid[unit]],
    ["fat", "fat", energyFactors.fat[unit]],
    ["other solids, between fibre and protein", "solids", solids],
  ] as const;
  return {
    figure,
    label: `Energy, ${unit}`,
    unit,
    working: ({ feeds, plan: { serves } }) => {
      const parts = rows
        .filter(([, row]) => feeds[row] >= 0.005)
        .map(([name, row, factor]) => `${showNumber(factor)} × ${showNumber(feeds[row])} g of ${name}`);
      const sum = parts.join(" + ") || "nothing in it feeds";
      return serves === 1 ? sum : `${sum}, for all ${showNumber(serves)} serves`;
    },
    source: "Regulation (EU) 1169/2011, Annex XIV",
  };
}

/** What is too cheap to be read is told together. */
function costWorking({ paid, plan, currency }: Facts): string {
  const dear = paid.filter(({ cost }) => cost >= cheap * plan.serves);
  const rest = paid.filter((one) => !dear.includes(one)).reduce((sum, { cost }) => sum + cost, 0);
  const terms = [
    ...dear.map(({ name, cost }) => `${showMoney(cost, currency)} ${name}`),
    ...(rest >= 0.005 ? [`${showMoney(rest, currency)} for the rest`] : []),
  ];
  const sum = terms.join(" + ");
  return `${plan.serves === 1 ? sum : `(${sum}) ÷ ${showNumber(plan.serves)}`}, with what is wasted`;
}
const cheap = 0.01;

function waterWorking({ plan, contacts, value }: Facts): string {
  const sum = (of: (contact: Contact) => number) => contacts.reduce((all, contact) => all + of(contact), 0);
  const parts = [];
  if (contacts.length > 0) {
    parts.push(...contacts.map(heatBalance));
    const clingingG = sum((contact) => contact.clingingG);
    if (clingingG > 0.005) parts.push(`${showNumber(clingingG)} g of water that clung to it`);
    const drunkG = sum(({ step, iceG, meltG }) => (step.technique.chill!.drunk ? iceG - meltG : 0));
    if (drunkG > 0.005) parts.push(`${showNumber(drunkG)} g of ice that is drunk`);
  }
  const shares = plan.steps.flatMap(({ waterShare }) => (waterShare && "value" in waterShare ? waterShare : []));
  if (shares.length > 0) parts.push(`${shares.map((share) => showShare(share)).join(" and ")} of the volume as water`);
  if (parts.length === 0) return value("waterMl") > 0 ? "water that the method adds" : "no step brings water";
  return parts.join(" + ");
}

function temperatureWorking({ plan, contacts }: Facts): string {
  const parts = plan.steps.flatMap((step) => {
    const contact = contacts.find((one) => one.step === step);
    if (contact) return `${step.technique.words[0]}: ${howCold(contact)}`;
    return step.toC && "value" in step.toC ? `${step.technique.words[0]}: ${showTemperature(step.toC)}` : [];
  });
  if (parts.length === 0) parts.push("the heat of all that is poured, shared");
  else if (plan.pours.some(({ stage }) => stage === "after")) parts.push("shared with what is poured after");
  const iceInGlass = plan.serveIceG || contacts.some(({ step, iceG, meltG }) => step.technique.iceInGlass && iceG > meltG);
  if (plan.glassC && !iceInGlass)
    parts.push(`shared with the glass at ${showTemperature(plan.glassC)}, ${showNumber(glassHeat.value)} J/K for each ml`);
  return parts.join("; ");
}

/** The freezing point is that of what is in the vessel by then. */
function howCold({ alpha, freezingC, afterC, iceG }: Contact): string {
  if (iceG === 0) return `${showTemperature(afterC)}, without ice`;
  const goes =
    Math.abs(afterC - alpha * freezingC) < 0.05
      ? `${showShare(alpha)} of the way from 0 °C to its freezing point, ${showTemperature(freezingC)}`
      : "";
  return goes || `${showTemperature(afterC)}, where the heat of drink, vessel and ice comes out even`;
}
