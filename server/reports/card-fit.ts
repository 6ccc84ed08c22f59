/**
 * What goes on a card, so that nothing has to be cut off: the largest type in which all of a drink fits,
 * else as many cards as it takes. A page is set by whatever type the reader's machine has, so that widths
 * are estimated, and rather too wide; a card that is too full after all grows.
 */
import type { Card, CardPour } from "./card-schema.ts";
import { pictureMm } from "./fill-picture.ts";
import { boldFactor, brokenText, linesOf, mmPerPt } from "./type-width.ts";

/** In mm. */
export const papers = { a4: { width: 210, height: 297 }, letter: { width: 215.9, height: 279.4 } } as const;
export type PaperName = keyof typeof papers;

/** In mm. */
export const layout = { margin: 6, gap: 4, foot: 5, padding: 4, rule: 0.3, band: 1.6, line: 0.2, between: 2, row: 0.8, block: 1.8 };
/** Of the amounts and of what they are in the other units, in em. */
export const columns = { amount: 4.06, other: 4.13 };
export const lineHeight = 1.16;

/** What reads at arm's length: practice, no source. Nothing on a card is set smaller than the last. */
export const sizes = [
  { text: 16.5, title: 28 },
  { text: 15.5, title: 25 },
  { text: 14.7, title: 23 },
  { text: 14, title: 22 },
] as const;
export type Size = (typeof sizes)[number];

/** A card as it is printed; `number` of `of` for one drink. */
export interface Face {
  readonly card: Card;
  readonly title: string;
  readonly size: Size;
  readonly number: number;
  readonly of: number;
  /** On the first card of a drink only; empty on the others. */
  readonly strength: string;
  /** The whole of a name that is cut in the title. */
  readonly names: readonly Fact[];
  readonly warnings: readonly Fact[];
  readonly service: readonly CardPour[];
  readonly pours: readonly CardPour[];
  readonly facts: readonly Fact[];
  /** Beside the picture, where there is one. */
  readonly beside: readonly Fact[];
  readonly picture: boolean;
}

/** A name in front, which is empty where a text goes on. */
export interface Fact {
  readonly label: string;
  readonly text: string;
}

/** In mm, of one card with its padding. */
export function cardSize(paper: PaperName): { readonly width: number; readonly height: number } {
  const { margin, gap, foot } = layout;
  const { width, height } = papers[paper];
  return { width: (width - 2 * margin - gap) / 2, height: (height - 2 * margin - gap - foot) / 2 };
}

/** The cards that a drink takes. */
export function facesOf(card: Card, paper: PaperName): Face[] {
  for (const size of sizes) {
    const faces = facesAt(card, paper, size);
    if (faces.length === 1) return faces;
  }
  return facesAt(card, paper, sizes[3]);
}

type FactPlace = "names" | "warnings" | "facts" | "beside";
type Piece = { readonly height: number } & (
  | { readonly place: FactPlace; readonly what: Fact }
  | { readonly place: "service" | "pours"; readonly what: CardPour }
);

/** So many lines stay together; a longer text is told in several pieces. */
const together = 6;
/** A longer name is cut in the title and stands below it in full. */
const titleLines = 3;

function facesAt(card: Card, paper: PaperName, size: Size): Face[] {
  const pages = pagesAt(card, paper, size, "");
  return pages.length === 1 ? facesOn(pages, card, paper, size) : facesOn(pagesAt(card, paper, size, " (10 of 10)"), card, paper, size);
}

/** Of a card without its padding and its rules. */
function insideOf(paper: PaperName): { readonly width: number; readonly height: number } {
  const { padding, rule, band } = layout;
  const { width, height } = cardSize(paper);
  return { width: width - 2 * (padding + rule), height: height - 2 * padding - rule - band };
}

