/** Amounts as running prose writes them: `25 ml`, `¾ ounce`, `twenty-five millilitres`, `half an ounce`. What is vaguer is none. */
import { readMixed, readNumeral, startsNumeral } from "../../../grammar/numerals.ts";
import type { Line } from "../../../grammar/tree.ts";
import { findUnit, type Unit } from "../../../grammar/units.ts";
import { proseOn } from "./prose.ts";
import { readWords, type Word, wordsIn } from "./words-to-numbers.ts";

export interface ProseAmount {
  /** The number and its unit. */
  readonly start: number;
  readonly end: number;
  readonly value: number;
  readonly unit: Unit;
  readonly form: "figures" | "words";
}

const known = new WeakMap<Line, readonly ProseAmount[]>();

/** The amounts of a line's prose; found once for each line. */
export function amountsOn(line: Line): readonly ProseAmount[] {
  let amounts = known.get(line);
  if (!amounts) {
    amounts = amountsIn(proseOn(line));
    known.set(line, amounts);
  }
  return amounts;
}

/** The amounts of a prose in their order: volumes and weights, neither ranges nor guesses. */
export function amountsIn(prose: string): ProseAmount[] {
  const words = wordsIn(prose);
  const amounts: ProseAmount[] = [];
  let from = 0;
  for (const [index, word] of words.entries()) {
    if (word.start < from) continue;
    const number = numberAt(prose, words, index);
    if (!number || isVague(prose.slice(0, word.start))) continue;
    const unit = unitAt(prose, words, number.next, number.end);
    if (!unit) continue;
    amounts.push({ start: word.start, end: unit.end, value: number.value, unit: unit.unit, form: number.form });
    from = unit.end;
  }
  return amounts;
}

interface ReadNumber {
  readonly value: number;
  readonly form: ProseAmount["form"];
  readonly end: number;
  /** The number of the word behind it. */
  readonly next: number;
}

function numberAt(prose: string, words: readonly Word[], index: number): ReadNumber | undefined {
  const { start } = words[index]!;
  if (!startsNumeral(prose, start, prose.length)) {
    const read = readWords(words, index, prose);
    return read && { ...read, form: "words" };
  }
  const first = readNumeral(prose, start, prose.length);
  if (first?.form !== "plain") return undefined;
  const { value, end } = readMixed(prose, start, first.end, prose.length) ?? first;
  if (value === undefined) return undefined;
  const next = words.findIndex((word) => word.start >= end);
  return next < 0 ? undefined : { value, form: "figures", end, next };
}

/** The unit that follows with nothing but blanks in between, the longest reading first. */
function unitAt(prose: string, words: readonly Word[], next: number, after: number): { unit: Unit; end: number } | undefined {
  const first = words[next];
  if (!first || !isBlank(prose.slice(after, first.start))) return undefined;
  for (const last of [words[next + 1], first]) {
    const unit = last && findUnit(prose.slice(first.start, last.end).replace(/\s+/g, " "));
    if (unit && (unit.ml !== undefined || unit.g !== undefined)) return { unit, end: last.end };
  }
  return undefined;
}

function isBlank(text: string): boolean {
  return text.trim() === "";
}

/** What stands before a number that is one end of a range, a guess, a comparison, or more of the same. */
const vague =
  /(?:[\d\p{No}.,/⁄+×-]|[\d\p{No}]\s*[–—-]\s*|(?:[\d\p{No}]|\b(?:\w+teen|\w+ty|one|two|three|four|five|six|seven|eight|nine|ten))\s+(?:to|or|by|and)\s+|\b(?:about|around|roughly|nearly|almost|some|another|further|extra|more|than|least|most|not|never|from|between|instead of|up to|every|each|per|point|hundred|thousand)\s+(?:an?\s+)?)$/iu;

function isVague(before: string): boolean {
  return vague.test(before.slice(-40));
}
