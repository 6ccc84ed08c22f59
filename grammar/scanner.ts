/**
 * Finds the tokens of a line in one pass forward, without regular expressions: each character is
 * looked at a fixed number of times, whatever stands there.
 */
import type { TokenType } from "chevrotain";
import { isBetweenDigits, isCurrencySign, isDash, isDigit, isLetter, isQuote, isSpace, skipSpace } from "./characters.ts";
import { isCurrencyCode } from "./currencies.ts";
import { type Numeral as NumeralRead, readMixed, readNumeral } from "./numerals.ts";
import {
  About,
  All,
  Comma,
  Currency,
  makeToken,
  Numeral,
  Of,
  Quote,
  RangeMark,
  Rinse,
  Semicolon,
  Slash,
  Some,
  To,
  type Token,
  Top,
  Unit_,
  Word,
} from "./tokens.ts";
import { findUnitAt } from "./unit-words.ts";
import { wordEnd } from "./words.ts";

/** Adds the tokens of `text` from `at` to `end`. */
export function scan(tokens: Token[], text: string, at: number, end: number): void {
  while (at < end) {
    const code = text.charCodeAt(at);
    if (isSpace(code)) at++;
    else if (mayStartNumber(code)) at = scanNumber(tokens, text, at, end);
    else at = scanOther(tokens, text, at, end, code);
  }
}

/** Whether a number starts here, not a word such as `7up`. */
export function startsNumber(text: string, at: number, end: number): boolean {
  return at < end && mayStartNumber(text.charCodeAt(at)) && readNumber(text, at, end) !== undefined;
}

/** Whether `about` and a number start here. */
export function startsAboutNumber(text: string, at: number, end: number): boolean {
  if (at + 6 >= end || text.slice(at, at + 5).toLowerCase() !== "about" || !isSpace(text.charCodeAt(at + 5))) return false;
  return startsNumber(text, skipSpace(text, at + 5, end), end);
}

const space = 32;
const percent = 37;
const comma = 44;
const hyphen = 45;
const point = 46;
const slash = 47;
const zero = 48;
const semicolon = 59;

/** A digit, a point, a sign or one of Unicode's fractions. */
function mayStartNumber(code: number): boolean {
  if (code < 128) return isDigit(code) || code === point || code === hyphen;
  return (code >= 0xbc && code <= 0xbe) || (code >= 0x2150 && code <= 0x215e) || code === 0x2212;
}

function push(tokens: Token[], tokenType: TokenType, start: number, end: number): number {
  tokens.push(makeToken(tokenType, start, end));
  return end;
}

// Words

function scanOther(tokens: Token[], text: string, at: number, end: number, code: number): number {
  if (!isLetter(code)) {
    if (code === comma) return push(tokens, Comma, at, at + 1);
    if (code === semicolon) return push(tokens, Semicolon, at, at + 1);
    if (code === percent) return push(tokens, Word, at, at + 1);
    if (isQuote(code)) return push(tokens, Quote, at, at + 1);
    if (isCurrencySign(code)) return push(tokens, Currency, at, at + 1);
    if (code === slash && isLooseSlash(text, at, end)) return push(tokens, Slash, at, at + 1);
  }
  const last = wordEnd(text, at, end);
  return push(tokens, wordType(text, at, last, end, code), at, last);
}

function isLooseSlash(text: string, at: number, end: number): boolean {
  return at + 1 >= end || isSpace(text.charCodeAt(at + 1)) || isDigit(text.charCodeAt(at + 1));
}

const keywords = new Map<string, TokenType>([
  ["top", Top],
  ["to", To],
  ["rinse", Rinse],
  ["some", Some],
  ["all", All],
  ["about", About],
]);

function wordType(text: string, start: number, last: number, end: number, first: number): TokenType {
  const length = last - start;
  if (length < 2 || length > 5) return Word;
  if (length === 3 && first <= 90 && isCurrencyCode(text.slice(start, last))) return Currency;
  const letter = first | 32;
  // t, r, s and a: no other letter starts a keyword.
  if (letter !== 116 && letter !== 114 && letter !== 115 && letter !== 97) return Word;
  const found = keywords.get(text.slice(start, last).toLowerCase());
  if (found !== To && found !== About) return found ?? Word;
  const next = skipSpace(text, last, end);
  return startsNumber(text, next, end) || (found === To && startsAboutNumber(text, next, end)) ? found : Word;
}

// Numbers

interface NumberRead {
  readonly numeral: NumeralRead;
  readonly markStart: number;
  readonly markEnd: number;
  readonly upToStart: number;
  readonly upTo: NumeralRead | undefined;
}

/** A number with its range and its unit, or a word that only starts with a digit (`7up`, `2:1`, `2026-03-01`). */
function scanNumber(tokens: Token[], text: string, at: number, end: number): number {
  const simple = scanSimple(tokens, text, at, end);
  if (simple > 0) return scanUnit(tokens, text, simple, end);
  const read = readNumber(text, at, end);
  if (!read) return push(tokens, Word, at, Math.max(wordEnd(text, at, end), at + 1));
  pushNumeral(tokens, at, read.numeral);
  if (!read.upTo) return scanUnit(tokens, text, read.numeral.end, end);
  push(tokens, RangeMark, read.markStart, read.markEnd);
  pushNumeral(tokens, read.upToStart, read.upTo);
  return scanUnit(tokens, text, read.upTo.end, end);
}

