/** Where a name is declared. What only the larder declares has no file to go to. */
import type { Location, Position } from "vscode-languageserver-types";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import type { Declaration } from "../house/scope.ts";
import { mentionAt } from "./mentions.ts";
import { cursorAt, rangeOf } from "./place.ts";

/** Every declaration that the name may mean, the nearest first. `spelling`: how the editor spells a URI. */
export function definition(house: House, document: SpecDocument, position: Position, spelling = (uri: string) => uri): Location[] {
  const cursor = cursorAt(document, position);
  const mention = cursor && mentionAt(house, cursor);
  if (!mention) return [];
  const { found, text } = mention;
  const others = house.lookup(house.scopeOf(document), found.nameClass, text).filter(({ entry }) => entry !== found.entry);
  const nearest = [found, ...others].filter(({ entry }) => !house.isLarder(entry));
  return nearest.map((declaration) => locationOf(house, declaration, spelling));
}

function locationOf(house: House, { entry, name, alias }: Declaration, spelling: (uri: string) => string): Location {
  const uri = spelling(house.getDocumentOf(entry).uri);
  const line = alias ? aliasLine(entry, name) : 0;
  const { content } = entry.lines[line]!;
  const span =
    content.kind === "entry"
      ? (content.name?.quoted ?? content.name ?? content.word)
      : content.kind === "field"
        ? (content.value ?? content.name)
        : { start: 0, end: 0 };
  return { uri, range: rangeOf(house, entry, { line, start: span.start, end: span.end }) };
}

function aliasLine(entry: Declaration["entry"], name: string): number {
  const line = entry.lines.findIndex(
    ({ content }) =>
      content.kind === "field" && content.name.text.toLowerCase() === "aka" && content.items.some((item) => item.text === name),
  );
  return Math.max(0, line);
}
