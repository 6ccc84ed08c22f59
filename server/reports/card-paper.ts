/** The measures of a card and of the sheet that it stands on, shared by what reckons with them and the style sheet. */
import { mmPerPt } from "./type-width.ts";

/** In mm. */
export const papers = { a4: { width: 210, height: 297 }, letter: { width: 215.9, height: 279.4 } } as const;
export type PaperName = keyof typeof papers;

/** In mm. */
export const layout = { margin: 6, gap: 4, foot: 5, padding: 4, rule: 0.3, band: 1.6, line: 0.2, between: 2, row: 0.8, block: 1.8 };
/** Of the amounts and of what they are in the other units, in em. */
export const columns = { amount: 4.06, other: 4.93 };
export const lineHeight = 1.16;

/** What reads at arm's length: practice, no source. Nothing on a card is set smaller than the last. */
export const sizes = [
  { text: 16.5, title: 28 },
  { text: 15.5, title: 25 },
  { text: 14.7, title: 23 },
  { text: 14, title: 22 },
] as const;
export type Size = (typeof sizes)[number];

/** In mm, of one card with its padding. */
export function cardSize(paper: PaperName): { readonly width: number; readonly height: number } {
  const { margin, gap, foot } = layout;
  const { width, height } = papers[paper];
  return { width: (width - 2 * margin - gap) / 2, height: (height - 2 * margin - gap - foot) / 2 };
}

/** Of a card without its padding and its rules. */
export function insideOf(paper: PaperName): { readonly width: number; readonly height: number } {
  const { padding, rule, band } = layout;
  const { width, height } = cardSize(paper);
  return { width: width - 2 * (padding + rule), height: height - 2 * padding - rule - band };
}

/** A column ends in so much of a blank, mm. */
export const afterColumn = 0.9;

/** Without its blank. */
export function columnMm(column: keyof typeof columns, { text }: Size): number {
  return columns[column] * text * mmPerPt - afterColumn;
}

/** One line of a type. */
export function lineMm(pt: number): number {
  return pt * mmPerPt * lineHeight;
}