/** `counted` stands behind the title of a card that is not alone, and a line below all of it says that it goes on. */
function pagesAt(card: Card, paper: PaperName, size: Size, counted: string): Piece[][] {
  const inside = insideOf(paper);
  const { title, whole } = titleOf(card, size, inside.width);
  const head = linesOf(`${title}${counted}`, inside.width, size.title, "bold") * lineMm(size.title) + layout.block;
  const strength = linesOf(card.strength, inside.width, size.text) * lineMm(size.text);
  // One for the line that says so, and one to spare: what is that long breaks elsewhere in another type.
  const room = inside.height - head - (counted === "" ? 0 : 2 * lineMm(size.text));
  const pages: Piece[][] = [[]];
  for (const piece of piecesOf(card, whole, size, inside.width)) {
    const page = pages.at(-1)!;
    const hasPicture = !pages.slice(0, -1).some(isBesidePicture);
    const left = room - (pages.length === 1 ? strength : 0);
    const isFull = heightOf([...page, piece], card, size, hasPicture) > left;
    if (page.length > 0 && (isFull || isApart(card, page, piece, counted))) pages.push([piece]);
    else page.push(piece);
  }
  return pages;
}

function facesOn(pages: readonly Piece[][], card: Card, paper: PaperName, size: Size): Face[] {
  const { title } = titleOf(card, size, insideOf(paper).width);
  const pictured = pages.findIndex(isBesidePicture);
  return pages.map((page, index) => ({
    card,
    title,
    size,
    number: index + 1,
    of: pages.length,
    strength: index === 0 ? card.strength : "",
    names: factsIn(page, "names"),
    warnings: factsIn(page, "warnings"),
    service: poursIn(page, "service"),
    pours: poursIn(page, "pours"),
    facts: factsIn(page, "facts"),
    beside: factsIn(page, "beside"),
    picture: index === pictured,
  }));
}

/** Where both specs of a batched drink do not fit on one card, the full one has a card of its own. */
function isApart({ service }: Card, page: readonly Piece[], { place }: Piece, counted: string): boolean {
  return service !== null && counted !== "" && place === "pours" && page.at(-1)!.place !== "pours";
}

function isBesidePicture(page: readonly Piece[]): boolean {
  return page.some(({ place }) => place === "beside");
}

function factsIn(page: readonly Piece[], place: Piece["place"]): Fact[] {
  return page.flatMap((piece) => (piece.place === place && "label" in piece.what ? [piece.what] : []));
}

function poursIn(page: readonly Piece[], place: Piece["place"]): CardPour[] {
  return page.flatMap((piece) => (piece.place === place && "name" in piece.what ? [piece.what] : []));
}

/** A long name is cut in the title, and then told in full as well. */
function titleOf({ name }: Card, size: Size, width: number): { readonly title: string; readonly whole?: string } {
  const [start, ...more] = brokenText(name, width / boldFactor, size.title, titleLines);
  return more.length === 0 ? { title: name } : { title: `${start!.text.slice(0, -1)}…`, whole: name };
}

function piecesOf(card: Card, whole: string | undefined, size: Size, width: number): Piece[] {
  const narrow = width - pictureMm.width - layout.between;
  const facts = (place: FactPlace, room: number, those: readonly Fact[]) =>
    those.flatMap(({ label, text }) => {
      if (text === "") return [];
      const bold = (boldFactor - 1) * label.length * size.text * mmPerPt;
      return brokenText(`${label} ${text}`, room, size.text, together, bold).map((part, index): Piece => {
        const what = index === 0 ? { label, text: part.text.slice(label.length + 1) } : { label: "", text: part.text };
        return { place, what, height: part.lines * lineMm(size.text) + layout.row };
      });
    });
  const pours = (place: "service" | "pours", those: readonly CardPour[]) =>
    those.flatMap((pour) => rowsOf(pour, size, width)).map((what): Piece => ({ place, what, height: rowHeight(what, size, width) }));
  const making = [
    ...facts("facts", width, [{ label: "Method", text: card.method.join("; ") || "not stated" }]),
    ...facts("beside", narrow, factsOf(card)),
  ];
  return [
    ...facts("names", width, whole ? [{ label: "Name", text: whole }] : []),
    ...facts("warnings", width - 2 * layout.block, warningsOf(card)),
    // Whoever pours from the bottle needs no more than the first card.
    ...(card.service
      ? [...pours("service", card.service), ...making, ...pours("pours", card.pours)]
      : [...pours("pours", card.pours), ...making]),
  ];
}

