/** Beside a text that is shown next to an earlier one: what each change does, in figures, behind the name of what changed. */
import type { InlayHint, Range } from "vscode-languageserver-types";
import type { Entry } from "../../grammar/tree.ts";
import type { Houses } from "../house/compare/pair.ts";
import { keysOf } from "../house/declarations.ts";
import { entryAt, type SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { showCount } from "../house/show.ts";
import { diff } from "../reports/diff.ts";
import { drinkLines, menuLines } from "../reports/diff-lines.ts";
import type { DiffDrink, DiffReport, DiffThing } from "../reports/diff-schema.ts";
import { effectLines } from "../reports/diff-words.ts";
import { asText, paragraphs } from "./markdown.ts";

/** So many figures stand on the line; the tooltip has them all. What could hurt a guest is never left out. */
const mostOnLine = 3;
/** So many drinks are named in a tooltip. */
const mostNames = 20;

/** Of the lines that the range touches. `before` is the house as it is but for this text; `moved` are the untouched drinks, here and elsewhere, that come to something else. */
export function changeHints({ before, after }: Houses, document: SpecDocument, range: Range, moved: readonly Entry[]): InlayHint[] {
  const wanted = (uri: string) => uri === document.uri;
  const report = diff({ before, after }, { before: "", after: "", pathOf: (uri) => uri, wanted, alone: true });
  const hints = [
    ...report.drinks.map((drink) => ({ at: drink.after, said: aboutDrink(drink) })),
    ...report.things.map((thing) => ({ at: thing.after, said: aboutThing(thing, movedBy(after, document, thing, moved)) })),
    ...report.menus.map((menu) => ({ at: headOf(document, menu), said: aboutMenu(menu) })),
  ];
  return hints
    .flatMap(({ at, said }) => (at?.file === document.uri && said ? (hintAt(document, at.line - 1, said) ?? []) : []))
    .filter(({ position: { line } }) => line >= range.start.line && line <= range.end.line)
    .sort((one, other) => one.position.line - other.position.line);
}

type DiffMenu = DiffReport["menus"][number];

interface Said {
  readonly label: string;
  readonly more: readonly string[];
}

function aboutDrink(drink: DiffDrink): Said | undefined {
  const { how, oldName, effects } = drink;
  const { hurt, said } = drinkLines(drink);
  const named = how === "added" ? ["new"] : how === "renamed" ? [`was ${oldName}`] : [];
  const parts = [...hurt, ...named, ...(effects ? briefly(effectLines(effects, true)) : [])];
  return parts.length > 0 ? { label: parts.join(" · "), more: [...hurt, ...named, ...said] } : undefined;
}

/** What of it stands on the line, and how much does not. */
function briefly(lines: readonly string[]): string[] {
  const rest = lines.length - mostOnLine;
  return [...lines.slice(0, mostOnLine), ...(rest > 0 ? [`${rest} more`] : [])];
}

function aboutThing({ how }: DiffThing, moved: readonly Entry[]): Said | undefined {
  const count = `moves ${showCount(moved.length, "drink")}`;
  const names = moved.flatMap(({ name }) => name?.text ?? []);
  const more = [...names.slice(0, mostNames), ...(names.length > mostNames ? [`${names.length - mostNames} more`] : [])];
  if (moved.length === 0) return how === "added" ? { label: "new", more: ["This was not there before."] } : undefined;
  return { label: how === "added" ? `new · ${count}` : count, more };
}

/** Of the drinks that moved, those that hang on this; a house's own rules are behind all of them. */
function movedBy(house: House, { tree }: SpecDocument, { kind, after }: DiffThing, moved: readonly Entry[]): readonly Entry[] {
  const entry = after && tree.entries[tree.starts.indexOf(after.line - 1)];
  if (!entry || kind === "house") return entry ? moved : [];
  const hanging = house.hangingOn(keysOf(entry));
  return moved.filter((one) => hanging.has(one));
}

function aboutMenu(menu: DiffMenu): Said | undefined {
  const lines = menuLines(menu);
  const parts = menu.how === "added" ? ["new"] : briefly(lines);
  return parts.length > 0 ? { label: parts.join(" · "), more: lines } : undefined;
}

/** Where a menu stands in a text, by its name; a report gives no place for it. */
function headOf({ uri, tree }: SpecDocument, { name }: DiffMenu): DiffDrink["after"] {
  const index = tree.entries.findIndex((entry) => entry.kind === "menu" && entry.name?.text === name);
  return index < 0 ? null : { file: uri, line: tree.starts[index]! + 1 };
}

function hintAt(document: SpecDocument, line: number, { label, more }: Said): InlayHint | undefined {
  const name = entryAt(document, line)?.entry.name;
  if (!name) return undefined;
  const value = paragraphs("Beside the earlier text:", more.map((one) => `- ${asText(one)}`).join("\n"));
  return { position: { line, character: name.quoted?.end ?? name.end }, label, paddingLeft: true, tooltip: { kind: "markdown", value } };
}
