/** Body lines that start with a keyword: `or`, `swap`, `without`, `section`. */
import { isLetter, isSpace } from "../characters.ts";
import { parser } from "../parser.ts";
import * as problems from "../problems.ts";
import * as tokens from "../tokens.ts";
import { makeToken, type Token } from "../tokens.ts";
import type { Pour } from "../tree.ts";
import { type Read, tokensBehind, wordsOf } from "./parts.ts";
import { nameless } from "./pour.ts";

/** Reads the line, if it starts with one of the keywords. */
export function readKeyworded(text: string, start: number, end: number): Read | undefined {
  const last = wordEnd(text, start, end);
  const read = last > 0 ? readers.get(text.slice(start, last).toLowerCase()) : undefined;
  return read?.(text, start, last, end);
}

type Reader = (text: string, start: number, last: number, end: number) => Read;

const readers = new Map<string, Reader>([
  ["or", readOr],
  ["swap", readSwap],
  ["without", readWithout],
  ["section", readSection],
]);

/** Where the letters that start the line end, if white space follows and they may be a keyword; else 0. */
function wordEnd(text: string, start: number, end: number): number {
  let at = start;
  while (at < end && at - start < 8 && isLetter(text.charCodeAt(at))) at++;
  return at > start + 1 && (at === end || isSpace(text.charCodeAt(at))) ? at : 0;
}

function readOr(text: string, start: number, last: number, end: number): Read {
  parser.load(text, end, tokensBehind(makeToken(tokens.Or, start, last), text, end), true);
  const word = wordsOf(text, start, last);
  const { pour } = parser.parse(parser.orLine);
  if (!pour) parser.note(problems.lacking(word, "No other choice is named after “or”.", "Name what may be poured instead."));
  else if (!pour.name) parser.note(nameless(text, pour));
  return { content: { kind: "or", word, pour }, problem: parser.problem };
}

function readWithout(text: string, start: number, last: number, end: number): Read {
  parser.load(text, end, tokensBehind(makeToken(tokens.Without, start, last), text, end), true);
  const word = wordsOf(text, start, last);
  const { all, pour } = parser.parse(parser.withoutLine);
  if (!pour) parser.note(problems.lacking(word, "Nothing is named after “without”.", "Name the ingredient to leave out."));
  else if (!pour.name) parser.note(nameless(text, pour));
  return { content: { kind: "without", word, all, pour }, problem: parser.problem };
}

function readSection(text: string, start: number, last: number, end: number): Read {
  parser.load(text, end, tokensBehind(makeToken(tokens.Section, start, last), text, end), false);
  const word = wordsOf(text, start, last);
  const { title } = parser.parse(parser.sectionLine);
  if (!title) parser.note(problems.lacking(word, "This section has no title.", "Put its title after “section”."));
  return { content: { kind: "section", word, title }, problem: parser.problem };
}

/** How many places of ` for ` are tried as the one that parts a swap. */
const mostReadings = 8;

function readSwap(text: string, start: number, last: number, end: number): Read {
  const line = tokensBehind(makeToken(tokens.Swap, start, last), text, end);
  const readings: { out: Pour; in: Pour }[] = [];
  // Read without a “for” first: that tells whether the line is cut off in a quotation.
  parser.load(text, end, line, true);
  parser.parse(parser.swapLine);
  let { problem, unclosedAt } = parser;
  for (const at of placesOfFor(text, line)) {
    const parted = line.slice();
    parted[at] = makeToken(tokens.For, line[at]!.startOffset, line[at]!.end);
    parser.load(text, end, parted, true);
    const swap = parser.parse(parser.swapLine);
    // Cut off in its quotation, the first name holds this “for” and has to be read on.
    const isCut = parser.unclosedAt >= 0 && parser.unclosedAt < line[at]!.startOffset;
    if (isCut || !swap.out?.name || !swap.in?.name) continue;
    if (readings.length === 0) ({ problem, unclosedAt } = parser);
    readings.push({ out: swap.out, in: swap.in });
  }
  if (readings.length === 0) {
    const what = "This swap does not say both what goes out and what comes in.";
    problem = problems.lacking({ start, end }, what, "Write “swap OLD for NEW”, with an amount before NEW if it changes.");
  }
  parser.unclosedAt = unclosedAt;
  return { content: { kind: "swap", word: wordsOf(text, start, last), readings }, problem };
}

/** Which tokens are a `for` with something on both sides; the first few. */
function placesOfFor(text: string, line: readonly Token[]): number[] {
  const places: number[] = [];
  for (let at = 2; at < line.length - 1 && places.length < mostReadings; at++) {
    const { startOffset, end } = line[at]!;
    if (end - startOffset === 3 && text.slice(startOffset, end).toLowerCase() === "for") places.push(at);
  }
  return places;
}
