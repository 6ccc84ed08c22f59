/** What can be done about the text at a range: the fixes of what was found there, and conversions that keep the drink the same. */
import type { Range } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import { entryAt, type SpecDocument } from "../house/document.ts";
import type { Finding, Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { convertEntries } from "./conversions/entry.ts";
import { convertFromParts, convertToParts } from "./conversions/parts.ts";
import { convertPour } from "./conversions/pour.ts";
import { convertPrepFromParts, convertPrepToParts } from "./conversions/prep-parts.ts";

export interface Action extends Fix {
  readonly kind: "quickfix" | "refactor.rewrite";
  /** What it puts right. */
  readonly finding?: Finding;
}

/**
 * `findings` may be more than those at the range; edits are the house's, `edits.ts` makes them the editor's.
 * A conversion that rounds stands beside the exact one and says what it rounds.
 */
export function quickFixes(house: House, document: SpecDocument, range: Range, findings: readonly Finding[]): Action[] {
  return [...fixesAt(house, document, range, findings), ...conversionsAt(house, document, range)];
}

function fixesAt(house: House, document: SpecDocument, range: Range, findings: readonly Finding[]): Action[] {
  return findings.flatMap((finding) => {
    if (house.findDocumentOf(finding.entry) !== document) return [];
    const line = house.getLineOf(finding.entry) + finding.place.line;
    if (line < range.start.line || line > range.end.line) return [];
    return (finding.fixes?.() ?? []).map((fix): Action => ({ ...fix, kind: "quickfix", finding }));
  });
}

/** What a command can convert at a range: what is offered there, then what is for the whole entry, as on its head. */
export function conversionsOf(house: House, document: SpecDocument, range: Range): Fix[] {
  const there = conversionsAt(house, document, range);
  const head = entryAt(document, range.start.line)?.index;
  const line = head === undefined ? range.start.line : document.tree.starts[head]!;
  const start = { line, character: 0 };
  const whole = conversionsAt(house, document, { start, end: start });
  return [...there, ...whole.filter(({ title }) => !there.some((one) => one.title === title))];
}

/** On a pour that pour; on a head the drink and the file; over several lines what they touch. */
function conversionsAt(house: House, document: SpecDocument, { start, end }: Range): Action[] {
  const first = entryAt(document, start.line);
  const last = entryAt(document, Math.max(start.line, end.character === 0 && end.line > start.line ? end.line - 1 : end.line)) ?? first;
  if (!first || !last) return [];
  const fixes: Fix[] = [];
  const { entry } = first;
  const takesPours = isConvertible(entry);
  const touched = document.tree.entries.slice(first.index, last.index + 1);
  if (touched.length > 1) return asActions(convertEntries(house, touched, "these entries"));
  const onHead = entry.lines[first.line]!.content.kind === "entry";
  const oneLine = first.line === last.line;
  if (takesPours && oneLine && !onHead) fixes.push(...convertPour(house, entry, first.line));
  if (takesPours && (onHead || !oneLine)) {
    fixes.push(...convertEntries(house, [entry], `the ${entry.kind}`), ...partConversions(house, entry));
  }
  if (onHead && document.tree.entries.filter(isConvertible).length > 1) {
    fixes.push(...convertEntries(house, document.tree.entries, "the whole file"));
  }
  return asActions(fixes);
}

function partConversions(house: House, entry: Entry): Fix[] {
  if (entry.kind === "prep") return [...convertPrepToParts(house, entry), ...convertPrepFromParts(house, entry)];
  return [...convertToParts(house, entry), ...convertFromParts(house, entry)];
}

function isConvertible({ kind }: Entry): boolean {
  return kind === "drink" || kind === "prep";
}

function asActions(fixes: readonly Fix[]): Action[] {
  return fixes.map((fix) => ({ ...fix, kind: "refactor.rewrite" }));
}
