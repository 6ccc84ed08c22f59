/** Every place in an entry where something declared is called by a name, and which declaration that is. */
import type { Content, Directive, Entry, FieldLine, Name, Words } from "../../grammar/tree.ts";
import { rowOf } from "../house/book/directives.ts";
import { classOf } from "../house/declarations.ts";
import type { Place } from "../house/document.ts";
import { garnishIn } from "../house/garnish.ts";
import type { House } from "../house/house.ts";
import { menuEntryOf } from "../house/menu.ts";
import { iceNameIn } from "../house/method.ts";
import type { NameClass } from "../house/names.ts";
import type { Declaration, Scope } from "../house/scope.ts";
import { type Cursor, holds } from "./place.ts";

export interface Mention {
  /** The name alone, with its quotation marks where it has them. */
  readonly place: Place;
  readonly text: string;
  readonly found: Declaration;
}

/** The fields whose values name something declared, and what. One row each. */
export const namedIn: Readonly<Record<string, readonly NameClass[]>> = {
  family: ["family"],
  from: ["drink"],
  glass: ["glass"],
  ice: ["ice"],
  garnish: ["ingredient"],
  rim: ["ingredient"],
};

/** In the order written. A name that nobody declared is no mention. */
export function mentionsIn(house: House, entry: Entry): readonly Mention[] {
  return house.recall(entry, "mentions", () => {
    const scope = house.scopeOf(entry);
    return entry.lines.flatMap(({ content }, line) =>
      callsOn(house, scope, content).map(({ start, end, text, found }) => ({ place: { line, start, end }, text, found })),
    );
  });
}

type Call = Words & { readonly found: Declaration };

function callsOn(house: House, scope: Scope, content: Content): Call[] {
  switch (content.kind) {
    case "pour":
    case "or":
    case "without":
      return poured(house, scope, content.pour?.name);
    case "swap": {
      const reading = content.readings.find(({ out }) => poured(house, scope, out.name).length > 0) ?? content.readings[0];
      return reading ? [reading.out, reading.in].flatMap(({ name }) => poured(house, scope, name)) : [];
    }
    case "menu": {
      const name = menuEntryOf(house, scope, content)?.name;
      const found = name && house.lookup(scope, "drink", name.text)[0];
      return name && found ? [{ ...withQuotes(name), text: name.text, found }] : [];
    }
    case "field":
      return inField(house, scope, content);
    case "text":
      return content.directives.flatMap((directive) => inDirective(house, scope, directive));
    default:
      return [];
  }
}

function poured(house: House, scope: Scope, name: Name | undefined): Call[] {
  if (!name) return [];
  const { found, text, start, end } = house.resolve(scope, ["ingredient", "drink"], name);
  return found ? [{ text, start: name.quoted?.start ?? start, end, found }] : [];
}

/** What a directive's label names, and the recipe that it says a pour of. */
function inDirective(house: House, scope: Scope, directive: Directive): Call[] {
  const row = rowOf(directive);
  const within = directive.attributes.find(({ name }) => name.text === "in")?.value;
  return [
    ...(directive.label && row ? called(house, scope, row.of, directive.label) : []),
    ...(within && row ? called(house, scope, ["drink", "ingredient"], within) : []),
  ].sort((one, other) => one.start - other.start);
}

function called(house: House, scope: Scope, classes: readonly NameClass[], { text, start }: Words): Call[] {
  const name = text.trim();
  const found = classes.map((nameClass) => house.find(scope, nameClass, name)).find(Boolean);
  const from = start + text.indexOf(name);
  return name && found ? [{ text: name, start: from, end: from + name.length, found }] : [];
}

function withQuotes({ start, end, quoted }: Name) {
  return { start: quoted?.start ?? start, end: quoted?.end ?? end };
}

/** A garnish's and a rim's items, the ice of a method's steps, or what the whole value, else its first part, names. */
function inField(house: House, scope: Scope, field: FieldLine): Call[] {
  const name = field.name.text.toLowerCase();
  if (name === "garnish" || name === "rim") {
    return field.items.flatMap((item) => {
      const found = garnishIn(house, scope, item).ingredient?.resolution;
      return found?.found ? [{ text: found.text, start: found.start, end: found.end, found: found.found }] : [];
    });
  }
  if (name === "method") return field.items.flatMap((item) => iceNameIn(house, scope, item) ?? []);
  for (const nameClass of namedIn[name] ?? []) {
    for (const words of [field.value, field.items[0]?.parts[0]]) {
      const found = words && house.lookup(scope, nameClass, words.text)[0];
      if (found) return [{ text: words.text, start: words.start, end: words.end, found }];
    }
  }
  return [];
}

/** What the cursor calls by name: a mention, or a declaration's own head or `aka`. */
export function meantAt(house: House, cursor: Cursor): Mention | undefined {
  const { entry, line, column, content } = cursor;
  const own = ownNames(entry).find(({ place }) => place.line === line && holds(place, column));
  return own ?? (content.kind === "prose" ? undefined : mentionAt(house, cursor));
}

/** What the cursor calls by name; absent where it is on no name, or on one that nobody declared. */
export function mentionAt(house: House, { entry, line, column }: Cursor): Mention | undefined {
  return mentionsIn(house, entry).find(({ place }) => place.line === line && holds(place, column));
}

/** The names that an entry declares, where they are written: its head, then each `aka`. */
export function ownNames(entry: Entry): Mention[] {
  const nameClass = classOf(entry);
  if (!nameClass) return [];
  return entry.lines.flatMap(({ content }, line): Mention[] => {
    const declared = (text: string, alias: boolean): Declaration => ({ entry, nameClass, name: text, alias });
    if (content.kind === "entry" && content.name?.text) {
      return [{ place: { line, ...withQuotes(content.name) }, text: content.name.text, found: declared(content.name.text, false) }];
    }
    if (content.kind !== "field" || content.name.text.toLowerCase() !== "aka") return [];
    return content.items.map(({ text, start, end }) => ({ place: { line, start, end }, text, found: declared(text, true) }));
  });
}

/** A mention and the entry that it stands in. */
export interface Mentioned {
  readonly entry: Entry;
  readonly mention: Mention;
}

/** Every mention of an entry in the texts at hand, in the order of their files. */
export function* mentionsOf(house: House, of: Entry): Generator<Mentioned> {
  for (const { tree } of house.documents()) {
    for (const entry of tree.entries) {
      for (const mention of mentionsIn(house, entry)) {
        if (mention.found.entry === of) yield { entry, mention };
      }
    }
  }
}
