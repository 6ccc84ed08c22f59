/**
 * What can be followed: addresses and files that are named in comments, prose and lines of free text, and
 * the page of a rule that is allowed. Only the web and texts of the house: a click on a spec runs nothing.
 */
import type { DocumentLink } from "vscode-languageserver-types";
import { URI, Utils } from "vscode-uri";
import { findField } from "../../grammar/fields.ts";
import type { Line, Words } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { isHouseFile } from "../house/house-files.ts";
import { rules } from "../rules/all.ts";
import { rangeOnLine } from "./place.ts";

/** `rulesPage`: where the rules are explained, without a fragment. `spelling`: how the editor spells a URI. */
export function documentLinks(
  house: House,
  document: SpecDocument,
  rulesPage: string | undefined,
  spelling = (uri: string) => uri,
): DocumentLink[] {
  const { entries, starts } = document.tree;
  return entries.flatMap((entry, index) =>
    entry.lines.flatMap((line, number) =>
      [...linksOn(house, document, line, rulesPage, spelling)].map(({ target, tooltip, ...span }) => ({
        range: rangeOnLine(starts[index]! + number, span),
        target,
        tooltip,
      })),
    ),
  );
}

interface Link {
  readonly start: number;
  readonly end: number;
  readonly target: string;
  readonly tooltip: string;
}

function* linksOn(
  house: House,
  document: SpecDocument,
  line: Line,
  rulesPage: string | undefined,
  spelling: (uri: string) => string,
): Generator<Link> {
  for (const { text, start } of freeTextOn(line)) {
    for (const match of text.matchAll(word)) {
      const from = start + match.index;
      const address = addressIn(match[0]);
      if (address) {
        const at = from + match[0].indexOf(address);
        yield { start: at, end: at + address.length, target: address, tooltip: "Open the address" };
        continue;
      }
      const named = fileIn(house, document, match[0]);
      if (!named) continue;
      const at = from + match[0].indexOf(named.path);
      yield { start: at, end: at + named.path.length, target: spelling(named.uri), tooltip: "Open the file" };
    }
  }
  const code = line.comment?.allow?.code;
  if (code && rulesPage && codes.has(code.text)) {
    yield { start: code.start, end: code.end, target: `${rulesPage}#${code.text}`, tooltip: `What “${code.text}” is about` };
  }
}

const word = /[^\s<>"“”]+/gu;
const codes = new Set(rules.map((rule) => rule.code));

/** What is written on a line for people: its comment, prose, and fields that take any text. */
function freeTextOn({ content, comment }: Line): Words[] {
  const found: Words[] = comment ? [comment] : [];
  if (content.kind === "prose") found.push(content);
  const shape = content.kind === "field" ? findField(content.name.text)?.shape : undefined;
  if (content.kind === "field" && content.value && (shape === "prose" || shape === "text")) found.push(content.value);
  return found;
}

/** An address of the web without the brackets around it and the point after it. */
function addressIn(text: string): string | undefined {
  const start = text.search(/https?:\/\/[\p{L}\p{N}[]/iu);
  return start < 0 ? undefined : withoutClosing(text.slice(start));
}

/** A text of the house, named by its path from this one's folder. */
function fileIn(house: House, { uri }: SpecDocument, text: string): { path: string; uri: string } | undefined {
  const path = withoutClosing(text.replace(/^[([{'‘`]+/u, ""));
  if (!isHouseFile(path) || /^[/\\]|:/.test(path)) return undefined;
  const target = Utils.resolvePath(Utils.dirname(URI.parse(uri)), path).toString();
  return target !== uri && house.document(target) ? { path, uri: target } : undefined;
}

/** Closing marks belong to the sentence; a closing bracket that was opened inside belongs to the address. */
function withoutClosing(text: string): string {
  const left = new Map<string, number>();
  for (const mark of text) left.set(mark, (left.get(mark) ?? 0) + 1);
  let end = text.length;
  for (; end > 0; end--) {
    const last = text[end - 1]!;
    const opening = brackets[last];
    if (opening === undefined && !/[.,;:!?'’`…]/u.test(last)) break;
    if (opening !== undefined && (left.get(opening) ?? 0) >= left.get(last)!) break;
    left.set(last, left.get(last)! - 1);
  }
  return text.slice(0, end);
}

const brackets: Readonly<Record<string, string>> = { ")": "(", "]": "[", "}": "{" };
