/** A drink in the pieces that stay together on a card, and how much room each takes. */
import { afterColumn, columnMm, layout, lineMm, type Size } from "./card-paper.ts";
import type { Card, CardPour } from "./card-schema.ts";
import { pictureMm } from "./fill-picture.ts";
import { boldFactor, brokenText, linesOf, mmPerPt } from "./type-width.ts";

/** A name in front, which is empty where a text goes on. */
export interface Fact {
  readonly label: string;
  readonly text: string;
}

type FactPlace = "names" | "warnings" | "facts" | "beside";
export type Piece = { readonly height: number } & (
  | { readonly place: FactPlace; readonly what: Fact }
  | { readonly place: "service" | "pours"; readonly what: CardPour }
);

/** So many lines stay together; a longer text is told in several pieces. */
const together = 6;
/** In their order; `whole` is a name that the title cuts. */
export function piecesOf(card: Card, whole: string | undefined, size: Size, width: number): Piece[] {
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

/** Of the pieces on one card. */
export function heightOf(pieces: readonly Piece[], card: Card, size: Size, hasPicture: boolean): number {
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
