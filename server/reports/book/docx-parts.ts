/** Recipes and the parts that a book puts together, as paragraphs and tables of Word. */
import {
  AlignmentType,
  Bookmark,
  BorderStyle,
  type FileChild,
  HeadingLevel,
  InternalHyperlink,
  type IParagraphOptions,
  Paragraph,
  type ParagraphChild,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  TextRun,
  WidthType,
} from "docx";
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import { bound } from "../../house/book/printed-units.ts";
import type { RecipeLine } from "../../house/book/recipe.ts";
import type { Block, Item, Words } from "./blocks.ts";
import { lists, styleIds } from "./docx-style.ts";
import { asides, kindOf, titleOf, unitHeads } from "./recipe-words.ts";

/** What a document keeps count of while it is set. */
export interface Setting {
  readonly book: Book;
  /** The name of the bookmark that stands for an id: Word takes forty letters, digits and underscores. */
  anchor(id: string): string;
  /** The runs as the place that an id means; without one as they are. */
  marked(id: string | undefined, children: ParagraphChild[]): ParagraphChild[];
  /** Each numbered list counts for itself. */
  nextList(): number;
}

export function settingOf(book: Book): Setting {
  const anchors = new Map<string, string>();
  let count = 0;
  const anchor = (id: string) => {
    const name = anchors.get(id) ?? `_${anchors.size + 1}_${id.replace(/[^a-z\d]/g, "_").slice(0, 30)}`;
    anchors.set(id, name);
    return name;
  };
  return {
    book,
    anchor,
    marked: (id, children) => (id ? [new Bookmark({ id: anchor(id), children })] : children),
    nextList: () => ++count,
  };
}

/** The heading that a part of the book starts a page with. */
export function opening(setting: Setting, id: string, title: string): Paragraph {
  return new Paragraph({ heading: HeadingLevel.HEADING_1, pageBreakBefore: true, children: setting.marked(id, [new TextRun(title)]) });
}

export const headings = [
  HeadingLevel.HEADING_1,
  HeadingLevel.HEADING_2,
  HeadingLevel.HEADING_3,
  HeadingLevel.HEADING_4,
  HeadingLevel.HEADING_5,
  HeadingLevel.HEADING_6,
];

/** `level` is that of the heading around. */
export function blockParts(setting: Setting, blocks: readonly Block[], level: number): FileChild[] {
  return blocks.flatMap((block, index) =>
    block.kind === "paragraph" && blocks[index - 1]?.kind === "paragraph"
      ? [said(setting, block.words, { style: styleIds.body })]
      : partsOf(setting, block, level),
  );
}

function partsOf(setting: Setting, block: Block, level: number): FileChild[] {
  switch (block.kind) {
    case "heading":
      return [new Paragraph({ heading: headings[Math.min(5, level)]!, text: block.text })];
    case "paragraph":
      return [said(setting, block.words, { style: styleIds.first })];
    case "contents":
      return contents(setting, block.items, 0);
    case "list":
      return block.items.map(({ words }) =>
        said(setting, words, { style: styleIds.list, numbering: { reference: lists.bullets, level: 0 } }),
      );
    case "index":
      return block.entries.map(({ term, words }) => {
        const references = words.flatMap((one, index) => [...(index > 0 ? [new TextRun(", ")] : []), ...runs(setting, one)]);
        const between = words.length > 0 ? [new TextRun("  ")] : [];
        return new Paragraph({
          style: styleIds.indexEntry,
          children: [new TextRun({ text: bound(term), italics: true }), ...between, ...references],
        });
      });
    case "table":
      return [
        new Paragraph({ style: styleIds.caption, text: block.caption }),
        tableOf(
          block.columns.map(({ head, isFigure }) => ({
            children: [new TextRun(head)],
            ...(isFigure && { isFigure }),
            ...(head.length <= 3 && { width: "narrow" as const }),
          })),
          block.rows.map((row) => row.map((words) => runs(setting, words))),
        ),
      ];
    case "recipe":
      return recipeParts(setting, block.printed);
  }
}

function contents(setting: Setting, items: readonly Item[], depth: number): Paragraph[] {
  return items.flatMap(({ words, items: below }) => [
    said(setting, words, { style: depth === 0 ? styleIds.contents1 : styleIds.contents2 }),
    ...contents(setting, below ?? [], depth + 1),
  ]);
}

export function recipeParts(setting: Setting, printed: PrintedRecipe): FileChild[] {
  const { recipe, id, level, isNamed } = printed;
  const { headnote, facts, ingredients, method } = recipe;
  const paragraph = (style: string, text: string) => new Paragraph({ style, text: bound(text) });
  const list = method.form === "steps" ? setting.nextList() : 0;
  return [
    ...(isNamed
      ? []
      : [
          new Paragraph({
            style: styleIds.recipeName,
            outlineLevel: level - 1,
            children: setting.marked(id, [new TextRun(titleOf(printed))]),
          }),
        ]),
    paragraph(styleIds.recipeKind, kindOf(printed)),
    ...headnote.map((text) => paragraph(styleIds.headnote, text)),
    ...(ingredients.length > 0 ? [ingredientTable(setting, printed)] : []),
    ...method.texts.map((text) =>
      method.form === "steps"
        ? new Paragraph({ style: styleIds.method, text: bound(text), numbering: { reference: lists.numbers, level: 0, instance: list } })
        : paragraph(styleIds.method, text),
    ),
    ...facts.map(({ label, text }) => labelled(styleIds.fact, label, text)),
    ...asides(setting.book, recipe).map(({ label, text }, index, { length }) => labelled(styleIds.note, label, text, index < length - 1)),
  ];
}

