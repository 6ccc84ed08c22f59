/**
 * What one line says, from its text alone. Equal lines are read once: readings know no position, so
 * they are shared, and nobody may change one.
 */
import { distance } from "fastest-levenshtein";
import { byteOrderMark, isDigit, isLetter, isQuote, isSpace, skipSpace, trimEnd } from "./characters.ts";
import { findComment, readComment } from "./comments.ts";
import { type EntryKind, entryKinds, fields, findField, type Shape } from "./fields.ts";
import { load, parser } from "./parser.ts";
import * as problems from "./problems.ts";
import { scan, startsAboutNumber, startsNumber } from "./scanner.ts";
import * as tokens from "./tokens.ts";
import { clearTokens, makeToken, type Token } from "./tokens.ts";
import type { Comment, Content, Name, Pour, Reading, SyntaxProblem, Words } from "./tree.ts";

/** Reads a line without its line break. Never throws; equal texts give the same object while it is remembered. */
export function readLine(text: string): Reading {
  const young = cache.get(text);
  if (young) return young;
  const reading = olderCache.get(text) ?? readFresh(text);
  remember(text, reading);
  return reading;
}

/** How many lines were really read, not remembered, since the process started. */
export function countReads(): number {
  return reads;
}

/** Whether the value of the field goes on over deeper lines. */
export function isProseField(name: string): boolean {
  return shapeOf(name) === "prose";
}

/** Whether the line starts at the margin. */
export function isAtMargin(text: string): boolean {
  const code = text.charCodeAt(0);
  return !isSpace(code) || (code === byteOrderMark && text.length > 1 && !isSpace(text.charCodeAt(1)));
}

/** Reads a margin line as one that opens an entry, whatever else it might be. */
export function readAsHead(text: string): Reading {
  reads++;
  const start = skipSpace(text, 0, text.length);
  return withComment(text, start, start, (end) => readHead(text, start, end));
}

/** How many lines one generation of the memory holds: two generations are kept. */
const generation = 30_000;
let cache = new Map<string, Reading>();
let olderCache = new Map<string, Reading>();
let reads = 0;

function remember(text: string, reading: Reading): void {
  if (cache.size >= generation) {
    olderCache = cache;
    cache = new Map();
  }
  cache.set(text, reading);
}

/** Whether a margin line can be a pour that lost its indentation. */
function startsQuantity(text: string, start: number, end: number): boolean {
  return text.charCodeAt(start) !== dash && (startsNumber(text, start, end) || startsAboutNumber(text, start, end));
}

interface Read {
  readonly content: Content;
  readonly problem: SyntaxProblem | undefined;
}

const blank: Reading = { content: { kind: "blank" }, comment: undefined, problem: undefined };
const commentContent: Content = { kind: "comment" };

const hash = 35;
const dash = 45;
const colon = 58;

export function readFresh(text: string): Reading {
  reads++;
  const length = text.length;
  const start = skipSpace(text, 0, length);
  if (start === length) return blank;
  if (text.charCodeAt(start) === hash) return makeReading(commentContent, readComment(text, start), undefined);
  if (length > problems.longestLine) return makeReading(unread(text, start, length), undefined, problems.tooLong(length));
  const margin = isAtMargin(text);
  const nameEnd = fieldNameEnd(text, start, length);
  if (nameEnd > 0) {
    const name = text.slice(start, nameEnd);
    const shape = shapeOf(name);
    if (shape === "prose") return readProseField(text, start, nameEnd);
    if (shape || !margin || !entryWords.has(name.toLowerCase())) {
      return withComment(text, start, nameEnd, (end) => readField(text, start, nameEnd, end, shape, margin));
    }
  }
  if (margin && !startsQuantity(text, start, length)) return withComment(text, start, start, (end) => readHead(text, start, end));
  return withComment(text, start, start, (end) => readBody(text, start, end));
}

/**
 * Parts the comment off and reads what stands before it. Inside a quoted name `#` is no comment: where
 * the name turns out to be cut off in its quotation, the next `#` behind the quotation is tried.
 */
