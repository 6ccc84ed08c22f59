/** The values that running prose can say of a recipe. One row each; what is unknown is never said. */
import type { Entry } from "../../../grammar/tree.ts";
import type { Figure, FigureName } from "../../engine/plan.ts";
import { assessDrink } from "../drink.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import type { NameClass } from "../names.ts";
import { assessPrepEntry } from "../prep.ts";
import { flatten } from "../riff.ts";
import { serveOf } from "../serve.ts";
import { showCount, showList, showShare, showValue, showVolume } from "../show.ts";
import { pouredAs, spoken } from "./amount.ts";
import { type BookStyle, measureOf, type System } from "./style.ts";

/** What a value is said of, and how. */
export interface Saying {
  readonly house: House;
  /** A drink or a prep. */
  readonly entry: Entry;
  readonly style: BookStyle;
  readonly system: System;
}

/** What stands in the text, or why nothing can. */
export type Said = { readonly text: string } | { readonly because: string };

export interface ValueRow {
  readonly name: string;
  readonly of: readonly NameClass[];
  readonly doc: string;
  readonly example: string;
  say(saying: Saying, label: string): Said;
}

const recipe = ["drink", "ingredient"] as const;

export const valueRows: readonly ValueRow[] = [
  {
    name: "pour",
    of: ["ingredient", "drink"],
    doc: "How much of it a recipe pours.",
    example: ':pour[lemon juice]{in="Lantern Sour"}',
    say: ({ house, entry, style, system }, label) => {
      const pour = pouredAs(house, entry, label);
      if (!pour) return { because: `${entry.name?.text} pours no “${label}”` };
      const text = spoken(pour, style, system);
      return text ? { text } : { because: `no amount of ${label} is stated` };
    },
  },
  figure("strength", "strengthPct", "The strength of a drink as served, or of a prep.", (shown) => `${showValue(shown, 1)} %`),
  perServe("volume", "afterVolumeMl", "How much of a drink is in the glass.", (shown, { style, system }) =>
    showVolume({ value: shown.value }, measureOf(style, system)),
  ),
  figure("dilution", "dilutionShare", "The water that the ice gives, as a share of the volume before.", (shown) =>
    showShare({ value: shown.value }),
  ),
  figure("sweetness", "sweetnessGPer100Ml", "How sweet a drink is, as sucrose.", (shown) => `${showValue(shown)} g/100 ml`),
  figure("acid", "acidGPer100Ml", "How sour it is, as citric acid.", (shown) => `${showValue(shown)} g/100 ml`),
  figure("ratio", "ratio", "Sweetness by acid.", (shown) => showValue(shown, 1)),
  figure("salt", "saltGPer100Ml", "How much salt is in it.", (shown) => `${showValue(shown)} g/100 ml`),
  figure("temperature", "temperatureC", "How cold a drink is when it is served.", (shown) => `${showValue(shown, 0)} °C`),
  {
    name: "standard-drinks",
    of: ["drink"],
    doc: "How many standard drinks of the house's country one serve is.",
    example: ":standard-drinks[Lantern Sour]",
    say: ({ house, entry }) => {
      const { standardDrinks, counted } = serveOf(house, assessDrink(house, entry));
      return known(standardDrinks, () => showCount(Number(showValue(standardDrinks, 1)), counted.word));
    },
  },
  {
    name: "energy",
    of: ["drink"],
    doc: "The energy of one serve.",
    example: ":energy[Lantern Sour]",
    say: ({ house, entry }) => {
      const { energyKcal } = serveOf(house, assessDrink(house, entry));
      return known(energyKcal, () => `${showValue(energyKcal, 0)} kcal`);
    },
  },
  {
    name: "yield",
    of: recipe,
    doc: "How much a prep gives, or how many a drink serves.",
    example: ":yield[dune honey]",
    say: ({ house, entry, style, system }) => {
      if (entry.kind === "drink") return { text: showCount(assessDrink(house, entry).plan.serves, "serve") };
      const volume = assessPrepEntry(house, entry).figure("volumeMl");
      return known(
        volume,
        () => `about ${showVolume({ value: volume.value && Number(volume.value.toPrecision(2)) }, measureOf(style, system))}`,
      );
    },
  },
  field("keeps", recipe, "How long it keeps.", "dune honey"),
  field("glass", ["drink"], "The glass it is served in.", "Lantern Sour"),
  field("garnish", ["drink"], "What goes on top.", "Lantern Sour"),
  field("method", recipe, "How it is made, as written.", "Lantern Sour"),
  field("family", ["drink"], "The pattern that it follows.", "Lantern Sour"),
  field("credit", recipe, "Whose it is.", "Lantern Sour"),
];

/** The row of a value's directive; absent for a name that means none. */
export function valueNamed(name: string): ValueRow | undefined {
  return valueRows.find((row) => row.name === name);
}

function known({ value, because }: Figure, say: () => string): Said {
  return value === null ? { because: showList(because ?? ["nobody states what it takes"]) } : { text: say() };
}

/** A figure of a drink; of a prep where one goes by the same name. */
function figure(name: string, figureName: FigureName, doc: string, show: (figure: Figure) => string): ValueRow {
  return {
    name,
    of: recipe,
    doc,
    example: `:${name}[Lantern Sour]`,
    say: ({ house, entry }) => {
      if (entry.kind === "drink") {
        const found = assessDrink(house, entry).outcome.figure(figureName);
        return known(found, () => show(found));
      }
      const ofPrep = prepFigures[figureName];
      if (!ofPrep) return { because: `${name} is told of drinks only` };
      const found = assessPrepEntry(house, entry).figure(ofPrep);
      return known(found, () => show(found));
    },
  };
}

const prepFigures: Partial<Record<FigureName, Parameters<ReturnType<typeof assessPrepEntry>["figure"]>[0]>> = {
  strengthPct: "strengthPct",
  acidGPer100Ml: "acidGPer100Ml",
};

function perServe(name: string, figureName: FigureName, doc: string, show: (figure: Figure, saying: Saying) => string): ValueRow {
  return {
    name,
    of: ["drink"],
    doc,
    example: `:${name}[Lantern Sour]`,
    say: (saying) => {
      const { outcome, plan } = assessDrink(saying.house, saying.entry);
      const found = outcome.figure(figureName);
      return known(found, () => show({ ...found, value: found.value && found.value / plan.serves }, saying));
    },
  };
}

function field(name: string, of: readonly NameClass[], doc: string, example: string): ValueRow {
  return {
    name,
    of,
    doc,
    example: `:${name}[${example}]`,
    say: ({ house, entry }) => {
      const text = (entry.kind === "drink" ? flatten(house, entry).field(name) : findFieldIn(entry, name))?.field.value?.text;
      return text ? { text } : { because: `${entry.name?.text} states no ${name}` };
    },
  };
}
