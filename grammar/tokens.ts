/**
 * The tokens of a line, and the scanner that finds them in one pass forward, without regular
 * expressions. A keyword's token also counts as a plain word, so no word is reserved inside a name:
 * the grammar asks for the keyword only where it means something.
 */
import { createToken, type IToken, Lexer, type TokenType } from "chevrotain";
import { isCurrencySign, isDash, isDigit, isQuote, isSpace, skipSpace } from "./characters.ts";
import { isCurrencyCode } from "./currencies.ts";
import { type NumeralForm, readMixed, readNumeral } from "./numerals.ts";
import { findUnit, type Unit, units } from "./units.ts";

/** A piece of a line. `end` is exclusive; the last four are set on numerals and units only. */
export interface Token extends IToken {
  readonly end: number;
  readonly value: number | undefined;
  readonly form: NumeralForm | undefined;
  readonly instead: string | undefined;
  readonly unit: Unit | undefined;
}

const category = (name: string) => createToken({ name, pattern: Lexer.NA });
const token = (name: string, ...categories: TokenType[]) => createToken({ name, pattern: Lexer.NA, categories });

/** Whatever may stand in a name. */
export const Any = category("Any");
/** Whatever may stand between quotation marks. */
export const Unquoted = category("Unquoted");
/** Whatever may stand in one part of a field's value, amounts apart. */
export const Text = category("Text");

const word = (name: string) => token(name, Any, Unquoted, Text);
export const Word = word("Word");
/** The unit after a numeral: one whole word, or two (`fl oz`). */
export const Unit_ = word("Unit");
/** `of`, straight after a unit. */
export const Of = word("Of");
export const Top = word("Top");
/** `to` before an amount. */
export const To = word("To");
export const Rinse = word("Rinse");
export const Some = word("Some");
export const All = word("All");
export const Slash = word("Slash");
/** A sign (`£`) or a code (`GBP`). */
export const Currency = word("Currency");
export const Quote = token("Quote", Any, Text);
export const Numeral = token("Numeral", Any, Unquoted);
/** `about` before a numeral. */
export const About = token("About", Any, Unquoted);
/** A dash or `to` between two numerals. */
export const RangeMark = token("RangeMark", Any, Unquoted);
export const Comma = token("Comma", Any, Unquoted);
export const Semicolon = token("Semicolon", Any, Unquoted);
// What a line starts with. These stand in no name.
export const EntryWord = token("EntryWord");
export const FieldName = token("FieldName");
export const Colon = token("Colon");
export const Or = token("Or");
export const Swap = token("Swap");
export const Without = token("Without");
export const Section = token("Section");
export const MenuDash = token("MenuDash");
/** The `for` that parts a swap. */
export const For = token("For");
/** Nothing on the line: where a name ends and the amount or the price behind it starts. */
export const Split = token("Split");

export const tokenTypes: TokenType[] = [
  ...[Any, Unquoted, Text],
  ...[Word, Unit_, Of, Top, To, Rinse, Some, All, Slash, Currency, Quote, Numeral, About, RangeMark, Comma, Semicolon],
  ...[EntryWord, FieldName, Colon, Or, Swap, Without, Section, MenuDash, For, Split],
];

/** The tokens of `text` from `at` to `end`. */
export function scan(text: string, at: number, end: number): Token[] {
  const tokens: Token[] = [];
  scanInto(tokens, text, at, end);
  return tokens;
}

/** As `scan`, behind the tokens that are there already. */
export function scanInto(tokens: Token[], text: string, at: number, end: number): void {
  while (at < end) {
    const code = text.charCodeAt(at);
    if (isSpace(code)) at++;
    else if (mayStartNumber(code)) at = scanNumber(tokens, text, at, end);
    else at = scanOther(tokens, text, at, end, code);
  }
}

/** A token of this type from `start` to `end`. */
export function tokenAt(tokenType: TokenType, start: number, end: number): Token {
  return makeToken(tokenType, start, end, undefined, undefined, undefined, undefined);
}

