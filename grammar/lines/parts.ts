/** What the readers of the several kinds of line share. */
import { scan } from "../scanner.ts";
import type { Token } from "../tokens.ts";
import * as tokens from "../tokens.ts";
import type { Content, SyntaxProblem, Words } from "../tree.ts";

/** What one line says, its comment left aside. */
export interface Read {
  readonly content: Content;
  readonly problem: SyntaxProblem | undefined;
}

export function wordsOf(text: string, start: number, end: number): Words {
  return { start, end, text: text.slice(start, end) };
}

/** The line's tokens: the one it starts with, and those from there up to `end`. */
export function tokensBehind(first: Token, text: string, end: number): Token[] {
  const line = [first];
  scan(line, text, first.end, end);
  return line;
}

/** The index of the token after the quantity that starts at token `at`. */
export function quantityEnd(line: readonly Token[], at: number): number {
  if (line[at]?.tokenType === tokens.About) at++;
  at++;
  if (line[at]?.tokenType === tokens.RangeMark) at += 2;
  if (line[at]?.tokenType === tokens.Unit_) at++;
  return at;
}

/** The dimensions that a pour's amount can have. */
export const pourable: ReadonlySet<string> = new Set(["volume", "mass", "part", "piece"]);
