/**
 * The TextMate grammar: colours from the first moment, before the server is up. It is made from the
 * tables of fields and units, and printed to `mutchkin.tmLanguage.json` by `npm run docs`.
 *
 * It sees one line at a time and knows no names: where a name ends and what it is, the server decides.
 * Every pattern costs time in proportion to the line's length; a test holds it to that.
 */
import { entryKinds, fields, type Shape } from "./fields.ts";
import { units } from "./units.ts";

/** One rule of a TextMate grammar, as far as rules are used here. */
export interface TextMateRule {
  readonly include?: string;
  readonly name?: string;
  readonly contentName?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly while?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly endCaptures?: Captures;
  readonly patterns?: readonly TextMateRule[];
}
type Captures = Readonly<Record<string, { readonly name?: string; readonly patterns?: readonly TextMateRule[] }>>;

export interface TextMateGrammar {
  readonly information_for_contributors: readonly string[];
  readonly name: string;
  readonly scopeName: string;
  readonly fileTypes: readonly string[];
  readonly patterns: readonly TextMateRule[];
  readonly repository: Readonly<Record<string, TextMateRule>>;
}

/** The whole grammar, ready to be printed as JSON. */
export function textMateGrammar(): TextMateGrammar {
  return {
    information_for_contributors: ["Made by `npm run docs` from grammar/textmate.ts and the tables: change those, not this file."],
    name: "Mutchkin",
    scopeName: "source.mutchkin",
    fileTypes: ["drink"],
    patterns: includes("comment-line", "prose", "entry", ...looks.map(fieldRule), "unknown-field", "margin-pour", "margin", ...bodyLines),
    repository: { ...lineRules(), ...valueRules(), ...partRules() },
  };
}

/** How the value of a field is coloured: a coarser thing than its shape. */
type Look = "prose" | "text" | "reference" | "words" | "figures" | "method";

const lookOf: Readonly<Record<Shape, Look>> = {
  prose: "prose",
  text: "text",
  name: "reference",
  words: "words",
  choice: "words",
  items: "words",
  yesno: "words",
  severity: "words",
  steps: "method",
  quantity: "figures",
  window: "figures",
  percent: "figures",
  temperature: "figures",
  price: "figures",
  content: "figures",
  date: "figures",
};
const looks = ["text", "reference", "words", "figures", "method"] as const;
const fieldRule = (look: Look) => `${look}-field`;
const bodyLines = ["menu-item", "section", "without", "swap", "or", "pour"];

/** What can be said after a pour's comma and changes a number; anything else there is a note. */
const modifiers = [
  "frozen",
  "chilled",
  "hot",
  "optional",
  "muddled",
  "floated",
  "after",
  "to rim",
  "to taste",
  "discarded",
  "juiced",
  "strained out",
  "batched",
];

// Pieces of patterns. `\s` takes no-break and thin spaces too.
/** Where a line starts; in a list or a quote of Markdown, behind what those put before it. */
const lineStart = "(?:^|\\G)";
const wordEnd = "(?![\\p{L}\\p{N}])";
const valueEnd = "(?=\\s*$|\\s+#(?:\\s|$))";
const plainNumber = "(?:\\d+(?:[.,]\\d+)*|\\.\\d+)";
const vulgarFraction = "[¼½¾⅐-⅞]";
const fraction = `(?:(?:\\d+[\\s-])?\\d+[/⁄]\\d+|(?:\\d+\\s?)?${vulgarFraction})`;
const oneNumber = `[-−]?(?:${fraction}|${plainNumber})`;
/** A number or a range, as one piece. */
const numeral = `${oneNumber}(?:(?:\\s?[-–—]\\s?|\\s+to\\s+)${oneNumber})?`;
const unit = `(?:%|${anyOf(units.flatMap(({ id, also }) => [id, ...also]).filter((word) => word !== "%"))}${wordEnd}\\.?)`;
/** Three groups: about, numeral, unit. */
const quantity = `(?:(about)\\s+)?(${numeral})(?:\\s*(${unit}))?(?![\\p{L}\\p{N}])`;
/** What stands before an ingredient's name. Five groups: lead, about, numeral, unit, of. */
const pourHead = `(?:(top(?:\\s+to)?|rinse|some|to)(?=\\s|$)\\s*)?(?:${quantity}(?:\\s+(of)(?=\\s))?)?\\s*`;
const preposition = `(?:with|over|to|at|for|on|until)${wordEnd}`;
/** Not inside a number. */
const comma = "(?:(?<!\\d),|,(?!\\d))";

