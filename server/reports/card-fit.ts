/**
 * What goes on a card, so that nothing has to be cut off: the largest type in which all of a drink fits,
 * else as many cards as it takes. A page is set by whatever type the reader's machine has, so that widths
 * are estimated, and rather too wide; a card that is too full after all grows.
 */
import { insideOf, layout, lineMm, type PaperName, type Size, sizes } from "./card-paper.ts";
import { type Fact, heightOf, type Piece, piecesOf } from "./card-pieces.ts";
import type { Card, CardPour } from "./card-schema.ts";
import { boldFactor, brokenText, linesOf } from "./type-width.ts";

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

/** A longer name is cut in the title and stands below it in full. */
const titleLines = 4;

/** The cards that a drink takes. */
export function facesOf(card: Card, paper: PaperName): Face[] {
  for (const size of sizes) {
    const faces = facesAt(card, paper, size);
    if (faces.length === 1) return faces;
  }
  return facesAt(card, paper, sizes[3]);
}

function facesAt(card: Card, paper: PaperName, size: Size): Face[] {
  const pages = pagesAt(card, paper, size, "");
  return pages.length === 1 ? facesOn(pages, card, paper, size) : facesOn(pagesAt(card, paper, size, " (10 of 10)"), card, paper, size);
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
  return more.length === 0 ? { title: name } : { title: `${withoutLast(start!.text)}…`, whole: name };
}

/** Without what a reader takes for the last letter, which may be several of the computer's. */
function withoutLast(text: string): string {
  const letters = [...new Intl.Segmenter("en").segment(text)];
  return text.slice(0, letters.at(-1)?.index ?? 0).trimEnd();
}