/** Where the word that starts at `at` ends: at white space, a list's comma, a semicolon or a quotation mark. */
export function wordEnd(text: string, at: number, end: number): number {
  while (at < end && !endsWord(text, at, end)) at++;
  return at;
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

/** One shape for all tokens, so that the parser's reads stay fast. */
function makeToken(
  tokenType: TokenType,
  start: number,
  end: number,
  value: number | undefined,
  form: NumeralForm | undefined,
  instead: string | undefined,
  unit: Unit | undefined,
): Token {
  return { image: "", tokenType, tokenTypeIdx: tokenType.tokenTypeIdx!, startOffset: start, end, value, form, instead, unit };
}

const point = 46;
const comma = 44;
const semicolon = 59;
const slash = 47;
const percent = 37;

function mayStartNumber(code: number): boolean {
  return code < 128
    ? isDigit(code) || code === point || code === 45
    : code >= 0xbc && (code <= 0xbe || code >= 0x2150) && (code <= 0x215e || code === 0x2212);
}

function endsWord(text: string, at: number, end: number): boolean {
  const code = text.charCodeAt(at);
  if (code > 59) return code > 127 && (isSpace(code) || isQuote(code));
  if (code === comma) return !isBetweenDigits(text, at, end);
  return code === semicolon || isSpace(code) || isQuote(code);
}

/** A comma between digits never parts a list. */
export function isBetweenDigits(text: string, at: number, end: number): boolean {
  return at > 0 && at + 1 < end && isDigit(text.charCodeAt(at - 1)) && isDigit(text.charCodeAt(at + 1));
}

function scanOther(tokens: Token[], text: string, at: number, end: number, code: number): number {
  if (code === comma) return push(tokens, Comma, at, at + 1);
  if (code === semicolon) return push(tokens, Semicolon, at, at + 1);
  if (isQuote(code)) return push(tokens, Quote, at, at + 1);
  if (isCurrencySign(code)) return push(tokens, Currency, at, at + 1);
  if (code === slash && (at + 1 >= end || isSpace(text.charCodeAt(at + 1)) || isDigit(text.charCodeAt(at + 1)))) {
    return push(tokens, Slash, at, at + 1);
  }
  const last = wordEnd(text, at, end);
  return push(tokens, wordType(text, at, last, end), at, last);
}

function push(tokens: Token[], tokenType: TokenType, start: number, end: number): number {
  tokens.push(tokenAt(tokenType, start, end));
  return end;
}

const keywords = new Map<string, TokenType>([
  ["top", Top],
  ["to", To],
  ["rinse", Rinse],
  ["some", Some],
  ["all", All],
  ["about", About],
]);

function wordType(text: string, start: number, last: number, end: number): TokenType {
  const length = last - start;
  if (length < 2 || length > 5) return Word;
  const written = text.slice(start, last);
  const found = keywords.get(written.toLowerCase());
  if (found === undefined) return length === 3 && isCurrencyCode(written) ? Currency : Word;
  if (found !== To && found !== About) return found;
  const next = skipSpace(text, last, end);
  return startsNumber(text, next, end) || (found === To && startsAboutNumber(text, next, end)) ? found : Word;
}

/** A number with its range and its unit, or a word that only starts with a digit (`7up`, `2:1`, `2026-03-01`). */
function scanNumber(tokens: Token[], text: string, at: number, end: number): number {
  const first = readNumber(text, at, end);
  if (!first) {
    const last = Math.max(wordEnd(text, at, end), at + 1);
    return push(tokens, Word, at, last);
  }
  tokens.push(numeralToken(at, first.numeral));
  if (first.upTo) {
    tokens.push(tokenAt(RangeMark, first.markStart, first.markEnd), numeralToken(first.upToStart, first.upTo));
  }
  const last = first.upTo?.end ?? first.numeral.end;
  return scanUnit(tokens, text, last, end);
}

function scanUnit(tokens: Token[], text: string, at: number, end: number): number {
  const start = skipSpace(text, at, end);
  const found = unitAt(text, start, end);
  if (!found) return at;
  tokens.push(makeToken(Unit_, start, found.end, undefined, undefined, undefined, found.unit));
  const next = skipSpace(text, found.end, end);
  if (next === found.end || next + 2 > end) return found.end;
  const isOf =
    (text.charCodeAt(next) | 32) === 111 &&
    (text.charCodeAt(next + 1) | 32) === 102 &&
    (next + 2 === end || isSpace(text.charCodeAt(next + 2)));
  return isOf ? push(tokens, Of, next, next + 2) : found.end;
}

type ReadNumeral = NonNullable<ReturnType<typeof readNumeral>>;

function numeralToken(start: number, numeral: ReadNumeral): Token {
  return makeToken(Numeral, start, numeral.end, numeral.value, numeral.form, numeral.instead, undefined);
}

/** A numeral, or two with a mark between them. */
interface ReadNumber {
  readonly numeral: ReadNumeral;
  readonly markStart: number;
  readonly markEnd: number;
  readonly upToStart: number;
  readonly upTo: ReadNumeral | undefined;
}

function readNumber(text: string, at: number, end: number): ReadNumber | undefined {
  const numeral = readSigned(text, at, end, true);
  if (!numeral) return undefined;
  const markStart = skipSpace(text, numeral.end, end);
  const markEnd = rangeMarkEnd(text, markStart, numeral.end, end);
  if (markEnd > 0) {
    const upToStart = skipSpace(text, markEnd, end);
    const upTo = readSigned(text, upToStart, end);
    if (upTo) return { numeral, markStart, markEnd, upToStart, upTo };
  }
  return isNumberEnd(text, numeral.end, end) ? { numeral, markStart: 0, markEnd: 0, upToStart: 0, upTo: undefined } : undefined;
}

/** Where the dash or the `to` between two numerals ends; 0 where there is none. */
function rangeMarkEnd(text: string, at: number, numeralEnd: number, end: number): number {
  if (at >= end) return 0;
  if (isDash(text.charCodeAt(at))) return at + 1;
  if (at === numeralEnd || at + 3 > end) return 0;
  const isTo = (text.charCodeAt(at) | 32) === 116 && (text.charCodeAt(at + 1) | 32) === 111 && isSpace(text.charCodeAt(at + 2));
  return isTo ? at + 2 : 0;
}

/**
 * A numeral with its sign and the second half of a mixed number, which nothing is glued to but a unit;
 * with `open`, a dash may be: a range can follow.
 */
function readSigned(text: string, at: number, end: number, open = false): ReadNumeral | undefined {
  if (at >= end) return undefined;
  const negative = isDash(text.charCodeAt(at));
  const start = negative ? at + 1 : at;
  const whole = readNumeral(text, start, end);
  if (!whole) return undefined;
  const mixed = readMixed(text, start, whole.end, end);
  const ends = (numeral: ReadNumeral) => isNumberEnd(text, numeral.end, end) || (open && isDash(text.charCodeAt(numeral.end)));
  const numeral = mixed && ends(mixed) ? mixed : whole;
  if (!ends(numeral)) return undefined;
  if (!negative) return numeral;
  return { ...numeral, value: numeral.value === undefined ? undefined : -numeral.value };
}

/** Whether a number may end here: nothing is glued to it, or only a unit, a currency or a spaced-out slash. */
function isNumberEnd(text: string, at: number, end: number): boolean {
  if (at >= end) return true;
  const code = text.charCodeAt(at);
  if (code === comma) return !isBetweenDigits(text, at, end);
  if (code === slash) return at + 1 >= end || isDigit(text.charCodeAt(at + 1)) || isSpace(text.charCodeAt(at + 1));
  if (isSpace(code) || code === semicolon || isQuote(code) || isCurrencySign(code)) return true;
  return unitAt(text, at, end) !== undefined;
}

/** Spellings of units as they are written most, so that the common ones are found without folding. */
const unitBySpelling = new Map<string, Unit>();
/** First words of two-word units. */
const firstWords = new Set<string>();
let longestUnit = 0;
for (const unit of units) {
  for (const spelling of [unit.id, ...unit.also]) {
    unitBySpelling.set(spelling, unit);
    longestUnit = Math.max(longestUnit, spelling.length + 1);
    const gap = spelling.indexOf(" ");
    if (gap > 0) firstWords.add(spelling.slice(0, gap).toLowerCase());
  }
}

/** The unit that is the very next whole word or two. */
function unitAt(text: string, at: number, end: number): { unit: Unit; end: number } | undefined {
  if (at >= end) return undefined;
  if (text.charCodeAt(at) === percent) return { unit: findUnit("%")!, end: at + 1 };
  const limit = Math.min(end, at + longestUnit + 1);
  const last = wordEnd(text, at, limit);
  if (last === at || (last === limit && limit < end)) return undefined;
  const written = text.slice(at, last);
  const two = firstWords.has(written.toLowerCase().replace(".", "")) ? twoWordUnit(text, at, written, last, end) : undefined;
  if (two) return two;
  const unit = unitBySpelling.get(written) ?? findUnit(written);
  return unit && { unit, end: last };
}

function twoWordUnit(text: string, at: number, first: string, firstEnd: number, end: number) {
  const start = skipSpace(text, firstEnd, Math.min(end, at + longestUnit));
  if (start === firstEnd) return undefined;
  const limit = Math.min(end, start + longestUnit);
  const last = wordEnd(text, start, limit);
  if (last === start || (last === limit && limit < end)) return undefined;
  const unit = findUnit(`${first.replace(".", "")} ${text.slice(start, last)}`);
  return unit && { unit, end: last };
}
