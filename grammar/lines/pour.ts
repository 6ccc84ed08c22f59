/** Pours: so much of this. */
import { isDigit, isLetter } from "../characters.ts";
import { findField } from "../fields.ts";
import { parser } from "../parser.ts";
import * as problems from "../problems.ts";
import { scan } from "../scanner.ts";
import * as tokens from "../tokens.ts";
import { makeToken, type Token } from "../tokens.ts";
import type { Name, Pour, SyntaxProblem } from "../tree.ts";
import { pourable, quantityEnd, type Read, wordsOf } from "./parts.ts";

export function readPour(text: string, start: number, end: number): Read {
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
  parser.load(text, end, line, true);
  const pour = parser.parse(parser.pourLine);
  if (!pour.quantity && !hasLetterOrDigit(text, start, end)) {
    return { content: { kind: "unread", ...wordsOf(text, start, end) }, problem: parser.problem ?? problems.unreadable({ start, end }) };
  }
  if (!pour.name) parser.note(nameless(text, { ...pour, end }));
  else if (!pour.quantity && !pour.lead && !isToTaste(pour.name)) {
    parser.note(problems.missingAmount(pour.name, leadingField(pour.name.text)));
  }
  return { content: { kind: "pour", pour }, problem: parser.problem };
}

/** An amount of nothing, or only modifiers of nothing. */
export function nameless(text: string, pour: Pour): SyntaxProblem {
  const written = problems.excerpt(text.slice(pour.start, pour.end));
  const where = pour.quantity || pour.lead ? `after “${written}”` : `in “${written}”`;
  return problems.lacking(pour, `Nothing to pour is named ${where}.`, "Name the ingredient.");
}

/** Reads a name, the split and an amount; `stop` is where the amount ends, and modifiers may stand behind it. */
export function readTurned(text: string, start: number, end: number, stop: number, line: Token[]): Read {
  parser.load(text, end, line, true);
  const pour = parser.parse(parser.turnedLine);
  const written = wordsOf(text, start, end);
  const instead = `${text.slice(pour.quantity!.start, pour.quantity!.end)} ${text.slice(pour.name!.start, pour.name!.end)}${text.slice(stop, end)}`;
  parser.problem ??= problems.turnedPour(written, instead);
  return { content: { kind: "pour", pour: { ...pour, end } }, problem: parser.problem };
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
    if (findField(name) && name.length < text.length) return name;
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