/** One rule for each kind of line. */
function lineRules(): Record<string, TextMateRule> {
  return {
    "comment-line": commentFrom(`${lineStart}\\s*(#)`),
    prose: {
      begin: `(?i)${lineStart}(\\s*)(${fieldNames("prose")})(:)(?=\\s|$)`,
      // Deeper than the field's own line; a blank line inside is no end.
      while: `${lineStart}(?=\\1\\s+\\S|\\s*$)`,
      beginCaptures: captures("", scopes.field, scopes.colon),
      contentName: "string.unquoted.prose.mutchkin",
      patterns: [{ match: "(?i)(?<=:)\\G\\s*(none)\\s*$", captures: captures(scopes.none) }],
    },
    entry: line(`(?i)${lineStart}(${anyOf(entryKinds)})(?=\\s|$)\\s*`, [scopes.entry], [...includes("comment"), ...name(scopes.declared)]),
    ...Object.fromEntries(looks.map((look) => [fieldRule(look), fieldLine(look)])),
    // Nothing is said about its name: it may be a slip, or a pour written with its name first.
    "unknown-field": line(
      `${lineStart}\\s+(\\p{L}+(?:\\s+\\p{L}+){0,2})(:)(?=\\s|$)\\s*`,
      ["meta.field.unknown.mutchkin", scopes.colon],
      includes("comment", "quantity", "separator"),
    ),
    "margin-pour": pourLine(`${lineStart}(?=(?:about\\s+)?${numeral})`),
    margin: line(`${lineStart}(?=\\S)`, [], includes("comment")),
    "menu-item": line(`${lineStart}\\s+(-)(?=\\s|$)\\s*`, [scopes.dash], [...includes("comment", "price"), ...name(scopes.reference)]),
    section: line(`(?i)${lineStart}\\s+(section)(?=\\s|$)\\s*`, [scopes.keyword], [...includes("comment"), words("\\S+", scopes.section)]),
    without: pourLine(`${lineStart}\\s+(without)(?=\\s|$)(?:\\s+(all)(?=\\s))?\\s*`, [scopes.keyword, scopes.keyword]),
    swap: pourLine(`${lineStart}\\s+(swap)(?=\\s|$)\\s*`, [scopes.keyword], [pourLine("(?<=\\s)(for)(?=\\s)\\s*", [scopes.keyword])]),
    or: pourLine(`${lineStart}\\s+(or)(?=\\s|$)\\s*`, [scopes.keyword]),
    pour: pourLine(`${lineStart}\\s+(?=\\S)`),
  };
}

/** What stands after a field's colon, by look. */
function valueRules(): Record<string, TextMateRule> {
  return {
    text: { patterns: [...includes("none", "comment"), words("\\S+", scopes.text)] },
    reference: { patterns: [...includes("none", "comment"), ...name(scopes.reference)] },
    words: { patterns: [...includes("none", "comment", "qualifiers", "quantity", "separator"), words("[^\\s,;]+", scopes.value)] },
    figures: {
      patterns: [
        ...includes("none", "comment", "date", "quantity"),
        { match: `(?i)(?<![\\p{L}\\p{N}])(?:per|as|to)${wordEnd}`, name: scopes.operator },
        ...includes("separator"),
        words("[^\\s,;]+", scopes.value),
      ],
    },
    method: {
      patterns: [
        ...includes("none", "comment"),
        {
          match: `(?i)(?:\\G|(?<=;))\\s*((?!${preposition})\\p{L}[\\p{L}-]*(?:\\s+(?!${preposition})\\p{L}[\\p{L}-]*)*)`,
          captures: captures("support.function.technique.mutchkin"),
        },
        ...includes("quantity"),
        { match: `(?i)(?<![\\p{L}\\p{N}])${preposition}`, name: scopes.operator },
        ...includes("separator"),
        words("[^\\s,;]+", scopes.value),
      ],
    },
  };
}

/** What can stand inside a line of several kinds. */
function partRules(): Record<string, TextMateRule> {
  const money = "(?:(\\p{Sc}|[A-Z]{3})\\s*)?(\\d+(?:[.,]\\d{1,2})?)(?:\\s*(\\p{Sc}|[A-Z]{3}(?![\\p{L}])))?";
  const moneyScopes = [scopes.unit, "constant.numeric.price.mutchkin", scopes.unit, scopes.text];
  return {
    comment: commentFrom("(?<=\\s)(#)(?=\\s|$)"),
    none: { match: `(?i)\\Gnone${valueEnd}`, name: scopes.none },
    date: { match: "(?<!\\d)\\d{4}-\\d{2}-\\d{2}(?!\\d)", name: "constant.numeric.date.mutchkin" },
    quantity: { match: `(?i)(?<![\\p{L}\\p{N}.,])${quantity}`, captures: captures(...scopesOfQuantity) },
    separator: { match: `;|/|${comma}`, name: "punctuation.separator.mutchkin" },
    // From the comma on: words that change a number, temperatures, and notes.
    qualifiers: {
      begin: comma,
      end: "(?=;)|$",
      beginCaptures: { "0": { name: "punctuation.separator.mutchkin" } },
      patterns: [
        ...includes("comment"),
        { match: `(?i)(?<=,)\\s*(${anyOf(modifiers)})(?=\\s*(?:[,;]|$)|\\s+#)`, captures: captures("storage.modifier.mutchkin") },
        { match: "(?i)(?<=,)\\s*(at)(?=\\s+[-−]?\\d)", captures: captures("storage.modifier.mutchkin") },
        ...includes("quantity", "separator"),
        words("[^\\s,;]+", "string.unquoted.note.mutchkin"),
      ],
    },
    // `gin 50 ml`: a pour written with its name first.
    "turned-quantity": {
      match: `(?i)(?<=\\s)(${numeral})\\s*(${unit})(?=\\s*(?:,|$)|\\s+#\\s)`,
      captures: captures(scopes.number, scopes.unit),
    },
    // The last thing of a menu line, a label only where there are several prices.
    price: {
      patterns: [
        { match: `(?<=\\s)${money}(?=\\s*/|\\s*$|\\s+#\\s)`, captures: captures(...moneyScopes) },
        { match: `(?<=\\s)${money}\\s+(\\p{L}+)(?=\\s*/)`, captures: captures(...moneyScopes) },
        { match: `(?<=/\\s)${money}\\s+(\\p{L}+)(?=\\s*/|\\s*$|\\s+#\\s)`, captures: captures(...moneyScopes) },
        { match: "(?<=\\s)/(?=\\s+(?:\\p{Sc}|[A-Z]{3}\\s)?\\d)", name: "punctuation.separator.mutchkin" },
      ],
    },
  };
}

