/** What a drink or a prep can be brought to, and how that is asked for: `ratio 8`, `66 brix`, `acid of lime juice`. */
import { readLine } from "../../grammar/line.ts";
import type { Entry } from "../../grammar/tree.ts";
import type { FigureName, PrepFigureName } from "../engine/plan.ts";
import { assessPrep } from "../engine/prep.ts";
import { assessDrink } from "./drink.ts";
import type { WindowField } from "./family.ts";
import type { House } from "./house.ts";
import { askFor, nearestNames, nearestOf } from "./nearest.ts";
import { settingsOf } from "./settings.ts";
import { capital, type Measure, showFigure, showVolume } from "./show.ts";
import { stockFacts } from "./stock.ts";
import { onlyPart } from "./values.ts";

export interface Goal {
  readonly of: "drink" | "prep";
  readonly word: string;
  readonly also: readonly string[];
  readonly figure: FigureName | PrepFigureName;
  /** The unit that the figure is counted and shown in. */
  readonly unit: string;
  /** The units that it may be asked for in, with how many of its own are in one; "" is a bare number. */
  readonly units: Readonly<Record<string, number>>;
  readonly doc: string;
  readonly example: string;
  /** The window of a family that is about the same figure. */
  readonly window?: WindowField;
  /** The field of a prep in which a measured reading stands over what is computed. */
  readonly measured?: string;
}

const perVolume = { "": 1, "g/100 ml": 1, "g/l": 0.1 };
const perWeight = { "": 1, "%": 1, "g/100 g": 1 };
const asPercent = { "": 1, "%": 1 };
const asVolume = { ml: 1, cl: 10, dl: 100, l: 1000, oz: Number.NaN }; // How large the ounce is, the house says.

const row =
  (of: Goal["of"]) =>
  (
    words: string,
    figure: Goal["figure"],
    unit: string,
    units: Goal["units"],
    doc: string,
    example: string,
    more: Pick<Goal, "window" | "measured"> = {},
  ): Goal => {
    const [word, ...also] = words.split("; ");
    return { of, word: word!, also, figure, unit, units, doc, example, ...more };
  };
const drink = row("drink");
const prep = row("prep");

/** One row each; of two rows with one word the unit tells. */
export const goals: readonly Goal[] = [
  drink("ratio; balance", "ratio", "", { "": 1 }, "sweetness ÷ acid", "ratio 8", { window: "ratio" }),
  drink("strength; abv; vol; alcohol", "strengthPct", "% vol", asPercent, "as served", "strength 18 %", { window: "strength" }),
  drink("sweetness; sugar", "sweetnessGPer100Ml", "g/100 ml", perVolume, "as sucrose", "sweetness 7 g/100 ml", { window: "sugar" }),
  drink("acid; acidity; as citric", "acidGPer100Ml", "g/100 ml", perVolume, "as citric", "acid 0.8 g/100 ml", { window: "acid" }),
  drink("salt", "saltGPer100Ml", "g/100 ml", perVolume, "as served", "salt 0.4 g/100 ml", { window: "salt" }),
  drink("volume; size", "afterVolumeMl", "ml", asVolume, "as served, of all serves together", "volume 120 ml"),
  prep("sugar; brix; sweetness", "brix", "°Bx", { ...perWeight, brix: 1 }, "sugar, by weight", "66 brix", { measured: "brix" }),
  prep("acid; acidity; as citric", "acidGPer100Ml", "g/100 ml", perVolume, "as citric, in 100 ml", "acid of lime juice"),
  prep("acid; acidity; as citric", "acidGPer100G", "g/100 g", { "%": 1, "g/100 g": 1 }, "as citric, by weight", "acid 6 g/100 g"),
  prep("salt", "saltGPer100G", "g/100 g", perWeight, "by weight", "salt 20 %"),
  prep("strength; abv; vol; alcohol", "strengthPct", "% vol", asPercent, "by volume", "strength 20 %", { measured: "abv" }),
];

export function goalsOf({ kind }: Entry): readonly Goal[] {
  return goals.filter(({ of }) => of === kind);
}

export interface Target {
  readonly goal: Goal;
  /** In the goal's own unit. */
  readonly value: number;
  /** The ingredient or the drink whose figure it is. */
  readonly like?: string;
}

export interface NotUnderstood {
  /** What is wrong and what to write, in plain words. */
  readonly problem: string;
}

