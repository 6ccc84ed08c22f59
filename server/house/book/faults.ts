/**
 * What is wrong with the directives of a text, found and worded here alone: an editor marks it as it is
 * typed, the build stops at it.
 */
import { asLabel, directiveAt, labelOf } from "../../../grammar/directives.ts";
import type { Attribute, Directive, Entry } from "../../../grammar/tree.ts";
import type { Place } from "../document.ts";
import type { Finding, Fix } from "../finding.ts";
import type { House } from "../house.ts";
import { askFor, nearestOf } from "../nearest.ts";
import type { Scope } from "../scope.ts";
import { capital, showList } from "../show.ts";
import { type DirectiveRow, directiveRows, rowOf } from "./directives.ts";
import { proseOn } from "./prose.ts";
import { meaningOf, saidBy, type Unsaid } from "./saying.ts";

export interface Fault extends Pick<Finding, "place" | "what" | "todo" | "fixes"> {
  readonly code: "unknown-directive" | "missing-recipe" | "unsayable-value" | "unprinted-recipe";
  /** Where it is less than the code's own. */
  readonly severity?: "warning" | "information";
}

/** All that is wrong with what an entry's directives say; whether a link leads to anything printed is `leadingNowhere`. */
export function faultsIn(house: House, entry: Entry): readonly Fault[] {
  if (entry.kind !== "text") return [];
  return house.recall(entry, "faults of directives", () => {
    const scope = house.scopeOf(entry);
    return entry.lines.flatMap(({ content }, line) => {
      if (content.kind !== "text") return [];
      const found = content.directives.flatMap((directive) => [...faultsOf(house, scope, entry, line, directive)]);
      return [...found, ...unread(entry, line)].sort((one, other) => one.place.start - other.place.start);
    });
  });
}

function* faultsOf(house: House, scope: Scope, entry: Entry, line: number, directive: Directive): Generator<Fault> {
  const row = rowOf(directive);
  if (!row) {
    yield unknown(entry, line, directive);
    return;
  }
  if (isBroken(entry.lines[line]!.text, directive)) {
    yield broken(entry, line, directive.end, row);
    return;
  }
  yield* attributesOf(entry, line, directive, row);
  const meant = meaningOf(house, scope, directive);
  if (!("row" in meant)) yield missing(house, scope, entry, line, directive, meant);
  else if (!row.block) {
    const said = saidBy(house, scope, directive);
    if ("text" in said) return;
    yield {
      code: "unsayable-value",
      place: labelPlace(line, directive),
      what: `The book cannot say this: ${said.because}.`,
      todo: "State it in the recipe, or say something else here.",
    };
  }
}

/** Braces right behind it that did not read as its attributes. */
function isBroken(text: string, { end, attributes }: Pick<Directive, "end" | "attributes">): boolean {
  return attributes.length === 0 && text[end] === "{" && text[end - 1] !== "}";
}

function broken(entry: Entry, line: number, start: number, { example }: DirectiveRow): Fault {
  const { text } = entry.lines[line]!;
  const end = text[start] === "{" ? text.indexOf("}", start) + 1 : 0;
  return {
    code: "unknown-directive",
    place: { line, start, end: end || text.trimEnd().length },
    what:
      end > 0
        ? "What stands in these braces does not read, so it would be printed as it stands."
        : "A directive stands on one line, and this one is not closed where its line ends, so it would be printed as it stands.",
    todo: `Write it as in \`${example}\`.`,
  };
}