/** Scopes that the themes of VS Code know by their first words. */
const scopes = {
  entry: "keyword.control.entry.mutchkin",
  keyword: "keyword.control.mutchkin",
  operator: "keyword.other.mutchkin",
  declared: "entity.name.type.declared.mutchkin",
  reference: "entity.name.type.reference.mutchkin",
  ingredient: "variable.other.ingredient.mutchkin",
  field: "entity.name.tag.field.mutchkin",
  colon: "punctuation.separator.key-value.mutchkin",
  number: "constant.numeric.quantity.mutchkin",
  unit: "keyword.other.unit.mutchkin",
  none: "constant.language.none.mutchkin",
  text: "string.unquoted.text.mutchkin",
  value: "string.unquoted.value.mutchkin",
  section: "markup.heading.section.mutchkin",
  dash: "punctuation.definition.list.begin.mutchkin",
};
const scopesOfQuantity = [scopes.operator, scopes.number, scopes.unit];
const scopesOfPourHead = [scopes.operator, ...scopesOfQuantity, scopes.operator];

function fieldLine(look: (typeof looks)[number]): TextMateRule {
  return line(`(?i)${lineStart}\\s*(${fieldNames(look)})(:)(?=\\s|$)\\s*`, [scopes.field, scopes.colon], includes(look));
}

/** A line that says so much of this; `first` are rules that come before those of a pour. */
function pourLine(begin: string, groups: readonly string[] = [], first: readonly TextMateRule[] = []): TextMateRule {
  const rest = [...includes("comment", "qualifiers", "turned-quantity"), ...name(scopes.ingredient)];
  return line(`(?i)${begin}${pourHead}`, [...groups, ...scopesOfPourHead], [...first, ...rest]);
}

/** A rule for the rest of the line. */
function line(begin: string, groups: readonly string[], patterns: readonly TextMateRule[]): TextMateRule {
  return { begin, end: "$", ...(groups.length > 0 && { beginCaptures: captures(...groups) }), patterns };
}

/** A name, word by word, in quotes or not. A comma inside a number is part of it. */
function name(scope: string): readonly TextMateRule[] {
  const declares = scope !== scopes.ingredient;
  return [
    { match: '\\G["“”][^"“”]*(?:["“”]|$)', name: `${scope} string.quoted.name.mutchkin` },
    words(declares ? "\\S+" : "(?:[^\\s,]|(?<=\\d),(?=\\d))+", scope),
  ];
}

function words(match: string, scope: string): TextMateRule {
  return { match, name: scope };
}

function commentFrom(begin: string): TextMateRule {
  return {
    name: "comment.line.number-sign.mutchkin",
    begin,
    end: "$",
    beginCaptures: captures("punctuation.definition.comment.mutchkin"),
    patterns: [
      {
        match: "\\G\\s*(allow)\\s+([\\p{L}\\p{N}-]+)",
        captures: captures("keyword.other.allow.mutchkin", "variable.other.constant.rule.mutchkin"),
      },
    ],
  };
}

function fieldNames(look: Look): string {
  return anyOf([...new Set(fields.filter(({ shape }) => lookOf[shape] === look).map((field) => field.name))]);
}

/** The longest first, so that `oz wt` is not read as `oz`. */
function anyOf(spellings: readonly string[]): string {
  const longestFirst = [...spellings].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return `(?:${longestFirst.map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replaceAll(" ", "\\s+")).join("|")})`;
}

function includes(...names: readonly string[]): readonly TextMateRule[] {
  return names.map((rule) => ({ include: `#${rule}` }));
}

/** Names the groups of a pattern in order; a group named "" is left alone. */
function captures(...names: readonly string[]): Captures {
  return Object.fromEntries(names.flatMap((scope, index) => (scope ? [[String(index + 1), { name: scope }]] : [])));
}
