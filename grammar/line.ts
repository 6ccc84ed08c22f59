/**
 * What one line says, from its text alone. Equal lines are read once: readings know no position, so
 * they are shared, and nobody may change one.
 */
import { byteOrderMark, isQuote, isSpace, skipSpace, trimEnd } from "./characters.ts";
import { findComment, readComment } from "./comments.ts";
import { fieldNameEnd, readField, readFieldOrTurned, readProseField, shapeOf } from "./lines/field.ts";
import { isEntryWord, readHead } from "./lines/head.ts";
import { readKeyworded } from "./lines/keyworded.ts";
import { readMenu } from "./lines/menu.ts";
import { type Read, wordsOf } from "./lines/parts.ts";
import { readPour } from "./lines/pour.ts";
import { parser } from "./parser.ts";
import * as problems from "./problems.ts";
import { startsAboutNumber, startsNumber } from "./scanner.ts";
import { clearTokens } from "./tokens.ts";
import type { Comment, Content, Reading, SyntaxProblem } from "./tree.ts";

/** Reads a line without its line break. Never throws; equal texts give the same object while it is remembered. */
export function readLine(text: string): Reading {
  if (text.length === 0) return blank;
  const known = young.get(text);
  if (known) return known;
  const reading = old.get(text) ?? readFresh(text);
  if (isWorthKeeping(reading.content)) remember(text, reading);
  return reading;
}

/** Reads a margin line as one that opens an entry, whatever else it might be. */
export function readAsHead(text: string): Reading {
  const start = skipSpace(text, 0, text.length);
  return readParted(text, start, start, readHead);
}

/** Whether the line starts at the margin. */
export function isAtMargin(text: string): boolean {
  const code = text.charCodeAt(0);
  return !isSpace(code) || (code === byteOrderMark && text.length > 1 && !isSpace(text.charCodeAt(1)));
}

/** How many lines were parsed, not remembered, since the process started. */
export function countParsed(): number {
  return parsed;
}

/** How many lines one generation of the memory holds: two generations are kept. */
const generation = 20_000;
let young = new Map<string, Reading>();
let old = new Map<string, Reading>();
let parsed = 0;

function remember(text: string, reading: Reading): void {
  if (young.size >= generation) {
    old = young;
    young = new Map();
  }
  young.set(text, reading);
}

/** Names and prose hardly ever come twice, and comments are read as fast as they are looked up. */
function isWorthKeeping(content: Content): boolean {
  if (content.kind === "field") return content.items.length > 0;
  return content.kind !== "entry" && content.kind !== "comment" && content.kind !== "blank";
}

const hash = 35;
const dash = 45;
const blank: Reading = { content: { kind: "blank" }, comment: undefined, problem: undefined };
const comment: Content = { kind: "comment" };

function readFresh(text: string): Reading {
  const end = text.length;
  const start = skipSpace(text, 0, end);
  if (start === end) return blank;
  if (text.charCodeAt(start) === hash) return makeReading(comment, readComment(text, start), undefined);
  const nameEnd = fieldNameEnd(text, start, end);
  const name = text.slice(start, nameEnd);
  const shape = nameEnd > 0 ? shapeOf(name) : undefined;
  if (shape === "prose") return makeReading(readProseField(text, start, nameEnd), undefined, undefined);
  if (end > problems.longestLine) return makeReading(unread(text, start), undefined, problems.tooLong(end));
  const margin = isAtMargin(text);
  if (nameEnd > 0) {
    // `house: …` at the margin is an entry with a colon too many.
    if (shape || !margin || !isEntryWord(name)) return readParted(text, start, nameEnd, margin ? readField : readFieldOrTurned);
  }
  return readParted(text, start, start, margin && !startsQuantity(text, start, end) ? readHead : readBody);
}

/** Whether a margin line can be a pour that lost its indentation. */
function startsQuantity(text: string, start: number, end: number): boolean {
  return text.charCodeAt(start) !== dash && (startsNumber(text, start, end) || startsAboutNumber(text, start, end));
}

function readBody(text: string, start: number, end: number): Read {
  if (text.charCodeAt(start) === dash) return readMenu(text, start, end);
  return readKeyworded(text, start, end) ?? readPour(text, start, end);
}

/** Reads a line's text from `start` to `end`; `from` is where a field's name ends. */
type LineReader = (text: string, start: number, end: number, from: number) => Read;

/** How many times a comment may turn out to lie in a quoted name. */
const mostTries = 8;

/**
 * Parts the comment off and reads what stands before it. Inside a quoted name `#` is no comment: where
 * the name turns out to be cut off in its quotation, the next `#` behind the quotation is tried.
 */
function readParted(text: string, first: number, from: number, read: LineReader): Reading {
  parsed++;
  let at = findComment(text, first, from);
  let result = readUpTo(text, first, from, at, read);
  for (let tries = 0; at < text.length && parser.unclosedAt >= 0 && tries < mostTries; tries++) {
    const closing = findQuote(text, at);
    if (closing === text.length) break;
    at = findComment(text, first, closing);
    result = readUpTo(text, first, from, at, read);
  }
  return makeReading(result.content, at < text.length ? readComment(text, at) : undefined, result.problem);
}

function readUpTo(text: string, first: number, from: number, at: number, read: LineReader): Read {
  clearTokens();
  const end = trimEnd(text, 0, at);
  try {
    return read(text, first, end, from);
  } catch {
    // A line that fits no rule is the grammar's mistake; the reader is told, and the file goes on.
    return { content: unread(text, first), problem: problems.unreadable({ start: first, end }) };
  }
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

function unread(text: string, start: number): Content {
  return { kind: "unread", ...wordsOf(text, start, trimEnd(text, start, text.length)) };
}