/** What looks like a directive of the book's and is none where it stands. */
const almost = /(?<![\\:\p{L}\p{N}])(::?)([a-z][\w-]*)(?=[[{])/giu;

function* unread(entry: Entry, line: number): Generator<Fault> {
  for (const { 0: written, 1: colons, 2: name, index } of proseOn(entry.lines[line]!).matchAll(almost)) {
    const block = colons === "::";
    const words = { text: name!, start: index + colons!.length, end: index + written.length };
    const row = rowOf({ name: words, block });
    const turned = row ?? rowOf({ name: words, block: !block });
    if (!turned) continue;
    const { text } = entry.lines[line]!;
    const read = directiveAt(text, index, block) ?? { end: words.end, attributes: [] };
    const isUnclosed = text[words.end] === "[" && read.end === words.end;
    if (isUnclosed || isBroken(text, read)) yield broken(entry, line, isUnclosed ? index : read.end, turned);
    else if (block) {
      yield {
        code: "unknown-directive",
        place: { line, start: index, end: read.end },
        what: row
          ? `“${written}…” stands in a paragraph, so it would be printed as it stands.`
          : `“${name}” is said within a sentence, with one colon, so it would be printed as it stands.`,
        todo: row ? "Put it on a line of its own." : howOf(turned),
        fixes: () => (row ? [] : [withOneColon(entry, line, index)]),
      };
    }
  }
}

function unknown(entry: Entry, line: number, { name, block, start }: Directive): Fault {
  const turned = rowOf({ name, block: !block });
  const near = nearestOf(
    name.text,
    directiveRows.filter((row) => row.block === block).map((row) => row.name),
  );
  return {
    code: "unknown-directive",
    place: { line, start: name.start, end: name.end },
    what: turned
      ? `“${name.text}” ${block ? "is said within a sentence, with one colon" : "stands on a line of its own, with two colons"}, so nothing would be put here.`
      : `Nothing that a book can say is called “${name.text}”, so it would be printed as it stands.`,
    todo: turned ? howOf(turned) : askFor(near, "Correct the name, or put a backslash before the colon to print it so."),
    fixes: () => (turned && block ? [withOneColon(entry, line, start)] : near.map((other) => changed(entry, { line, ...name }, other))),
  };
}

function howOf({ example }: DirectiveRow): string {
  return `Write it as in \`${example}\`.`;
}

function withOneColon(entry: Entry, line: number, start: number): Fix {
  return { title: "Say it with one colon", safe: false, edits: [{ entry, line, start, end: start + 1, text: "" }] };
}

function changed(entry: Entry, { line, start, end }: Place, other: string, text = other): Fix {
  return { title: `Change to “${other}”`, safe: false, edits: [{ entry, line, start, end, text }] };
}

function missing(house: House, scope: Scope, entry: Entry, line: number, directive: Directive, { at, because }: Unsaid): Fault {
  const value = at === "in" ? directive.attributes.find(({ name }) => name.text === "in")?.value : undefined;
  const place = value ? { line, start: value.start, end: value.end } : labelPlace(line, directive);
  // A name stands there that another could take the place of.
  const isWritten = at === "in" || (directive.name.text !== "pour" && Boolean(directive.label?.text.trim()));
  const near = isWritten ? nearestOf(value?.text.trim() ?? labelOf(directive), recipeNames(house, scope)) : [];
  return {
    code: "missing-recipe",
    place,
    what: because,
    todo: askFor(near, "Name a drink or a prep that is declared, or write its spec."),
    fixes: () => near.map((other) => changed(entry, place, other, value ? other : asLabel(other))),
  };
}

function* recipeNames(house: House, scope: Scope): Generator<string> {
  for (const { name } of house.declarations(scope, "drink")) yield name;
  for (const { name, entry } of house.declarations(scope, "ingredient")) if (entry.kind === "prep") yield name;
}

function* attributesOf(entry: Entry, line: number, directive: Directive, row: DirectiveRow): Generator<Fault> {
  for (const attribute of directive.attributes) {
    const { name, value } = attribute;
    const known = row.attributes.find((one) => one.name === name.text);
    if (!known) yield unknownAttribute(entry, line, attribute, row);
    else if (known.values && !known.values.includes(value?.text ?? "")) {
      const { start, end } = value && value.end > value.start ? value : name;
      const whole = { line, start: name.start, end: value ? Math.max(value.end, name.end) : name.end };
      yield {
        code: "unsayable-value",
        place: { line, start, end },
        what: `“${name.text}” is one of ${showList(known.values)}, so this changes nothing.`,
        todo: "Write one of them.",
        fixes: () => known.values!.map((one) => changed(entry, whole, one, `${name.text}=${one}`)),
      };
    }
  }
  const absent =
    row.block && row.attributes.find(({ name, needed }) => needed && !directive.attributes.some((one) => one.name.text === name));
  if (!absent) return;
  yield {
    code: "unsayable-value",
    place: { line, start: directive.name.start, end: directive.name.end },
    what: `It does not say “${absent.name}”, so nothing can be put here. ${capital(absent.doc)}`,
    todo: howOf(row),
  };
}

function unknownAttribute(entry: Entry, line: number, { name }: Attribute, row: DirectiveRow): Fault {
  const names = row.attributes.map((one) => one.name);
  const near = nearestOf(name.text, names);
  return {
    code: "unsayable-value",
    severity: "warning",
    place: { line, start: name.start, end: name.end },
    what: `“${row.name}” takes no “${name.text}”, so it changes nothing.`,
    todo: askFor(near, names.length > 0 ? `It takes ${showList(names)}.` : "Leave it out."),
    fixes: () => near.map((other) => changed(entry, { line, ...name }, other)),
  };
}

/** Links to recipes that are not printed, as far as `isPrinted` can tell. */
export function* leadingNowhere(house: House, entry: Entry, isPrinted: (recipe: Entry) => boolean): Generator<Fault & { recipe: Entry }> {
  const scope = house.scopeOf(entry);
  for (const { line, directive } of directivesIn(entry)) {
    const meant = meaningOf(house, scope, directive);
    const recipe = "row" in meant && meant.row.name === "see" ? meant.recipe : undefined;
    if (!recipe || isPrinted(recipe)) continue;
    yield {
      code: "unprinted-recipe",
      recipe,
      place: labelPlace(line, directive),
      what: `No chapter prints “${recipe.name!.text}”, so this leads nowhere.`,
      todo: `Print it with \`::spec[${asLabel(recipe.name!.text)}]\`, put its spec in a chapter, or leave the link out.`,
    };
  }
}

function* directivesIn({ lines }: Entry): Generator<{ readonly line: number; readonly directive: Directive }> {
  for (const [line, { content }] of lines.entries()) {
    if (content.kind === "text") for (const directive of content.directives) yield { line, directive };
  }
}

/** What stands between the brackets, without the blanks around it; the directive's name where nothing does. */
function labelPlace(line: number, { label, name }: Directive): Place {
  if (!label?.text.trim()) return { line, start: name.start, end: name.end };
  const start = label.start + label.text.length - label.text.trimStart().length;
  return { line, start, end: start + label.text.trim().length };
}