function warningsOf({ allergens, cautions }: Card): Fact[] {
  return [
    { label: "Allergens", text: [allergens.contains, allergens.notStated.replace(/^Allergens not/, "Not")].filter(Boolean).join(" ") },
    { label: "Caution", text: cautions.map(({ title }) => title).join("; ") },
  ];
}

function factsOf({ glass, ice, garnish, rim, fill }: Card): Fact[] {
  const over = (fill.share.value ?? 0) > 1 ? ", more than the glass holds" : "";
  const filled = fill.volume === "" ? `unknown: ${fill.why.join("; ")}` : `${fill.volume} (${fill.otherVolume})${over}`;
  return [
    { label: "Glass", text: glass ?? "not stated" },
    { label: "Fill", text: filled },
    { label: "Ice", text: ice ?? "" },
    { label: "Rim", text: rim ?? "" },
    { label: "Garnish", text: garnish ?? "not stated" },
  ];
}

/** A pour as it stands, or in several rows where it is very long. */
function rowsOf(pour: CardPour, size: Size, width: number): CardPour[] {
  const { amount, other, name, notes, or } = pour;
  const isLong = linesOf(amount, amountWidth(pour, size), size.text, "bold") > 3;
  const broken = (text: string) => brokenText(text, nameWidth(width, size), size.text, together).map((part) => part.text);
  const names = broken(isLong ? `${amount} ${name}` : name);
  const rest = [notes.join(", "), ...or.map((one) => `or ${one}`)].flatMap(broken);
  const [first = "", ...more] = [...names, ...rest];
  if (!isLong && names.length <= 1 && more.length <= together && more.length === Number(notes.length > 0) + or.length) return [pour];
  const plain = { amount: "", other: null, notes: [], or: [] };
  return [{ ...plain, amount: isLong ? "" : amount, other, name: first }, ...more.map((text) => ({ ...plain, name: text }))];
}

function rowHeight(pour: CardPour, size: Size, width: number): number {
  const { amount, other, name, notes, or } = pour;
  const words = [name, ...notes].filter(Boolean).join(", ");
  const lines = Math.max(
    linesOf(amount, amountWidth(pour, size), size.text, "bold"),
    linesOf(other ?? "", columnMm("other", size), size.text),
    linesOf(words, nameWidth(width, size), size.text),
  );
  const alternatives = or.reduce((sum, one) => sum + linesOf(`or ${one}`, orWidth(width, size), size.text), 0);
  return (lines + alternatives) * lineMm(size.text) + (2 + or.length) * layout.row + layout.line;
}

/** A column ends in so much of a blank, mm. */
export const afterColumn = 0.9;

/** Without its blank. */
function columnMm(column: keyof typeof columns, { text }: Size): number {
  return columns[column] * text * mmPerPt - afterColumn;
}

function nameWidth(width: number, size: Size): number {
  return width - columnMm("amount", size) - columnMm("other", size) - 2 * afterColumn;
}

/** What stands in for a pour takes the other unit's column too. */
function orWidth(width: number, size: Size): number {
  return width - columnMm("amount", size) - afterColumn;
}

/** What has no other unit has its column too. */
function amountWidth({ other }: CardPour, size: Size): number {
  return columnMm("amount", size) + (other === null ? columnMm("other", size) + afterColumn : 0);
}

/** Whether the tables of a card have to be told apart. */
export function isCaptioned({ service, serves }: Card): boolean {
  return service !== null || serves !== 1;
}

function heightOf(pieces: readonly Piece[], card: Card, size: Size, hasPicture: boolean): number {
  const sum = (those: readonly Piece[]) => those.reduce((all, { height }) => all + height, 0);
  const beside = pieces.filter(({ place }) => place === "beside");
  const places = new Set(pieces.map(({ place }) => place));
  const captions = isCaptioned(card) ? Number(places.has("service")) + Number(places.has("pours")) : 0;
  const picture = beside.length > 0 && hasPicture ? pictureMm.height : 0;
  return (
    sum(pieces.filter(({ place }) => place !== "beside")) +
    Math.max(picture, sum(beside)) +
    captions * lineMm(size.text) +
    (places.has("warnings") ? layout.row : 0) +
    (places.size - 1) * layout.block
  );
}

function lineMm(pt: number): number {
  return pt * mmPerPt * lineHeight;
}