function withComment(text: string, first: number, from: number, read: (end: number) => Read): Reading {
  let at = findComment(text, first, from);
  clearTokens();
  let result = read(trimEnd(text, 0, at));
  for (let tries = 0; at < text.length && parser.unclosedAt >= 0 && tries < 8; tries++) {
    const closing = findQuote(text, at);
    if (closing === text.length) break;
    at = findComment(text, first, closing);
    clearTokens();
    result = read(trimEnd(text, 0, at));
  }
  if (at === text.length) return makeReading(result.content, undefined, result.problem);
  return makeReading(result.content, readComment(text, at), result.problem);
}

function findQuote(text: string, at: number): number {
  while (at < text.length && !isQuote(text.charCodeAt(at))) at++;
  return at;
}

function makeReading(content: Content, comment: Comment | undefined, problem: SyntaxProblem | undefined): Reading {
  const allow = comment?.allow;
  const found = problem ?? (allow && !allow.reason ? problems.allowWithoutReason(allow) : undefined);
  return { content, comment, problem: found };
}

function unread(text: string, start: number, end: number): Content {
  return { kind: "unread", ...wordsOf(text, start, end) };
}

function wordsOf(text: string, start: number, end: number): Words {
  return { start, end, text: text.slice(start, end) };
}

// Entries

const entryWords = new Map<string, EntryKind>(entryKinds.map((kind) => [kind, kind]));

function readHead(text: string, start: number, end: number): Read {
  let last = start;
  while (last < end && !isSpace(text.charCodeAt(last))) last++;
  const word = wordsOf(text, start, last);
  const entry = entryWords.get(word.text.toLowerCase());
  const line = [makeToken(tokens.EntryWord, start, last)];
  scan(line, text, last, end);
  load(text, end, line, false);
  const { name } = parser.parse(parser.entryLine);
  if (entry === undefined) {
    const hasColon = word.text.endsWith(":");
    const guess = guessEntry(hasColon ? word.text.slice(0, -1) : word.text);
    return { content: { kind: "entry", word, entry, name }, problem: problems.unknownEntry(word, guess, hasColon) };
  }
  if (!name && entry !== "house") {
    parser.note(problems.lacking(word, `This ${entry} has no name.`, `Put its name after “${word.text}”.`));
  }
  return { content: { kind: "entry", word, entry, name }, problem: parser.problem };
}

/** The one entry word that was plainly meant: begun, or misspelt by a letter or two. */
function guessEntry(written: string): EntryKind | undefined {
  const word = written.toLowerCase();
  if (word.length < 2 || word.length > 10) return undefined;
  const exact = entryWords.get(word);
  if (exact) return exact;
  const begun = entryKinds.filter((kind) => kind.startsWith(word));
  if (begun.length > 0) return begun.length === 1 ? begun[0] : undefined;
  const near = entryKinds.filter((kind) => distance(kind, word) <= (kind.length > 4 ? 2 : 1));
  return near.length === 1 ? near[0] : undefined;
}

// Fields

const shapes = new Map<string, Shape>(fields.map((field) => [field.name, field.shape]));
const fieldNames = [...shapes.keys()];

function shapeOf(name: string): Shape | undefined {
  return shapes.get(name) ?? findField(name)?.shape;
}

/** Where one to three words of letters before a colon end; 0 where the line starts otherwise. */
function fieldNameEnd(text: string, start: number, end: number): number {
  let words = 0;
  let at = start;
  for (;;) {
    const wordStart = at;
    while (at < end && isFieldLetter(text.charCodeAt(at))) at++;
    if (at === wordStart || ++words > 3) return 0;
    const next = skipSpace(text, at, end);
    if (next < end && text.charCodeAt(next) === colon) {
      return next + 1 === end || isSpace(text.charCodeAt(next + 1)) ? at : 0;
    }
    at = next;
  }
}

function isFieldLetter(code: number): boolean {
  return isLetter(code) || code === 45 || code === 39 || code === 0x2019;
}

