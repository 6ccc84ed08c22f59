/** Fixtures as specs: `<>` is the cursor, `=== name.drink` starts a file. */

import { TextDocument } from "vscode-languageserver-textdocument";
import type { Position, Range } from "vscode-languageserver-types";
import { print } from "../../grammar/print.ts";
import { toTextEdits } from "../../server/features/edits.ts";
import { hover } from "../../server/features/hover.ts";
import { type Action, quickFixes } from "../../server/features/quick-fixes.ts";
import type { SpecDocument } from "../../server/house/document.ts";
import type { Fix } from "../../server/house/finding.ts";
import type { House } from "../../server/house/house.ts";
import { houseOf, root } from "../house/make.ts";

export interface Fixture {
  readonly house: House;
  readonly document: SpecDocument;
  readonly position: Position;
}

export function fixtureOf(text: string): Fixture {
  const lines = text.split("\n");
  let file = "spec.drink";
  let line = -1;
  for (const one of lines) {
    const start = /^=== (\S+)$/.exec(one);
    if (start) [file, line] = [start[1]!, -1];
    else line++;
    const character = one.indexOf("<>");
    if (character < 0) continue;
    const house = houseOf(text.replace("<>", ""));
    return { house, document: house.document(`${root}/${file}`)!, position: { line, character } };
  }
  throw new Error("the fixture has no cursor");
}

/** The hover at the cursor as Markdown; empty where there is none. */
export function hoverAt(text: string): string {
  const { house, document, position } = fixtureOf(text);
  const found = hover(house, document, position);
  return found ? (found.contents as { value: string }).value : "";
}

/** The text that the hover at the cursor marks. */
export function hoveredText(text: string): string {
  const { house, document, position } = fixtureOf(text);
  const range = hover(house, document, position)?.range;
  return range ? textDocumentOf(document).getText(range) : "";
}

export function actionsAt(text: string, to?: Position): { fixture: Fixture; actions: Action[] } {
  const fixture = fixtureOf(text);
  const range: Range = { start: fixture.position, end: to ?? fixture.position };
  return { fixture, actions: quickFixes(fixture.house, fixture.document, range, []) };
}

export function titlesAt(text: string): string[] {
  return actionsAt(text).actions.map(({ title }) => title);
}

/** The file after the action at the cursor whose title starts so. */
export function apply(text: string, title: string): string {
  const { fixture, actions } = actionsAt(text);
  const action = actions.find((one) => one.title.startsWith(title));
  if (!action) throw new Error(`“${title}” is not offered, but: ${actions.map((one) => one.title).join("; ")}`);
  return applied(fixture, action);
}

export function applied({ house, document }: Pick<Fixture, "house" | "document">, fix: Fix): string {
  return TextDocument.applyEdits(textDocumentOf(document), toTextEdits(house, document, fix));
}

function textDocumentOf({ uri, tree }: SpecDocument): TextDocument {
  return TextDocument.create(uri, "mutchkin", 0, print(tree));
}
