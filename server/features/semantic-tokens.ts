/**
 * What names mean, as colours: what only the house knows. Keywords, numbers, notes, prose and comments are
 * coloured by the grammar already and get no token, but in an editor that has none.
 *
 * A name that nobody declared looks like the text that it is; a rule says so in words.
 */
import type { Range, SemanticTokens, SemanticTokensEdit } from "vscode-languageserver-types";
import { findField } from "../../grammar/fields.ts";
import type { Content, Entry, Name, Span } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { menuEntryOf } from "../house/menu.ts";
import type { Scope } from "../house/scope.ts";
import { type Mention, mentionsIn, namedIn, ownNames } from "./mentions.ts";
import { syntaxTokens, syntaxTypes } from "./syntax-tokens.ts";

/** What each kind of entry looks like, by the types that every editor's theme knows. One row each. */
const typeOfKind: Readonly<Partial<Record<Entry["kind"], string>>> = {
  stock: "variable", // bought
  prep: "function", // made here
  drink: "class",
  family: "interface",
  glass: "struct",
  ice: "struct",
  menu: "namespace",
  house: "namespace",
};
/** A name that nobody declared. */
const unknownType = "string";

/** What names can be. */
export const nameTypes: readonly string[] = [...new Set([...Object.values(typeOfKind), unknownType])];
export const tokenTypes: readonly string[] = [...nameTypes, ...syntaxTypes];
/** Where it is declared; that only the built-in larder declares it. */
export const tokenModifiers = ["declaration", "defaultLibrary"] as const;

/** In an entry's own lines. */
interface Token extends Span {
  readonly line: number;
  readonly type: number;
  readonly modifiers: number;
}

/**
 * The tokens of a text, or of the entries that a range touches, as the protocol packs them; of names alone,
 * or with `syntax` of all that is coloured.
 */
export function semanticTokens(house: House, document: SpecDocument, range?: Range, syntax = false): number[] {
  const { entries, starts } = document.tree;
  const data: number[] = [];
  let line = 0;
  let character = 0;
  for (const [index, entry] of entries.entries()) {
    const start = starts[index]!;
    if (range && (start > range.end.line || start + entry.lines.length <= range.start.line)) continue;
    const isQuoted = Boolean(document.margins?.[start]);
    for (const token of syntax
      ? allTokensOf(house, entry)
      : isQuoted
        ? [...headOf(entry), ...tokensOf(house, entry)]
        : tokensOf(house, entry)) {
      const at = start + token.line;
      // Packed as they are, nobody after this can move them.
      const from = token.start + (document.margins?.[at]?.length ?? 0);
      data.push(at - line, at === line ? from - character : from, token.end - token.start, token.type, token.modifiers);
      [line, character] = [at, from];
    }
  }
  return data;
}

/** The edit that makes the new tokens of the old ones; none where they are the same. */
export function tokenEdits(before: SemanticTokens["data"], after: SemanticTokens["data"]): SemanticTokensEdit[] {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  let end = 0;
  while (end < shorter - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  const deleteCount = before.length - start - end;
  const data = after.slice(start, after.length - end);
  return deleteCount > 0 || data.length > 0 ? [{ start, deleteCount, data }] : [];
}

function tokensOf(house: House, entry: Entry): readonly Token[] {
  return house.recall(entry, "tokens", () => {
    const scope = house.scopeOf(entry);
    const known = mentionsIn(house, entry);
    const isKnown = ({ start, end }: Span, line: number) =>
      known.some(({ place }) => place.line === line && place.start < end && start < place.end);
    const unknown = isComputed(entry)
      ? entry.lines.flatMap(({ content }, line): Token[] =>
          calledForOn(house, scope, content)
            .filter((span) => !isKnown(span, line))
            .map(({ start, end }) => ({ line, start, end, type: tokenTypes.indexOf(unknownType), modifiers: 0 })),
        )
      : [];
    const tokens = [
      ...ownNames(entry).map((mention) => tokenOf(house, mention, "declaration")),
      ...known.map((mention) => tokenOf(house, mention)),
      ...unknown,
    ];
    return tokens.filter(({ start, end }) => end > start).sort(byPlace);
  });
}

/** Behind what the Markdown around it puts in front of its lines the grammar takes an entry's first word for a pour. */
function headOf({ lines: [head] }: Entry): Token[] {
  if (head?.content.kind !== "entry" || !head.content.entry) return [];
  const { start, end } = head.content.word;
  return [{ line: 0, start, end, type: tokenTypes.indexOf("keyword"), modifiers: 0 }];
}

/** With the text's own parts around the names, and between them. */
function allTokensOf(house: House, entry: Entry): readonly Token[] {
  return house.recall(entry, "all tokens", () => {
    const names = tokensOf(house, entry);
    const parts = syntaxTokens(entry)
      .filter((part) => !names.some((name) => name.line === part.line && name.start < part.end && part.start < name.end))
      .map(({ line, start, end, type }): Token => ({ line, start, end, type: tokenTypes.indexOf(type), modifiers: 0 }));
    const inOrder = [...names, ...parts].sort(byPlace);
    return inOrder.filter(({ line, start, end }, index) => {
      const before = inOrder[index - 1];
      return end > start && (before?.line !== line || before.end <= start);
    });
  });
}

function byPlace(one: Token, other: Token): number {
  return one.line - other.line || one.start - other.start;
}

/** In what is computed nowhere a name that means nothing is no slip. */
function isComputed({ kind }: Entry): boolean {
  return kind !== "unknown" && kind !== "preamble";
}

function tokenOf(house: House, { place, found }: Mention, ...words: (typeof tokenModifiers)[number][]): Token {
  const { line, start, end } = place;
  if (house.isLarder(found.entry)) words.push("defaultLibrary");
  const modifiers = words.reduce((bits, word) => bits | (1 << tokenModifiers.indexOf(word)), 0);
  return { line, start, end, type: tokenTypes.indexOf(typeOfKind[found.entry.kind] ?? unknownType), modifiers };
}

/** Where a name is called for, as far as it reads, whether anything is declared of it or not. */
function calledForOn(house: House, scope: Scope, content: Content): readonly Span[] {
  const poured = (name: Name | undefined): Span[] => {
    if (!name) return [];
    const { start, end } = house.resolve(scope, ["ingredient", "drink"], name);
    return [{ start: name.quoted?.start ?? start, end }];
  };
  switch (content.kind) {
    case "pour":
    case "or":
    case "without":
      return poured(content.pour?.name);
    case "swap": {
      const [reading] = content.readings;
      return reading ? [...poured(reading.out.name), ...poured(reading.in.name)] : [];
    }
    case "menu": {
      // Where nobody knows the drink, its last number is rather a price.
      const name = menuEntryOf(house, scope, content)?.name ?? content.priced?.name ?? content.whole;
      return name ? [{ start: name.quoted?.start ?? name.start, end: name.end }] : [];
    }
    case "field": {
      const classes = namedIn[content.name.text.toLowerCase()];
      // A garnish may be said in words of its own.
      if (!classes || classes.includes("ingredient")) return [];
      const isWhole = findField(content.name.text)?.shape === "name";
      const name = isWhole ? content.value : content.items[0]?.parts[0];
      return name && name.text.toLowerCase() !== "none" ? [name] : [];
    }
    default:
      return [];
  }
}