function readProseField(text: string, start: number, nameEnd: number): Reading {
  const valueStart = skipSpace(text, text.indexOf(":", nameEnd) + 1, text.length);
  const value = valueStart < text.length ? wordsOf(text, valueStart, trimEnd(text, valueStart, text.length)) : undefined;
  return makeReading({ kind: "field", name: wordsOf(text, start, nameEnd), value, items: [] }, undefined, undefined);
}

/** Shapes whose numbers are amounts; in the others `10-5` is just text. */
const exactShapes: ReadonlySet<Shape> = new Set<Shape>([
  ...(["items", "steps", "quantity", "window", "percent", "temperature", "price", "content"] as const),
]);

function readField(text: string, start: number, nameEnd: number, end: number, shape: Shape | undefined, margin: boolean): Read {
  const colonAt = text.indexOf(":", nameEnd);
  const line = [makeToken(tokens.FieldName, start, nameEnd), makeToken(tokens.Colon, colonAt, colonAt + 1)];
  scan(line, text, colonAt + 1, end);
  if (!shape && !margin && isTurnedField(text, start, nameEnd, line)) {
    line.splice(0, 2, makeToken(tokens.Word, start, nameEnd), makeToken(tokens.Split, nameEnd, nameEnd));
    return readTurned(text, start, end, end, line);
  }
  load(text, end, line, shape !== undefined && exactShapes.has(shape));
  const { name, items } = parser.parse(parser.fieldLine);
  const valueStart = line[2]?.startOffset;
  const whole = items.length === 1 && items[0]!.start === valueStart && items[0]!.end === end ? items[0] : undefined;
  const value = valueStart === undefined ? undefined : (whole ?? wordsOf(text, valueStart, end));
  if (!value && shape) {
    parser.note(
      problems.lacking({ start, end: colonAt + 1 }, `Nothing stands after “${name.text}:”.`, "Fill it in, or take the line out."),
    );
  }
  return { content: { kind: "field", name, value, items }, problem: parser.problem };
}

/** `Lemon juice: 25 ml`: no field's name nor nearly one, and wholly an amount that can be poured. */
function isTurnedField(text: string, start: number, nameEnd: number, line: readonly Token[]): boolean {
  const first = line[2]?.tokenType;
  if (first !== tokens.Numeral && first !== tokens.About) return false;
  if (quantityEnd(line, 2) !== line.length) return false;
  const unit = line[line.length - 1]!.unit;
  return (unit === undefined || pourable.has(unit.dimension)) && !isNearField(text.slice(start, nameEnd).toLowerCase());
}

const pourable: ReadonlySet<string> = new Set(["volume", "mass", "part", "piece"]);

/** One slip away from a field's name: long names only, since `rum` is not a misspelt `rim`. */
function isNearField(name: string): boolean {
  return name.length >= 5 && fieldNames.some((field) => field.length >= 5 && distance(field, name) === 1);
}

/** The index of the token after the quantity that starts at token `at`. */
function quantityEnd(line: readonly Token[], at: number): number {
  if (line[at]?.tokenType === tokens.About) at++;
  at++;
  if (line[at]?.tokenType === tokens.RangeMark) at += 2;
  if (line[at]?.tokenType === tokens.Unit_) at++;
  return at;
}

// Body lines

function readBody(text: string, start: number, end: number): Read {
  if (text.charCodeAt(start) === dash) return readMenu(text, start, end);
  const last = keywordEnd(text, start, end);
  const keyword = last > 0 ? bodyKeywords.get(text.slice(start, last).toLowerCase()) : undefined;
  return keyword ? keyword(text, start, last, end) : readPour(text, start, end);
}

type ReadKeyworded = (text: string, start: number, last: number, end: number) => Read;

const bodyKeywords = new Map<string, ReadKeyworded>([
  ["or", readOr],
  ["swap", readSwap],
  ["without", readWithout],
  ["section", readSection],
]);

/** Where the letters that start the line end, if white space follows and they may be a keyword; else 0. */
function keywordEnd(text: string, start: number, end: number): number {
  let at = start;
  while (at < end && at - start < 8 && isLetter(text.charCodeAt(at))) at++;
  return at > start + 1 && (at === end || isSpace(text.charCodeAt(at))) ? at : 0;
}

