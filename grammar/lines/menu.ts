/** Menu lines: `- name price`. */
import { parser } from "../parser.ts";
import * as problems from "../problems.ts";
import * as tokens from "../tokens.ts";
import { makeToken, type Token } from "../tokens.ts";
import type { MenuLine } from "../tree.ts";
import { type Read, tokensBehind, wordsOf } from "./parts.ts";

export function readMenu(text: string, start: number, end: number): Read {
  const line = tokensBehind(makeToken(tokens.MenuDash, start, start + 1), text, end);
  const dash = wordsOf(text, start, start + 1);
  parser.load(text, end, line, false);
  const { name: whole } = parser.parse(parser.menuLine);
  if (!whole) parser.note(problems.lacking(dash, "No drink is named after the dash.", "Name the drink, and its price if it has one."));
  const problem = parser.problem;
  const priced = readPriced(text, end, line);
  if (!priced) return { content: { kind: "menu", dash, whole, priced }, problem };
  return { content: { kind: "menu", dash, whole, priced }, problem: parser.problem };
}

/** The same line read as a name and prices; absent where it ends in no price, or is nothing else. */
function readPriced(text: string, end: number, line: readonly Token[]): MenuLine["priced"] {
  const split = findPrices(line);
  if (split === 0) return undefined;
  const parted = line.slice();
  parted.splice(split, line[split]!.tokenType === tokens.Slash ? 1 : 0, makeToken(tokens.Split, 0, 0));
  parser.load(text, end, parted, true);
  const { name, prices } = parser.parse(parser.menuLine);
  return name && { name, prices, sure: prices.some((price) => price.currency !== undefined) };
}

/** Which token the prices at the end of a menu line start at; 0 where it ends in none. */
function findPrices(line: readonly Token[]): number {
  let stop = line.length;
  let found = 0;
  for (;;) {
    let start = stop;
    while (start > 1 && line[start - 1]!.tokenType !== tokens.Slash) start--;
    if (start > 1 && isPrice(line, start, stop, true)) {
      // Wholly a price behind a slash: what stands before the slash may end in one too.
      found = start - 1;
      stop = start - 1;
      continue;
    }
    return findLastPrice(line, start, stop, found > 0) || found;
  }
}

function findLastPrice(line: readonly Token[], start: number, stop: number, inList: boolean): number {
  let at = stop - 1;
  while (at > start && line[at]!.tokenType !== tokens.Numeral) at--;
  if (at <= start || line[at]!.tokenType !== tokens.Numeral) return 0;
  const signed = at - 1 > start && line[at - 1]!.tokenType === tokens.Currency;
  if (signed) at--;
  const coded = line[at + 1]?.tokenType === tokens.Currency;
  return isPrice(line, at, stop, inList || signed || coded) ? at : 0;
}

/** Whether the tokens are one price: `£12`, `12.50 GBP`, and with a label `45.00 carafe`. */
function isPrice(line: readonly Token[], at: number, stop: number, labelled: boolean): boolean {
  if (at < stop && line[at]!.tokenType === tokens.Currency) at++;
  const amount = at < stop && line[at]!.tokenType === tokens.Numeral ? line[at]!.value : undefined;
  if (amount === undefined || amount < 0) return false;
  at++;
  if (at < stop && line[at]!.tokenType === tokens.Currency) at++;
  if (at < stop && !labelled) return false;
  if (at < stop && line[at]!.tokenType === tokens.Unit_) at++;
  while (at < stop && line[at]!.tokenType === tokens.Word) at++;
  return at === stop;
}