/** Reads what was asked of an entry, the name of the figure before or behind its amount. */
export function readTarget(house: House, entry: Entry, text: string): Target | NotUnderstood {
  const own = goalsOf(entry);
  const [, word, name] = /^(?:the\s+)?(.+?)\s+of\s+(.+)$/i.exec(text.trim()) ?? [];
  const like = word && own.find((goal) => isCalled(goal, word));
  if (like) return likeAnother(house, entry, like, name!.replace(/^["“](.*)["”]$/u, "$1"));

  const part = partIn(text);
  const quantity = part?.quantities[0];
  const rest = quantity ? part.text.slice(0, quantity.start - part.start) + part.text.slice(quantity.end - part.start) : text;
  const asked = rest
    .trim()
    .toLowerCase()
    .replace(/^of\s+/, "")
    .replace(/\s+/g, " ");
  const unit = quantity?.unit?.unit.id ?? "";
  const called = own.filter((goal) => isCalled(goal, asked));
  const meant = asked ? called : own.filter((goal) => unit !== "" && unit in goal.units);
  if (asked && called.length === 0 && (quantity || !own.some(({ word: first }) => asked.startsWith(`${first} `)))) {
    const near = nearestOf(
      asked,
      own.flatMap((goal) => [goal.word, ...goal.also]),
    );
    return { problem: `“${asked}” is nothing that a ${entry.kind} can be brought to. ${askFor(near, `Known: ${wordsOf(own)}.`)}` };
  }
  if (quantity?.value === undefined || quantity.upTo !== undefined) {
    return { problem: `“${text.trim()}” does not hold one number to go for. Write it as \`${(meant[0] ?? own[0]!).example}\`.` };
  }
  if (!asked && new Set(meant.map((goal) => goal.word)).size !== 1) {
    return { problem: `“${text.trim()}” does not say of what. Write the word too, as in \`${own[0]!.example}\`; known: ${wordsOf(own)}.` };
  }
  const goal = meant.find((one) => unit in one.units);
  if (!goal)
    return {
      problem: `${capital(asked)} is not counted in “${quantity.unit?.text ?? "plain numbers"}”. Write it as \`${meant[0]!.example}\`.`,
    };
  if (quantity.value < 0) return { problem: "Nothing can be brought below zero." };
  const size = unit === "oz" ? settingsOf(house, house.scopeOf(entry)).ounceMl : goal.units[unit]!;
  return { goal, value: quantity.value * size };
}

/** The figure of another drink, or of an ingredient as it is poured. */
function likeAnother(house: House, entry: Entry, goal: Goal, name: string): Target | NotUnderstood {
  const scope = house.scopeOf(entry);
  const nameClass = goal.of === "drink" ? "drink" : "ingredient";
  const other = house.lookup(scope, nameClass, name)[0]?.entry;
  if (!other) {
    return {
      problem: `There is no ${nameClass} “${name}” here. ${askFor(nearestNames(house, scope, nameClass, name), "Check the spelling.")}`,
    };
  }
  const figure =
    goal.of === "drink"
      ? assessDrink(house, other).outcome.figure(goal.figure as FigureName)
      : assessPrep({ type: "prep", name, parts: [{ of: modelOf(house, other), amount: { ml: oneMl } }] }).figure(
          goal.figure as PrepFigureName,
        );
  const like = other.name!.text;
  if (figure.value === null) return { problem: `The ${goal.word} of ${like} is unknown: ${figure.because?.join("; ")}.` };
  return { goal, value: figure.value, like };
}
const oneMl = { value: 1, u: 0, why: "any amount" };

function modelOf(house: House, entry: Entry) {
  return entry.kind === "stock" ? stockFacts(house, entry).model : house.modelOf(entry);
}

/** `ratio 8`, `66 °Bx`, `the acid of lime juice, 6 g/100 ml`. */
export function showTarget({ goal, value, like }: Target, measure: Measure): string {
  const shown = showGoal(goal, value, measure);
  if (like) return `the ${goal.word} of ${like}, ${shown}`;
  return goal.unit === "°Bx" || goal.word === "volume" ? shown : `${goal.word} ${shown}`;
}

/** A figure of this kind with its unit. */
export function showGoal({ figure, unit }: Goal, shown: Parameters<typeof showFigure>[0], measure: Measure): string {
  return figure === "afterVolumeMl" ? showVolume(shown, measure) : showFigure(shown, unit);
}

/** `strength … vol` and `acid … as citric` say the same as without. */
function isCalled({ word, also }: Goal, asked: string): boolean {
  const words = asked.toLowerCase();
  return [words, words.replace(/ (?:vol|as citric|as sucrose|by weight|by volume)$/, "")].some((one) => one === word || also.includes(one));
}

function wordsOf(own: readonly Goal[]): string {
  return [...new Set(own.map(({ word }) => word))].join(", ");
}

function partIn(text: string) {
  const { content } = readLine(`  part: ${text}`);
  return content.kind === "field" ? onlyPart(content) : undefined;
}
