/** Renaming what is declared: its head or one of its other names, and every place that calls it so. */
import type { Position, Range } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import { fileNameOf, type SpecDocument } from "../house/document.ts";
import type { Edit, Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import type { NameClass } from "../house/names.ts";
import type { Declaration } from "../house/scope.ts";
import { writtenName } from "../house/write.ts";
import { changedTexts } from "./edits.ts";
import { type Mention, type Mentioned, meantAt, mentionsIn, mentionsOf, ownNames } from "./mentions.ts";
import { cursorAt, rangeOf } from "./place.ts";

/** Why a name cannot be changed, in a sentence for whoever asked. */
export interface Refusal {
  readonly because: string;
}

/** What would be renamed at the cursor: its range and its present name. */
export function prepareRename(
  house: House,
  document: SpecDocument,
  position: Position,
): { readonly range: Range; readonly placeholder: string } | Refusal {
  const cursor = cursorAt(document, position);
  const meant = cursor && meantAt(house, cursor);
  if (!cursor || !meant)
    return { because: "There is no name here that is declared anywhere: point at the name of a drink, a stock or a prep." };
  if (house.isLarder(meant.found.entry)) {
    return {
      because: `“${meant.found.name}” is declared in the built-in larder, which is not yours to change. Declare your own to call it otherwise.`,
    };
  }
  return { range: rangeOf(house, cursor.entry, meant.place), placeholder: meant.found.name };
}

/** The change in all texts at hand. A name that is taken, or that would turn other lines to mean this, is refused. */
export function rename(house: House, document: SpecDocument, position: Position, wanted: string): Fix | Refusal {
  const possible = prepareRename(house, document, position);
  if ("because" in possible) return possible;
  const name = wanted.trim();
  if (!name || /[\r\n\t"“”;]/.test(name))
    return { because: `“${wanted}” is no name: it needs a word, and neither line breaks, quotation marks nor “;”.` };
  const { found } = meantAt(house, cursorAt(document, position)!)!;
  const mentions = [...mentionsOf(house, found.entry)];
  const taken = takenBy(house, found, mentions, name);
  if (taken) return taken;
  const own = ownNames(found.entry)
    .filter((one) => one.found.name === found.name && one.found.alias === found.alias)
    .map((mention) => ({ entry: found.entry, mention }));
  const called = mentions.filter(({ mention }) => mention.found.name === found.name);
  const edits = [...own, ...called].map(({ entry, mention }): Edit => ({ entry, ...mention.place, text: written(entry, mention, name) }));
  const fix: Fix = { title: `Rename “${found.name}” to “${name}”`, edits, safe: true };
  return misreading(house, fix, found.entry) ?? fix;
}

/** In a field a name stands as it is; in a pour, a head or a menu one that would not read so takes quotation marks. */
function written(entry: Entry, { place }: Mention, name: string): string {
  return entry.lines[place.line]?.content.kind === "field" ? name : writtenName(name);
}

/** Names of ingredients and of drinks meet in a pour, so that neither may be called as the other. */
function classesBeside(nameClass: NameClass): readonly NameClass[] {
  return nameClass === "ingredient" || nameClass === "drink" ? ["ingredient", "drink"] : [nameClass];
}

/** Absent where nobody else goes by that name. */
function takenBy(
  house: House,
  { entry: renamed, nameClass }: Declaration,
  mentions: readonly Mentioned[],
  name: string,
): Refusal | undefined {
  const scopes = new Set([renamed, ...mentions.map(({ entry }) => entry)].map((entry) => house.scopeOf(entry)));
  for (const scope of scopes) {
    const taken = classesBeside(nameClass)
      .flatMap((one) => house.lookup(scope, one, name))
      .find(({ entry }) => entry !== renamed && !(house.isLarder(entry) && !isCalled(house, entry)));
    if (taken) return { because: whoTook(house, taken, name) };
  }
  return undefined;
}

function isCalled(house: House, entry: Entry): boolean {
  return !mentionsOf(house, entry).next().done;
}

function whoTook(house: House, { entry, name: other }: Declaration, name: string): string {
  const what = `${entry.kind === "ice" ? "an" : "a"} ${entry.kind}`;
  const same = other === name ? `“${name}” is` : `“${name}” is read as “${other}”, which is`;
  if (house.isLarder(entry))
    return `${same} ${what} of the built-in larder that lines of this house call by that name; they would mean this one. Choose another name.`;
  return `${same} already ${what}: ${whereIs(house, entry, 0)}. Choose another name.`;
}

function whereIs(house: House, entry: Entry, line: number): string {
  const { uri } = house.getDocumentOf(entry);
  return `line ${house.getLineOf(entry) + line + 1} of ${fileNameOf(uri)}`;
}

/** The first line that would not call it by its new name any more: read as a person will read it, in a house that has it so. */
function misreading(house: House, fix: Fix, renamed: Entry): Refusal | undefined {
  const texts = changedTexts(house, fix);
  const after = house.supposing(texts);
  const now = texts.find(({ uri }) => uri === house.getDocumentOf(renamed).uri)!.tree.entries[house.getIndexOf(renamed)];
  for (const edit of fix.edits) {
    if (!("entry" in edit)) continue;
    const { uri } = house.getDocumentOf(edit.entry);
    const entry = after.document(uri)?.tree.entries[house.getIndexOf(edit.entry)];
    const calls = entry ? [...ownNames(entry), ...mentionsIn(after, entry)] : [];
    if (!calls.some(({ place, found }) => place.line === edit.line && found.entry === now))
      return { because: `${whereIs(house, edit.entry, edit.line)} would not read as that name there. Choose another.` };
  }
  return undefined;
}
