/** What the rules find in a text, against the labels in it: a line of `^^^^ code` marks the text above it. */
import { expect } from "vitest";
import { toTextEdits } from "../../server/features/edits.ts";
import { outward } from "../../server/features/margins.ts";
import type { SpecDocument } from "../../server/house/document.ts";
import type { Finding, Fix } from "../../server/house/finding.ts";
import type { House } from "../../server/house/house.ts";
import { rules } from "../../server/rules/all.ts";
import { findingsOf } from "../../server/rules/run.ts";
import { documentOf, houseOf, textOf } from "../house/make.ts";

export interface Located {
  readonly uri: string;
  readonly line: number;
  readonly finding: Finding;
}

/** Everything found in the texts of a house, in order; a rule that fails fails the test. */
export function findIn(house: House): Located[] {
  const located: Located[] = [];
  for (const { uri, tree } of house.documents()) {
    for (const [index, entry] of tree.entries.entries()) {
      for (const finding of findingsOf(house, entry, rules, fail)) {
        located.push({ uri, line: tree.starts[index]! + finding.place.line, finding });
      }
    }
  }
  return located;
}

export function codesIn(text: string): string[] {
  return findIn(houseOf(text)).map(({ finding }) => finding.code);
}

/** Demands one label for each finding and one finding for each label. */
export function checkFindings(labelled: string): void {
  const { text, labels } = takeLabels(labelled);
  const found = findIn(houseOf(text)).map(({ uri, line, finding }) => {
    const { start, end } = finding.place;
    return `${uri.slice(uri.lastIndexOf("/") + 1)}:${line + 1}:${start}-${end} ${finding.code}`;
  });
  expect(found.sort()).toEqual(labels.sort());
}

/** The only finding of a code in a text. */
export function findOne(text: string, code: string): { house: House; located: Located } {
  const house = houseOf(text);
  const located = findIn(house).filter(({ finding }) => finding.code === code);
  expect(located.map(({ finding }) => finding.code)).toEqual([code]);
  return { house, located: located[0]! };
}

/** Puts a fix into the texts of its house. */
export function apply(house: House, fix: Fix): void {
  for (const document of [...house.documents()]) {
    const text = applied(house, document, fix);
    if (text !== undefined) house.setDocument(documentOf(document.uri, text));
  }
}

/** The text of a document with a fix put in; absent where the fix does not touch it. */
export function applied(house: House, document: SpecDocument, fix: Fix): string | undefined {
  const edits = outward(toTextEdits(house, document, fix), document.margins, house);
  if (edits.length === 0) return undefined;
  const text = textOf(document);
  const lineStarts = [0];
  for (const match of text.matchAll(/\n/g)) lineStarts.push(match.index + 1);
  const offset = ({ line, character }: { line: number; character: number }) => (lineStarts[line] ?? text.length) + character;
  let result = text;
  const lastFirst = edits.map(({ range, newText }) => ({ start: offset(range.start), end: offset(range.end), newText }));
  for (const { start, end, newText } of lastFirst.sort((one, other) => other.start - one.start)) {
    result = result.slice(0, start) + newText + result.slice(end);
  }
  return result;
}

function takeLabels(labelled: string): { text: string; labels: string[] } {
  const lines: string[] = [];
  const labels: string[] = [];
  let file = "spec.drink";
  let number = 0;
  for (const line of labelled.split("\n")) {
    const label = /^( *)(\^+) ([a-z-]+)$/.exec(line);
    if (label) {
      const start = label[1]!.length;
      labels.push(`${file}:${number}:${start}-${start + label[2]!.length} ${label[3]}`);
      continue;
    }
    const opens = /^=== (\S+)$/.exec(line);
    if (opens) [file, number] = [opens[1]!, 0];
    else number++;
    lines.push(line);
  }
  return { text: lines.join("\n"), labels };
}

function fail(code: string, cause: unknown): never {
  throw new Error(`the rule “${code}” failed`, { cause });
}
