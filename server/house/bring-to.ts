/** Brings a drink or a prep to a target by the amount of one pour, as near as that can be measured, and says what is left over. */
import { findUnit, type Unit } from "../../grammar/units.ts";
import { type Meeting, meet, nearestMeasure } from "../engine/meeting.ts";
import { sizeOf } from "./amounts.ts";
import { type Changeable, type ChangedPour, type Computed, isNew, stepFor, usualUnit, whyFixed } from "./changeable.ts";
import { amountText, changedLine } from "./changed-line.ts";
import { isMadeFrom } from "./cycles.ts";
import { findFieldIn } from "./entry.ts";
import type { Edit } from "./finding.ts";
import type { House } from "./house.ts";
import { askFor, nearestNames } from "./nearest.ts";
import { notDeclared } from "./reasons.ts";
import { sameIngredient, sameQuantity } from "./riff.ts";
import { capital, showNumber } from "./show.ts";
import { type NotUnderstood, showGoal, type Target } from "./targets.ts";

export interface Way {
  readonly pour: ChangedPour;
  /** Absent where the target is not met. */
  readonly reached?: Reached;
  /** Why it is not met, and how near it comes, in plain words. */
  readonly problem?: string;
  /** What is new would go too far with the least that is measured of it. */
  readonly coarse?: boolean;
}

export interface Reached {
  readonly unit: Unit;
  /** What meets the target, in the unit. */
  readonly exact: number;
  /** The nearest to it that can be measured. */
  readonly amount: number;
  /** In which steps it is measured; absent where nothing measures the unit. */
  readonly step?: number;
  readonly after: Computed;
  /** By how much the figure stands above the target then, in the goal's unit; below it where negative. */
  readonly leftOver: number;
  /** Absent where the line stays as it is, and where a riff has no line to write it on. */
  readonly edit?: Edit;
}

/** No more of a pour is tried than so many times all that is there. */
const mostTimes = 50;
/** So many times a pour may change without having been asked for. */
const furthest = 4;
/** A pour of which twice as much moves a figure by less is no lever for it. */
const lever = 0.05;

/** The way by one named pour, there already or new: its name, with an amount where two are to be told apart or a unit is meant. */
export function wayWith(house: House, of: Changeable, target: Target, named: string): Way | NotUnderstood {
  const pour = findPour(house, of, named.trim());
  if ("problem" in pour) return pour;
  const way = wayBy(of, target, pour);
  // What a jigger is too coarse for goes in by the drop, unless a unit was named.
  const finer = way.coarse && !of.read(named)?.quantity && of.read(`1 drop ${named.trim()}`);
  return finer ? wayBy(of, target, finer) : way;
}

/**
 * The ways by each pour that is there and matters: those that get there first, the smallest change before larger ones,
 * and before those that are as near as they can be.
 * One that takes more than four times what stands, or less than a fourth, does not: nobody meant another drink.
 */
export function waysTo(of: Changeable, target: Target): Way[] {
  const matters = (pour: ChangedPour) =>
    whyFixed(of, pour) === undefined && moves(figureBy(of, target, pour), pour.quantity!.value!, lever);
  const change = ({ pour, reached }: Way) => (reached ? Math.abs(Math.log(reached.amount / pour.quantity!.value!)) : Number.MAX_VALUE);
  const rank = (way: Way) => (way.reached?.edit ? change(way) : way.reached ? furthest : Number.MAX_VALUE);
  const ways = of.pours.filter(matters).map((pour): Way => {
    const way = wayBy(of, target, pour);
    if (!way.reached || change(way) <= Math.log(furthest)) return way;
    return { pour, problem: `It would take ${amountText(pour, way.reached.amount)} ${nameOf(pour)}.` };
  });
  return ways.sort((one, other) => rank(one) - rank(other));
}

function wayBy(of: Changeable, target: Target, pour: ChangedPour): Way {
  const fixed = whyUnmoved(of, target) ?? whyFixed(of, pour);
  if (fixed) return { pour, problem: capital(fixed) };
  const { goal, value } = target;
  const figureAt = figureBy(of, target, pour);
  const present = isNew(pour) ? 0 : pour.quantity!.value!;
  const most = mostOf(of, pour);
  const met = meet(figureAt, value, present, most);
  if (!met?.meets) return { pour, problem: whyShort(of, target, pour, met, most) };
  const { unit } = pour.quantity!.unit!;
  const step = stepFor(unit, of.settings, of.serves);
  const amount = step ? nearestMeasure(figureAt, value, met.amount, step) : Number(met.amount.toPrecision(4));
  const after = of.with(pour, amount);
  const leftOver = after.value(goal.figure)! - value;
  if (isNew(pour) && Math.abs(figureAt(0) - value) <= Math.abs(leftOver)) {
    return { pour, problem: `Even ${amountText(pour, amount)} of ${nameOf(pour)}, the least that is measured, is too much.`, coarse: true };
  }
  const edit = amount === present ? undefined : changedLine(of.entry, of.pours, pour, amount);
  return { pour, reached: { unit, exact: met.amount, amount, ...(step && { step }), after, leftOver, ...(edit && { edit }) } };
}

