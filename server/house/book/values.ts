/** The values that running prose can say of a recipe. One row each; what is unknown is never said. */
import type { Entry, FieldLine } from "../../../grammar/tree.ts";
import type { Figure, FigureName } from "../../engine/plan.ts";
import { assessDrink } from "../drink.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import type { NameClass } from "../names.ts";
import { assessPrepEntry, isSizeless } from "../prep.ts";
import { flatten } from "../riff.ts";
import { serveOf } from "../serve.ts";
import { hasNoAlcohol, showList } from "../show.ts";
import { isNone } from "../values.ts";
import { spoken } from "./amount-text.ts";
import { sayDegrees, sayNumber, saySize, sayWith } from "./figures.ts";
import { madeHow } from "./method.ts";
import { besides, garnishPhrase, glassPhrase, sayQuantity, withAmounts } from "./phrases.ts";
import { pouredAs } from "./pours.ts";
import type { BookStyle, Numbers, System } from "./style.ts";

/** What a value is said of, and how. */
export interface Saying {
  readonly house: House;
  /** A drink or a prep. */
  readonly entry: Entry;
  readonly style: BookStyle;
  /** One, or two of which the second stands in brackets. */
  readonly systems: readonly System[];
  readonly numbers: Numbers;
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
    say: (saying, label) => {
      const pour = pouredAs(saying.house, saying.entry, label);
      if (!pour) return { because: `${nameOf(saying)} pours no “${label}”` };
      const text = besides(saying.systems.map((system) => spoken(pour, saying.style, system, saying.numbers)));
      if (!text) return { because: `no amount of ${label} is stated` };
      return { text: pour.lead?.lead === "to" || pour.lead?.lead === "top" ? `up to ${text}` : text };
    },
  },
  figure("strength", "strengthPct", "The strength of a drink as served, or of a prep.", (shown, saying) => sayWith(shown, "%", saying, 1)),
  perServe("volume", "afterVolumeMl", "How much of a drink is in the glass.", saySize),
  figure("dilution", "dilutionShare", "The water that the ice gives, as a share of the volume before.", (shown, saying) =>
    sayWith(scaled(shown, 100), "%", saying, 0),
  ),
  figure("sweetness", "sweetnessGPer100Ml", "How sweet a drink is, as sucrose.", (shown, saying) => sayWith(shown, "g/100 ml", saying)),
  figure("acid", "acidGPer100Ml", "How sour it is, as citric acid.", (shown, saying) => sayWith(shown, "g/100 ml", saying)),
  figure("ratio", "ratio", "Sweetness by acid.", (shown, saying) => sayNumber(shown, saying, 1)),
  figure("salt", "saltGPer100Ml", "How much salt is in it.", (shown, saying) => sayWith(shown, "g/100 ml", saying)),
  figure("temperature", "temperatureC", "How cold a drink is when it is served.", sayDegrees),
  {
    name: "standard-drinks",
    of: ["drink"],
    doc: "How many standard drinks of the house's country one serve is.",
    example: ":standard-drinks[Lantern Sour]",
    say: (saying) => {
      const assessment = assessDrink(saying.house, saying.entry);
      const serve = serveOf(saying.house, assessment);
      const { standardDrinks, counted } = serve;
      return sized(saying, standardDrinks, () =>
        hasNoAlcohol(serve) ? `no ${counted.word}s` : sayWith(standardDrinks, { one: counted.word, many: `${counted.word}s` }, saying, 1),
      );
    },
  },
  {
    name: "energy",
    of: ["drink"],
    doc: "The energy of one serve.",
    example: ":energy[Lantern Sour]",
    say: (saying) => {
      const { energyKcal } = serveOf(saying.house, assessDrink(saying.house, saying.entry));
      return sized(saying, energyKcal, () => sayWith(energyKcal, "kcal", saying, 0));
    },
  },
  {
    name: "yield",
    of: recipe,
    doc: "How much a prep gives, or how many a drink serves.",
    example: ":yield[dune honey]",
    say: (saying) => {
      const { house, entry } = saying;
      if (entry.kind === "drink") {
        return { text: sayWith({ value: assessDrink(house, entry).plan.serves, plusMinus: 0 }, { one: "serve", many: "serves" }, saying) };
      }
      const stated = findFieldIn(entry, "yield");
      if (stated?.field.value && !isNone(stated.field)) return { text: withUnits(stated.field, saying) };
      if (isSizeless(house, entry)) return { because: `${nameOf(saying)} is written in parts, so nobody says how much of it is made` };
      const volume = assessPrepEntry(house, entry).figure("volumeMl");
      return known(volume, () => `about ${saySize(roughly(volume), saying)}`);
    },
  },
  field("keeps", recipe, "How long it keeps.", "dune honey", withUnits),
  field("glass", ["drink"], "The glass it is served in.", "Lantern Sour", (line, { style }) => glassPhrase(line, style)),
  field("garnish", ["drink"], "What goes on top.", "Lantern Sour", (line, { style, numbers }) => garnishPhrase(line, style, numbers)),
  field("method", recipe, "How it was made, to stand in a sentence.", "Lantern Sour", (_, { house, entry, style, numbers }) =>
    madeHow(house, entry, style, numbers),
  ),
  field("family", ["drink"], "The pattern that it follows.", "Lantern Sour"),
  field("credit", recipe, "Whose it is.", "Lantern Sour"),
];

