/** The choices of the editor's command: what the drink or the prep at the cursor can be brought to, and the ways there. */
import type { Position } from "vscode-languageserver-types";
import { asWritten, nameOf, type Way, waysTo, wayWith } from "../house/bring-to.ts";
import { type Changeable, changeable } from "../house/changeable.ts";
import { amountText } from "../house/changed-line.ts";
import { entryAt, type SpecDocument } from "../house/document.ts";
import { assessDrink } from "../house/drink.ts";
import { familyOf } from "../house/family.ts";
import type { Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { leftOverText } from "../house/left-over.ts";
import { capital, showNumber } from "../house/show.ts";
import { type Goal, goalsOf, readTarget, showGoal, type Target } from "../house/targets.ts";
import { lineOf } from "../rules/cautions/all.ts";
import { isStrongAcid, strongAcid } from "../rules/cautions/strong-acid.ts";

export interface TargetChoice {
  /** What the editor sends back. */
  readonly id: string;
  /** `Ratio`, `sweetness ÷ acid`, `7.8 ± 0.5 now; 6 to 13 is usual for “egg sour”`. */
  readonly label: string;
  readonly description: string;
  readonly detail: string;
  /** The number alone as it stands, to start typing from; empty where it is unknown. */
  readonly present: string;
  readonly example: string;
}

export interface Targets {
  readonly name: string;
  readonly targets: readonly TargetChoice[];
  /** All that could be poured, what is nearest to the house first. */
  readonly ingredients: readonly string[];
}

export interface WayChoice {
  readonly label: string;
  /** `20 ml in place of 22.5 ml`; absent where the target is not met. */
  readonly description?: string;
  readonly detail: string;
  /** Absent where there is nothing to change. */
  readonly fix?: Fix;
}

export interface Ways {
  readonly ways: readonly WayChoice[];
  /** What is wrong with the target or the name, in plain words. */
  readonly problem?: string;
}

/** Answers `undefined` where the cursor is in no drink and no prep. */
export function targetsAt(house: House, document: SpecDocument, position: Position): Targets | undefined {
  const of = changeableAt(house, document, position);
  if (!of) return undefined;
  const names = [...house.declarations(house.scopeOf(of.entry), "ingredient")].filter(({ alias }) => !alias).map(({ name }) => name);
  return {
    name: of.entry.name?.text ?? "",
    targets: goalsOf(of.entry).map((goal) => targetChoice(house, of, goal)),
    ingredients: [...new Set(names)],
  };
}

/** `value` is what a person typed for the target: a number, one with its unit, or `of lime juice`; `pour` one to do it with. */
export function waysAt(house: House, document: SpecDocument, position: Position, id: string, value: string, pour?: string): Ways {
  const of = changeableAt(house, document, position);
  const goal = of && goalsOf(of.entry).find(({ figure }) => figure === id);
  if (!of || !goal) return { ways: [], problem: "The drink or the prep is not there any more." };
  const target = readTarget(house, of.entry, inWords(of, goal, value));
  if ("problem" in target) return { ways: [], problem: target.problem };
  const ways = pour === undefined ? waysTo(of, target) : [wayWith(house, of, target, pour)];
  const wrong = ways.find((way) => !("pour" in way));
  if (wrong) return { ways: [], problem: wrong.problem! };
  return { ways: (ways as readonly Way[]).map((way) => wayChoice(of, target, way)) };
}

function changeableAt(house: House, document: SpecDocument, { line }: Position): Changeable | undefined {
  const at = entryAt(document, line);
  return at && changeable(house, at.entry);
}

function targetChoice(house: House, of: Changeable, goal: Goal): TargetChoice {
  const figure = of.now.figure(goal.figure);
  const now = figure.value === null ? `unknown: ${figure.because?.join("; ")}` : `${showGoal(goal, figure, of.settings)} now`;
  return {
    id: goal.figure,
    label: capital(goal.word),
    description: goal.doc,
    detail: [now, usual(house, of, goal)].filter(Boolean).join("; "),
    present: figure.value === null ? "" : showGoal(goal, figure.value, of.settings).replace(/ [^\d].*$/, ""),
    example: goal.example.startsWith(`${goal.word} `) ? goal.example.slice(goal.word.length + 1) : goal.example,
  };
}

function usual(house: House, { entry }: Changeable, { window }: Goal): string | undefined {
  if (entry.kind !== "drink" || !window) return undefined;
  const { name, windows } = familyOf(house, assessDrink(house, entry).flat);
  const held = windows.get(window);
  return held && `${showNumber(held.low)} to ${showNumber(held.high)} is usual${name ? ` for “${name}”` : ""}`;
}

/** A bare number is meant in the unit that the figure is shown in. */
function inWords({ settings }: Changeable, { word, unit, units }: Goal, typed: string): string {
  const text = typed.trim();
  if (text.toLowerCase().includes(word)) return text;
  const isBare = /^[\d.,\s/½¼¾⅓⅔]+$/u.test(text);
  const own = unit in units ? unit : unit === "% vol" || unit === "°Bx" ? "%" : "";
  return isBare ? `${word} ${text} ${word === "volume" ? settings.units : own}` : `${word} ${text}`;
}

function wayChoice(of: Changeable, target: Target, { pour, reached, problem }: Way): WayChoice {
  const label = nameOf(pour);
  if (!reached) return { label, detail: problem! };
  const text = amountText(pour, reached.amount);
  const present = asWritten(pour);
  const says = leftOverText(target, reached, of.settings);
  const detail = isStrongAcid(pour.ingredient) ? `${says} ${lineOf(strongAcid)}` : says;
  if (!reached.edit) return { label, description: text === present ? `${text}, as it is` : `${text}, to be written by hand`, detail };
  const description = present ? `${text} in place of ${present}` : `${text}, new`;
  return { label, description, detail, fix: { title: `${capital(label)}: ${description}`, safe: false, edits: [reached.edit] } };
}
