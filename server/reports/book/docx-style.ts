/** The named styles of a manuscript in Word: what a publisher's designer maps to their own. */
import { AlignmentType, type IParagraphStyleOptions, type IStylesOptions, LevelFormat, LineRuleType } from "docx";
import type { BookStyle } from "../../house/book/style.ts";

const faces: Readonly<Record<BookStyle["typeface"], string>> = { serif: "Palatino Linotype", sans: "Segoe UI" };

/** Twentieths of a point. */
const pt = (points: number) => Math.round(points * 20);

/** Large type needs less between its lines; said as a share of its size, lest a program takes it for points. */
const close = { line: 252, lineRule: LineRuleType.AUTO };

export const styleIds = {
  subtitle: "Subtitle",
  author: "Author",
  rights: "Rights",
  body: "BodyText",
  first: "FirstParagraph",
  recipeName: "RecipeName",
  recipeKind: "RecipeKind",
  headnote: "Headnote",
  ingredient: "Ingredient",
  ingredientHead: "IngredientHead",
  method: "Method",
  fact: "RecipeFact",
  note: "Note",
  quote: "Quote",
  code: "Code",
  list: "ListItem",
  caption: "Caption",
  tableHead: "TableHead",
  tableText: "TableText",
  contents1: "TOC1",
  contents2: "TOC2",
  indexEntry: "Index1",
  break: "SectionBreak",
  picture: "Picture",
} as const;

export const lists = { bullets: "bullets", numbers: "numbers" } as const;
const accent = "7A2E1F";
const soft = "565C61";

export function wordStyles({ typeface, spelling }: BookStyle): IStylesOptions {
  const language = { value: spelling === "American" ? "en-US" : "en-GB" };
  const heading = (size: number, before: number, after: number, italics = false) => ({
    run: { size: size * 2, bold: false, italics, color: "000000", font: faces[typeface] },
    paragraph: { spacing: { before: pt(before), after: pt(after), ...close }, keepNext: true, keepLines: true },
  });
  return {
    default: {
      document: {
        run: { font: faces[typeface], size: 22, language },
        paragraph: { spacing: { line: 300, lineRule: LineRuleType.AUTO } },
      },
      title: {
        run: { size: 72, bold: false, font: faces[typeface] },
        paragraph: { alignment: AlignmentType.CENTER, spacing: { before: pt(170), after: pt(18), ...close } },
      },
      heading1: { ...heading(24, 60, 30), paragraph: { ...heading(24, 60, 30).paragraph, alignment: AlignmentType.CENTER } },
      heading2: heading(15, 22, 6, true),
      heading3: heading(13, 18, 5, true),
      heading4: heading(12, 14, 4, true),
      heading5: heading(11, 12, 4, true),
      heading6: heading(11, 12, 4, true),
    },
    // Word processors bring their own look for names that they know: each style says its own.
    paragraphStyles: paragraphs.map((one) => ({
      ...one,
      run: { font: faces[typeface], bold: false, italics: false, color: "000000", ...one.run },
    })),
  };
}

type Paragraph = NonNullable<IParagraphStyleOptions["paragraph"]>;

function style(
  id: keyof typeof styleIds,
  name: string,
  run: NonNullable<IParagraphStyleOptions["run"]>,
  paragraph: Paragraph,
  next: keyof typeof styleIds = id,
): IParagraphStyleOptions {
  return { id: styleIds[id], name, basedOn: "Normal", next: styleIds[next], quickFormat: true, run, paragraph };
}

const centred = { alignment: AlignmentType.CENTER };
const paragraphs: IParagraphStyleOptions[] = [
  style("subtitle", "Subtitle", { italics: true, bold: false, size: 30, color: "000000" }, { ...centred, spacing: { after: pt(30) } }),
  style("author", "Author", { smallCaps: true, size: 26, characterSpacing: 30 }, centred),
  style("rights", "Rights", { size: 18, color: soft }, { ...centred, spacing: { before: pt(220) } }),
  style("first", "First Paragraph", {}, { spacing: { before: pt(4) } }, "body"),
  style("body", "Body Text", {}, { indent: { firstLine: pt(16) } }),
  style(
    "recipeName",
    "Recipe Name",
    { size: 34 },
    { spacing: { before: pt(26), after: 0, ...close }, keepNext: true, keepLines: true },
    "recipeKind",
  ),
  style(
    "recipeKind",
    "Recipe Kind",
    { smallCaps: true, color: accent, characterSpacing: 16 },
    { spacing: { after: pt(6) }, keepNext: true },
    "headnote",
  ),
  style("headnote", "Headnote", { italics: true }, { spacing: { after: pt(8) }, keepNext: true, keepLines: true }, "ingredient"),
  style("ingredientHead", "Ingredient Head", { smallCaps: true, color: soft, size: 19 }, { keepNext: true }, "ingredient"),
  style("ingredient", "Ingredient", {}, { keepNext: true, keepLines: true }),
  style("method", "Method", {}, { spacing: { before: pt(8) }, keepNext: true, keepLines: true }),
  style("fact", "Recipe Fact", {}, { spacing: { before: pt(2) }, keepNext: true, keepLines: true }),
  style("note", "Note", { size: 19, color: soft }, { spacing: { before: pt(4) }, keepLines: true }),
  style("quote", "Quote", { color: soft }, { indent: { left: pt(18), right: pt(18) }, spacing: { before: pt(6), after: pt(6) } }, "body"),
  style("code", "Code", { font: "Courier New", size: 19 }, { spacing: { before: pt(6), after: pt(6) } }, "body"),
  style("list", "List Item", {}, { spacing: { before: pt(2) } }),
  style("caption", "Caption", { italics: true, size: 24 }, { spacing: { before: pt(14), after: pt(6) }, keepNext: true }),
  style("tableHead", "Table Head", { smallCaps: true, size: 18, color: soft }, { keepNext: true }),
  style("tableText", "Table Text", { size: 19 }, {}),
  style("contents1", "toc 1", { size: 24 }, { spacing: { before: pt(9) }, keepNext: true }),
  style("contents2", "toc 2", { size: 20, color: soft }, { indent: { left: pt(18) } }),
  style("indexEntry", "index 1", { size: 20 }, { indent: { left: pt(18), hanging: pt(18) }, spacing: { before: pt(3) } }),
  style("break", "Section Break", {}, { ...centred, spacing: { before: pt(12), after: pt(12) } }, "first"),
  style("picture", "Picture", {}, { ...centred, spacing: { before: pt(12), after: pt(12) } }, "body"),
];

const depths = [0, 1, 2, 3, 4, 5];
const indent = (level: number) => ({ paragraph: { indent: { left: pt(18 * (level + 1)), hanging: pt(14) } } });

export const numbering = {
  config: [
    {
      reference: lists.bullets,
      levels: depths.map((level) => ({
        level,
        format: LevelFormat.BULLET,
        text: "•",
        alignment: AlignmentType.LEFT,
        style: indent(level),
      })),
    },
    {
      reference: lists.numbers,
      levels: depths.map((level) => ({
        level,
        format: LevelFormat.DECIMAL,
        text: `%${level + 1}.`,
        alignment: AlignmentType.LEFT,
        style: indent(level),
      })),
    },
  ],
};