function readPour(text: string, start: number, end: number): Read {
  const line: Token[] = [];
  scan(line, text, start, end);
  const first = line[0]!.tokenType;
  if (first === tokens.Word || first === tokens.Quote) {
    const split = findTurned(line);
    if (split > 0) {
      line.splice(split, 0, makeToken(tokens.Split, line[split]!.startOffset, line[split]!.startOffset));
      const stop = quantityEnd(line, split + 1);
      return readTurned(text, start, end, line[stop]?.startOffset ?? end, line.slice(0, stop));
    }
  }
  load(text, end, line, true);
  const pour = parser.parse(parser.pourLine);
  if (!pour.name && !pour.quantity && !pour.lead) {
    return { content: unread(text, start, end), problem: parser.problem ?? problems.unreadable({ start, end }) };
  }
  if (!hasLetterOrDigit(text, start, end)) return { content: unread(text, start, end), problem: problems.unreadable({ start, end }) };
  if (!pour.name) parser.note(nameless(text, { start, end }));
  else if (!pour.quantity && !pour.lead && !isToTaste(pour.name)) {
    parser.note(problems.missingAmount(pour.name, leadingField(pour.name.text)));
  }
  return { content: { kind: "pour", pour }, problem: parser.problem };
}

function nameless(text: string, pour: { start: number; end: number }): SyntaxProblem {
  return problems.lacking(pour, `Nothing to pour is named after “${text.slice(pour.start, pour.end)}”.`, "Name the ingredient behind it.");
}

/** Where the amount of `gin 50 ml` starts, counted in tokens: with a unit, and last or before a comma. 0: not turned. */
function findTurned(line: readonly Token[]): number {
  for (let at = 1; at < line.length; at++) {
    const { tokenType } = line[at]!;
    if (tokenType === tokens.Comma || tokenType === tokens.Quote) return 0;
    if (tokenType !== tokens.Numeral && tokenType !== tokens.About) continue;
    const stop = quantityEnd(line, at);
    const unit = line[stop - 1]!.unit;
    if (unit && pourable.has(unit.dimension) && (stop === line.length || line[stop]!.tokenType === tokens.Comma)) return at;
  }
  return 0;
}

/** Reads a name, the split and an amount; `stop` is where the amount ends, and modifiers may stand behind it. */
function readTurned(text: string, start: number, end: number, stop: number, line: Token[]): Read {
  load(text, end, line, true);
  const pour = parser.parse(parser.turnedLine);
  const written = wordsOf(text, start, end);
  const instead = `${text.slice(pour.quantity!.start, pour.quantity!.end)} ${text.slice(pour.name!.start, pour.name!.end)}${text.slice(stop, end)}`;
  parser.problem ??= problems.turnedPour(written, instead);
  return { content: { kind: "pour", pour: { ...pour, end } }, problem: parser.problem };
}

function isToTaste(name: Name): boolean {
  for (let index = 0; index < name.commas.length; index++) {
    const from = name.commas[index]! - name.start + 1;
    const to = (name.commas[index + 1] ?? name.end) - name.start;
    if (name.text.slice(from, to).trim().toLowerCase() === "to taste") return true;
  }
  return false;
}

/** The field whose name the text starts with, in case only the colon is missing. */
function leadingField(text: string): string | undefined {
  const words = text.split(/\s/, 3);
  for (let count = Math.min(words.length, 2); count > 0; count--) {
    const name = words.slice(0, count).join(" ").toLowerCase();
    if (shapes.has(name) && name.length < text.length) return name;
  }
  return undefined;
}

function hasLetterOrDigit(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (isDigit(code) || isLetter(code) || code > 0x2bff) return true;
  }
  return false;
}

function keywordLine(text: string, type: Parameters<typeof makeToken>[0], start: number, last: number, end: number): Token[] {
  const line = [makeToken(type, start, last)];
  scan(line, text, last, end);
  return line;
}

