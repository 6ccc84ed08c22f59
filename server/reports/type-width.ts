/**
 * How much room a text takes, set in a sans serif that nobody knows beforehand. Widths are those of a
 * wide one (DejaVu Sans Condensed, measured), so that what is estimated to fit does fit in most others.
 */
export const mmPerPt = 25.4 / 72;

type Weight = "plain" | "bold";
export const boldFactor = 1.12;

/** Widths in em. What is in no row is as wide as a capital. */
const widths: readonly (readonly [characters: RegExp, em: number])[] = [
  [/[\p{M}\p{Cf}]/u, 0],
  [/[ijl']/, 0.26],
  [/[I.,:;!|’\s]/u, 0.3],
  [/[frt\-()/[\]"“”]/, 0.37],
  [/[csz]/, 0.49],
  [/[mW%@—…]/, 0.89],
  [/[wM]/, 0.78],
  [/[aekovxy]/, 0.55],
  [/[\p{Ll}\d]/u, 0.57],
  [/[\u1100-\uffff]|\p{Extended_Pictographic}/u, 1.1],
];
const capital = 0.68;
const blank = 0.3;

/** Lines that a text takes in a column; 0 for none. */
export function linesOf(text: string, widthMm: number, pt: number, weight: Weight = "plain"): number {
  return text.trim() === "" ? 0 : setIn(text, widthMm, pt, weight, 0).length;
}

/** A text in pieces of no more than so many lines each; `takenMm` of the first line is taken by something else. */
export function brokenText(text: string, widthMm: number, pt: number, most: number, takenMm = 0): Broken[] {
  const lines = setIn(text, widthMm, pt, "plain", takenMm);
  const pieces: Broken[] = [];
  for (let at = 0; at < lines.length; at += most) {
    const these = lines.slice(at, at + most);
    pieces.push({ text: these.join(" "), lines: these.length });
  }
  return pieces;
}

interface Broken {
  readonly text: string;
  readonly lines: number;
}

/** Broken at blanks, and inside what is longer than a line. */
function setIn(text: string, widthMm: number, pt: number, weight: Weight, takenMm: number): string[] {
  const em = pt * mmPerPt * (weight === "bold" ? boldFactor : 1);
  const lines: string[] = [];
  let line = "";
  let filled = takenMm;
  for (const word of text.trim().split(/\s+/)) {
    const width = widthIn(word) * em;
    if (line !== "" && filled + blank * em + width > widthMm) {
      lines.push(line);
      line = "";
      filled = 0;
    }
    if (line !== "") {
      line += " ";
      filled += blank * em;
    }
    if (width <= widthMm) {
      line += word;
      filled += width;
      continue;
    }
    for (const character of word) {
      const one = widthOf(character) * em;
      if (line !== "" && filled + one > widthMm) {
        lines.push(line);
        line = "";
        filled = 0;
      }
      line += character;
      filled += one;
    }
  }
  return line === "" ? lines : [...lines, line];
}

function widthIn(word: string): number {
  let sum = 0;
  for (const character of word) sum += widthOf(character);
  return sum;
}

function widthOf(character: string): number {
  return widths.find(([characters]) => characters.test(character))?.[1] ?? capital;
}