/** Nearly every number there is: digits, a point or none among them, a blank and a word that is not `to`. 0 for others. */
function scanSimple(tokens: Token[], text: string, at: number, end: number): number {
  let stop = at;
  let digits = 0;
  let scale = 0;
  for (; stop < end && stop - at < 10; stop++) {
    const code = text.charCodeAt(stop);
    if (isDigit(code)) {
      digits = digits * 10 + (code - zero);
      scale *= 10;
    } else if (code === point && scale === 0 && stop > at) scale = 1;
    else break;
  }
  if (stop === at || scale === 1 || stop + 1 >= end || text.charCodeAt(stop) !== space) return 0;
  const next = text.charCodeAt(stop + 1);
  if (next >= 128 || !isLetter(next) || (next | 32) === 116) return 0;
  const token = makeToken(Numeral, at, stop);
  // The quotient of two whole numbers this small is the double nearest to the decimal.
  token.value = scale > 1 ? digits / scale : digits;
  token.form = "plain";
  token.instead = undefined;
  tokens.push(token);
  return stop;
}

function pushNumeral(tokens: Token[], start: number, { end, value, form, instead }: NumeralRead): void {
  const token = makeToken(Numeral, start, end);
  token.value = value;
  token.form = form;
  token.instead = instead;
  tokens.push(token);
}

function readNumber(text: string, at: number, end: number): NumberRead | undefined {
  const numeral = readSigned(text, at, end, true);
  if (!numeral) return undefined;
  const markStart = skipSpace(text, numeral.end, end);
  const markEnd = rangeMarkEnd(text, markStart, numeral.end, end);
  if (markEnd > 0) {
    const upToStart = skipSpace(text, markEnd, end);
    const upTo = readSigned(text, upToStart, end, false);
    if (upTo) return { numeral, markStart, markEnd, upToStart, upTo };
  }
  if (!isNumberEnd(text, numeral.end, end)) return undefined;
  return { numeral, markStart: 0, markEnd: 0, upToStart: 0, upTo: undefined };
}

/** Where the dash or the `to` between two numerals ends; 0 where there is none. */
function rangeMarkEnd(text: string, at: number, numeralEnd: number, end: number): number {
  if (at >= end) return 0;
  const code = text.charCodeAt(at);
  if (isDash(code)) return at + 1;
  const isTo =
    (code | 32) === 116 && at > numeralEnd && at + 2 < end && (text.charCodeAt(at + 1) | 32) === 111 && isSpace(text.charCodeAt(at + 2));
  return isTo ? at + 2 : 0;
}

/**
 * A numeral with its sign and the second half of a mixed number, which nothing is glued to but a unit;
 * with `open`, a dash may be: a range can follow.
 */
function readSigned(text: string, at: number, end: number, open: boolean): NumeralRead | undefined {
  if (at >= end) return undefined;
  const negative = isDash(text.charCodeAt(at));
  const start = negative ? at + 1 : at;
  const whole = readNumeral(text, start, end);
  if (!whole) return undefined;
  const mixed = readMixed(text, start, whole.end, end);
  const numeral = mixed && mayEnd(text, mixed.end, end, open) ? mixed : whole;
  if (!mayEnd(text, numeral.end, end, open)) return undefined;
  if (!negative) return numeral;
  const { value, form, instead } = numeral;
  return { end: numeral.end, value: value === undefined ? undefined : -value, form, instead: instead && text[at] + instead };
}

function mayEnd(text: string, at: number, end: number, open: boolean): boolean {
  return isNumberEnd(text, at, end) || (open && isDash(text.charCodeAt(at)));
}

/** Whether a number may end here: nothing is glued to it, or only a unit, a currency or a slash. */
function isNumberEnd(text: string, at: number, end: number): boolean {
  if (at >= end) return true;
  const code = text.charCodeAt(at);
  if (isSpace(code) || code === semicolon || isQuote(code) || isCurrencySign(code)) return true;
  if (code === comma) return !isBetweenDigits(text, at, end);
  if (code === slash) return isLooseSlash(text, at, end);
  return findUnitAt(text, at, end) !== undefined;
}

// Units

/** A unit is only the very next whole word, or two; `of` behind it belongs to it. */
function scanUnit(tokens: Token[], text: string, at: number, end: number): number {
  const start = skipSpace(text, at, end);
  const found = findUnitAt(text, start, end);
  if (!found) return at;
  const token = makeToken(Unit_, start, found.end);
  token.unit = found.unit;
  token.image = found.written;
  tokens.push(token);
  const next = skipSpace(text, found.end, end);
  return next > found.end && isOf(text, next, end) ? push(tokens, Of, next, next + 2) : found.end;
}

function isOf(text: string, at: number, end: number): boolean {
  if (at + 2 > end || (text.charCodeAt(at) | 32) !== 111 || (text.charCodeAt(at + 1) | 32) !== 102) return false;
  return at + 2 === end || isSpace(text.charCodeAt(at + 2));
}