/** The row of a value's directive; absent for a name that means none. */
export function valueNamed(name: string): ValueRow | undefined {
  return valueRows.find((row) => row.name === name);
}

function nameOf({ entry }: Saying): string {
  return entry.name?.text || "it";
}

function known({ value, because }: Figure, say: () => string): Said {
  return value === null ? { because: showList(because ?? ["nobody states what it takes"]) } : { text: say() };
}

/** What grows with the drink is nothing for one in parts without a size. */
function sized(saying: Saying, found: Figure, say: () => string): Said {
  if (assessDrink(saying.house, saying.entry).proportional) {
    return { because: `${nameOf(saying)} is in parts without a size: give it a \`total:\` or a \`part:\`` };
  }
  return known(found, say);
}

/** What is left in the pan nobody measures to the millilitre: practice, no source. */
function roughly({ value, ...rest }: Figure): Figure {
  const step = (value ?? 0) < 100 ? 5 : 10;
  return { ...rest, value: value && Math.round(value / step) * step };
}

function scaled({ value, plusMinus, because }: Figure, by: number): Figure {
  const times = (one: number | null) => (one === null ? null : one * by);
  return { value: times(value), plusMinus: times(plusMinus), ...(because && { because }) };
}

/** A figure of a drink; of a prep where one goes by the same name. */
function figure(name: string, figureName: FigureName, doc: string, show: (figure: Figure, saying: Saying) => string): ValueRow {
  return {
    name,
    of: recipe,
    doc,
    example: `:${name}[Lantern Sour]`,
    say: (saying) => {
      const { house, entry } = saying;
      if (entry.kind === "drink") {
        const found = assessDrink(house, entry).outcome.figure(figureName);
        return known(found, () => show(found, saying));
      }
      const ofPrep = prepFigures[figureName];
      if (!ofPrep) return { because: `${name} is told of drinks only` };
      const found = assessPrepEntry(house, entry).figure(ofPrep);
      return known(found, () => show(found, saying));
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
      const found = scaled(outcome.figure(figureName), 1 / plan.serves);
      return sized(saying, found, () => show(found, saying));
    },
  };
}

function field(
  name: string,
  of: readonly NameClass[],
  doc: string,
  example: string,
  say: (line: FieldLine, saying: Saying) => string = (line) => line.value!.text,
): ValueRow {
  return {
    name,
    of,
    doc,
    example: `:${name}[${example}]`,
    say: (saying) => {
      const { house, entry } = saying;
      const line = (entry.kind === "drink" ? flatten(house, entry).field(name) : findFieldIn(entry, name))?.field;
      return line?.value && !isNone(line) ? { text: say(line, saying) } : { because: `${nameOf(saying)} states no ${name}` };
    },
  };
}

/** A field's text with its amounts in the book's units. */
function withUnits({ value, items }: FieldLine, { style, systems, numbers }: Saying): string {
  const quantities = items.flatMap(({ parts }) => parts.flatMap((part) => part.quantities));
  return withAmounts(value!, quantities, (quantity) => sayQuantity(quantity, style, numbers, systems));
}