function labelled(style: string, label: string, text: string, keepNext?: boolean): Paragraph {
  const head = label ? [new TextRun({ text: label, smallCaps: true }), new TextRun("  ")] : [];
  return new Paragraph({ style, ...(keepNext && { keepNext }), children: [...head, new TextRun(bound(text))] });
}

const bare = { style: BorderStyle.NONE, size: 0, color: "auto" };
const noBorders = { top: bare, bottom: bare, left: bare, right: bare, insideHorizontal: bare, insideVertical: bare };
/** Twentieths of a point: the width of the text on A4 with its margins. */
const textWidth = 9000;
const leastAmountWidth = 1350;
/** Of a sign in the text's size: practice, no source. */
const signWidths = { serif: 125, sans: 150 } as const;

function ingredientTable(setting: Setting, { recipe }: PrintedRecipe): Table {
  const heads = unitHeads(setting.book.style, recipe.ingredients);
  const all = recipe.ingredients.flatMap((line) => [line, ...line.alternatives]);
  const longest = (index: number) => Math.max(...all.map(({ amounts }) => (amounts.length === heads.length ? amounts[index]!.length : 0)));
  const amountWidths = heads.map((_, index) => Math.max(leastAmountWidth, signWidths[setting.book.style.typeface] * longest(index)));
  const widths = [...amountWidths, textWidth - amountWidths.reduce((sum, width) => sum + width, 0)];
  const cell = (index: number, style: string, children: ParagraphChild[], columnSpan = 1) => {
    const isAmount = index < heads.length;
    const alignment = isAmount ? AlignmentType.RIGHT : AlignmentType.LEFT;
    const size = widths.slice(index, index + columnSpan).reduce((sum, width) => sum + width, 0);
    return new TableCell({
      columnSpan,
      width: { size, type: WidthType.DXA },
      margins: { left: isAmount ? 0 : 200 },
      // Not every program takes what a style says of a paragraph in a table.
      children: [new Paragraph({ style, alignment, keepNext: true, children })],
    });
  };
  const row = (line: Omit<RecipeLine, "alternatives">, isOther: boolean) => {
    const printed = line.recipe && setting.book.printed(line.recipe);
    const words: Words = [
      isOther ? "or " : "",
      printed ? { text: line.name, to: printed.id } : line.name,
      line.note ? `, ${line.note}` : "",
    ];
    // One amount for two systems stands once, across both.
    const amounts = line.amounts.length === heads.length ? line.amounts : [line.amounts[0] ?? ""];
    return new TableRow({
      cantSplit: true,
      children: [
        ...amounts.map((text, index) => cell(index, styleIds.ingredient, [new TextRun(bound(text))], heads.length / amounts.length)),
        cell(heads.length, styleIds.ingredient, runs(setting, words)),
      ],
    });
  };
  return new Table({
    layout: TableLayoutType.FIXED,
    width: { size: textWidth, type: WidthType.DXA },
    columnWidths: widths,
    borders: noBorders,
    rows: [
      new TableRow({
        tableHeader: true,
        cantSplit: true,
        children: [...heads, "Ingredient"].map((text, index) => cell(index, styleIds.ingredientHead, [new TextRun(text)])),
      }),
      ...recipe.ingredients.flatMap((line) => [row(line, false), ...line.alternatives.map((other) => row(other, true))]),
    ],
  });
}

const rule = { style: BorderStyle.SINGLE, size: 4, color: "CFCBC1" };

export interface Head {
  readonly children: ParagraphChild[];
  readonly isFigure?: boolean;
  readonly width?: "narrow";
}

/** A table over the whole width, its head repeated on every page. */
export function tableOf(heads: readonly Head[], rows: readonly (readonly ParagraphChild[][])[]): Table {
  const widths = widthsOf(heads);
  const cell = (index: number, style: string, children: ParagraphChild[]) =>
    new TableCell({
      width: { size: widths[index]!, type: WidthType.DXA },
      margins: { top: 40, bottom: 40, right: 100 },
      children: [new Paragraph({ style, alignment: heads[index]?.isFigure ? AlignmentType.RIGHT : AlignmentType.LEFT, children })],
    });
  return new Table({
    layout: TableLayoutType.FIXED,
    width: { size: textWidth, type: WidthType.DXA },
    columnWidths: widths,
    borders: { ...noBorders, bottom: rule, insideHorizontal: rule },
    rows: [
      new TableRow({
        tableHeader: true,
        cantSplit: true,
        children: heads.map(({ children }, index) => cell(index, styleIds.tableHead, children)),
      }),
      ...rows.map(
        (row) => new TableRow({ cantSplit: true, children: heads.map((_, index) => cell(index, styleIds.tableText, row[index] ?? [])) }),
      ),
    ],
  });
}

/** Names are wide, a column of short numbers is narrow, the others share what is left. */
function widthsOf(heads: readonly Head[]): number[] {
  const fixed = heads.map(({ isFigure, width }, index): number => (index === 0 ? 2600 : isFigure && width === "narrow" ? 650 : 0));
  const others = fixed.filter((width) => width === 0).length;
  const left = textWidth - fixed.reduce((sum, width) => sum + width, 0);
  // Without another column the first has it all.
  return others > 0
    ? fixed.map((width) => width || Math.floor(left / others))
    : fixed.map((width, index) => (index === 0 ? width + left : width));
}

function said(setting: Setting, words: Words, options: IParagraphOptions): Paragraph {
  return new Paragraph({ ...options, children: runs(setting, words) });
}

function runs(setting: Setting, words: Words): ParagraphChild[] {
  return words
    .filter((one) => one !== "")
    .map((one) =>
      typeof one === "string"
        ? new TextRun(bound(one))
        : new InternalHyperlink({ anchor: setting.anchor(one.to), children: [new TextRun(one.text)] }),
    );
}