function figureBy(of: Changeable, { goal }: Target, pour: ChangedPour): (amount: number) => number {
  const at = of.by(pour);
  return (amount) => at(amount).value(goal.figure) ?? Number.NaN;
}

function mostOf({ entry, now, pours, settings }: Changeable, { quantity, ingredient }: ChangedPour): number {
  const { unit } = quantity!.unit!;
  if (unit.dimension === "part") return mostTimes * (pours.reduce((sum, pour) => sum + (pour.quantity?.value ?? 0), 0) || 1);
  // Where nothing is poured yet, or nobody knows how much, a glass is taken for the whole.
  const wholeMl = now.value(entry.kind === "drink" ? "afterVolumeMl" : "volumeMl") || 100;
  return (mostTimes * wholeMl) / sizeOf(unit, ingredient.facts, settings).value;
}

function findPour(house: House, of: Changeable, named: string): ChangedPour | NotUnderstood {
  const asked = of.read(named);
  if (!asked) return { problem: `“${named}” is nothing that goes into the liquid.` };
  const { resolution } = asked.ingredient;
  const all = of.pours.filter((pour) => sameIngredient(pour, asked.ingredient));
  const meant = asked.quantity && all.length > 1 ? all.filter((pour) => sameQuantity(pour.quantity, asked.quantity!)) : all;
  if (meant.length === 1) return meant[0]!;
  if (all.length > 1) {
    return {
      problem: `${capital(resolution.text)} is poured more than once; name it with its amount, such as “${all.map(asWritten)[0]} ${resolution.text}”.`,
    };
  }
  if (of.aside.some((pour) => sameIngredient(pour, asked.ingredient))) {
    return {
      problem: `${capital(resolution.text)} is written there, but as none of the liquid: it is optional, for the rim, or stays behind.`,
    };
  }
  if (!resolution.found) {
    const near = nearestNames(house, house.scopeOf(of.entry), "ingredient", resolution.text);
    return { problem: `${capital(notDeclared(resolution.text))}. ${askFor(near, "Declare it, or check the spelling.")}` };
  }
  if (isMadeFrom(house, resolution.found.entry, of.entry)) {
    return { problem: `${capital(resolution.text)} is made from ${of.entry.name?.text ?? "this"}, and cannot go into it.` };
  }
  return asked.quantity || asked.lead ? asked : of.read(`1 ${usualUnit(of, asked)} ${named}`)!;
}

/** `22.5 ml`, as the line has it; nothing for what stands on none. */
export function asWritten({ entry, line, quantity }: ChangedPour): string {
  return quantity && line > 0 ? entry.lines[line]!.text.slice(quantity.numeral.start, quantity.end) : "";
}

export function nameOf({ ingredient }: ChangedPour): string {
  return ingredient.resolution.text;
}

/** Whether twice as much of a pour makes a difference of more than this share. */
function moves(figureAt: (amount: number) => number, amount: number, least = 1e-9): boolean {
  const [one, other] = [figureAt(amount), figureAt(2 * amount)];
  return !(Math.abs(one - other) <= least * Math.abs(one));
}

function whyUnmoved({ entry, proportional, shared }: Changeable, { goal }: Target): string | undefined {
  if (goal.measured && findFieldIn(entry, goal.measured)) {
    return `The reading in \`${goal.measured}:\` stands over what is computed. Take it out, adjust, and measure again.`;
  }
  if (goal.figure !== "afterVolumeMl") return undefined;
  if (proportional) return "It is written in parts without a size, so it has no volume yet: add `total:` or `part:`.";
  return shared ? "Its parts share out `total:`: change that, and every one of them follows." : undefined;
}

function whyShort(of: Changeable, target: Target, pour: ChangedPour, met: Meeting | undefined, most: number): string {
  const { goal, value } = target;
  const name = nameOf(pour);
  const at = (amount: number) => of.with(pour, amount).figure(goal.figure);
  if (!met) return `The ${goal.word} is unknown: ${at(pour.quantity!.value!).because?.join("; ")}.`;
  const best = at(met.amount).value!;
  const shown = showGoal(goal, best, of.settings);
  if (!moves(figureBy(of, target, pour), Math.max(met.amount, most / 1000)))
    return `${capital(name)} does not move the ${goal.word}: it stays ${shown}.`;
  if (met.amount < 1e-6 * most) {
    return isNew(pour)
      ? `${capital(name)} only leads further away: the ${goal.word} is ${shown} now.`
      : `Even without any ${name} the ${goal.word} is ${shown}.`;
  }
  if (met.amount > 0.99 * most)
    return `However much ${name} goes in, the ${goal.word} does not ${best < value ? "rise above" : "fall below"} ${shown}.`;
  const beyond = [0.9, 1.1].flatMap((share) => at(share * met.amount).because ?? [])[0];
  const there = `${capital(name)} brings the ${goal.word} no nearer than ${shown}, with about ${showNumber(met.amount)} ${findUnit(pour.quantity!.unit!.text)!.id}`;
  return beyond ? `${there}; beyond that there is ${beyond}.` : `${there}.`;
}
