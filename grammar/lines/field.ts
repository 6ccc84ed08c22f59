/** Fields: `name: value`. */
import { distance } from "fastest-levenshtein";
import { isLetter, isSpace, skipSpace, trimEnd } from "../characters.ts";
import { fields, findField, type Shape } from "../fields.ts";
import { parser } from "../parser.ts";
import * as problems from "../problems.ts";
import * as tokens from "../tokens.ts";
import { makeToken, type Token } from "../tokens.ts";
import type { Content, Item, Words } from "../tree.ts";
import { pourable, quantityEnd, type Read, tokensBehind, wordsOf } from "./parts.ts";
import { readTurned } from "./pour.ts";

/** What the field's value is read as, whatever entry it stands in; absent for a name in no table. */
export function shapeOf(name: string): Shape | undefined {
  return shapes.get(name) ?? findField(name)?.shape;
}

/** Where one to three words of letters before a colon end; 0 where the line starts otherwise. */
export function fieldNameEnd(text: string, start: number, end: number): number {
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

/** A field whose value is raw text: no amounts, no lists, no comment. */
export function readProseField(text: string, start: number, nameEnd: number): Content {
  const valueStart = skipSpace(text, text.indexOf(":", nameEnd) + 1, text.length);
  const value = valueStart < text.length ? wordsOf(text, valueStart, trimEnd(text, valueStart, text.length)) : undefined;
  return { kind: "field", name: nameOf(text, start, nameEnd), value, items: [] };
}

/** Any other field. */
export function readField(text: string, start: number, end: number, nameEnd: number): Read {
  return parseField(text, start, end, nameEnd, fieldTokens(text, nameEnd, end));
}

/** A field, or with a name in no table before an amount: a pour written the other way round. */
export function readFieldOrTurned(text: string, start: number, end: number, nameEnd: number): Read {
  const line = fieldTokens(text, nameEnd, end);
  if (!isTurned(line) || isNearlyField(text.slice(start, nameEnd))) return parseField(text, start, end, nameEnd, line);
  line.splice(0, 1, makeToken(tokens.Word, start, nameEnd), makeToken(tokens.Split, nameEnd, nameEnd));
  return readTurned(text, start, end, end, line);
}

/** The colon and what stands behind it. */
function fieldTokens(text: string, nameEnd: number, end: number): Token[] {
  const colonAt = text.indexOf(":", nameEnd);
  return tokensBehind(makeToken(tokens.Colon, colonAt, colonAt + 1), text, end);
}

function parseField(text: string, start: number, end: number, nameEnd: number, line: Token[]): Read {
  const name = nameOf(text, start, nameEnd);
  const shape = shapeOf(name.text);
  parser.load(text, end, line, shape !== undefined && exactShapes.has(shape));
  const items = parser.parse(parser.fieldLine);
  const value = wholeValue(text, line[1], end, items);
  if (!value && shape) {
    const what = `Nothing stands after “${name.text}:”.`;
    parser.note(problems.lacking({ start, end: line[0]!.end }, what, "Fill it in, or take the line out."));
  }
  return { content: { kind: "field", name, value, items }, problem: parser.problem };
}

const colon = 58;
const shapes = new Map<string, Shape>(fields.map((field) => [field.name, field.shape]));
const fieldNames = [...shapes.keys()];

function isFieldLetter(code: number): boolean {
  return isLetter(code) || code === 45 || code === 39 || code === 0x2019;
}

/** Shapes whose numbers are amounts; in the others `10-5` is just text. */
const exactShapes: ReadonlySet<Shape> = new Set<Shape>([
  ...(["items", "steps", "quantity", "window", "percent", "temperature", "price", "content"] as const),
]);

/** The field's name; a known one is the table's own string, so that thousands of lines hold one. */
function nameOf(text: string, start: number, end: number): Words {
  const written = text.slice(start, end);
  return { start, end, text: sameNames.get(written) ?? written };
}

const sameNames = new Map(fieldNames.map((name) => [name, name]));

/** The whole value; where it is a single item, that item is the value. */
function wholeValue(text: string, first: Token | undefined, end: number, items: readonly Item[]): Words | undefined {
  if (!first) return undefined;
  const only = items.length === 1 ? items[0]! : undefined;
  return only && only.start === first.startOffset && only.end === end ? only : wordsOf(text, first.startOffset, end);
}

/** `Lemon juice: 25 ml`: what stands behind the colon is wholly an amount that can be poured. */
function isTurned(line: readonly Token[]): boolean {
  const first = line[1]?.tokenType;
  if (first !== tokens.Numeral && first !== tokens.About) return false;
  if (quantityEnd(line, 1) !== line.length) return false;
  const { unit } = line[line.length - 1]!;
  return unit === undefined || pourable.has(unit.dimension);
}

/** In the table, or one slip away from it: long names only, since `rum` is not a misspelt `rim`. */
function isNearlyField(written: string): boolean {
  const name = written.toLowerCase();
  if (shapeOf(name)) return true;
  return name.length >= 5 && fieldNames.some((field) => field.length >= 5 && distance(field, name) === 1);
}