function readOr(text: string, start: number, last: number, end: number): Read {
  load(text, end, keywordLine(text, tokens.Or, start, last, end), true);
  const { word, pour } = parser.parse(parser.orLine);
  if (!pour) parser.note(problems.lacking(word, "No other choice is named after “or”.", "Name what may be poured instead."));
  else if (!pour.name) parser.note(nameless(text, pour));
  return { content: { kind: "or", word, pour }, problem: parser.problem };
}

function readWithout(text: string, start: number, last: number, end: number): Read {
  load(text, end, keywordLine(text, tokens.Without, start, last, end), true);
  const { word, all, pour } = parser.parse(parser.withoutLine);
  if (!pour) parser.note(problems.lacking(word, "Nothing is named after “without”.", "Name the ingredient to leave out."));
  else if (!pour.name) parser.note(nameless(text, pour));
  return { content: { kind: "without", word, all, pour }, problem: parser.problem };
}

function readSection(text: string, start: number, last: number, end: number): Read {
  load(text, end, keywordLine(text, tokens.Section, start, last, end), false);
  const { word, title } = parser.parse(parser.sectionLine);
  if (!title) parser.note(problems.lacking(word, "This section has no title.", "Put its title after “section”."));
  return { content: { kind: "section", word, title }, problem: parser.problem };
}

/** How many places of ` for ` are tried as the one that parts a swap. */
const mostReadings = 8;

function readSwap(text: string, start: number, last: number, end: number): Read {
  const line = keywordLine(text, tokens.Swap, start, last, end);
  const word = wordsOf(text, start, last);
  const readings: { out: Pour; in: Pour }[] = [];
  let problem: SyntaxProblem | undefined;
  let cutAt = -1;
  let cutIn = -1;
  for (let at = 2; at < line.length - 1 && readings.length < mostReadings; at++) {
    const token = line[at]!;
    if (!isFor(text, token)) continue;
    const parts = line.slice();
    parts[at] = makeToken(tokens.For, token.startOffset, token.end);
    load(text, end, parts, true);
    const swap = parser.parse(parser.swapLine);
    // Cut off in its quotation, the first name holds this “for” and has to be read on.
    if (parser.unclosedAt >= 0 && parser.unclosedAt < token.startOffset) {
      cutAt = parser.unclosedAt;
      continue;
    }
    if (!swap.out?.name || !swap.in?.name) continue;
    if (readings.length === 0) {
      problem = parser.problem;
      cutIn = parser.unclosedAt;
    }
    readings.push({ out: swap.out, in: swap.in });
  }
  if (readings.length === 0) {
    cutIn = cutAt;
    problem = problems.lacking(
      { start, end },
      "This swap does not say both what goes out and what comes in.",
      "Write “swap OLD for NEW”, with an amount before NEW if it changes.",
    );
  }
  parser.unclosedAt = cutIn;
  return { content: { kind: "swap", word, readings }, problem };
}

function isFor(text: string, token: Token): boolean {
  return token.end - token.startOffset === 3 && text.slice(token.startOffset, token.end).toLowerCase() === "for";
}

// Menu lines

function readMenu(text: string, start: number, end: number): Read {
  const line = [makeToken(tokens.MenuDash, start, start + 1)];
  scan(line, text, start + 1, end);
  if (line.length === 1) {
    const dash = wordsOf(text, start, start + 1);
    return {
      content: { kind: "menu", dash },
      problem: problems.lacking(dash, "No drink is named after the dash.", "Name the drink, and its price if it has one."),
    };
  }
  const whole = load(text, end, line, false).menuLine();
  const wholeProblem = parser.problem;
  const split = findPrices(line);
  const content = { kind: "menu" as const, dash: whole.dash, whole: whole.name };
  if (split === 0) return { content, problem: wholeProblem };
  const named = line.slice();
  named.splice(split, line[split]!.tokenType === tokens.Slash ? 1 : 0, makeToken(tokens.Split, 0, 0));
  load(text, end, named, true);
  const { name, prices } = parser.parse(parser.menuLine);
  if (!name) return { content, problem: wholeProblem };
  return {
    content: { ...content, priced: { name, prices, sure: prices.some((price) => price.currency !== undefined) } },
    problem: parser.problem,
  };
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
