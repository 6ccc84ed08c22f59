/**
 * How much room a text takes, set in a sans serif that nobody knows beforehand. Widths are those of
 * wide ones (DejaVu Sans Condensed and Liberation Sans, measured; the wider of the two), so that what is estimated to fit does fit in most others.
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
  [/[W@—…]/, 1],
  [/[m%]/, 0.89],
  [/[wM<>&+=~^×÷±−≈]/, 0.83],
  [/[aekovxy]/, 0.55],
  [/[\p{Ll}\d]/u, 0.57],
  [/[\u1100-\uffff]|\p{Extended_Pictographic}/u, 1.1],
];
const capital = 0.73;

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
    pieces.push({ text: these.join("").trim(), lines: these.length });
  }
  return pieces;
}

interface Broken {
  readonly text: string;
  readonly lines: number;
}

/** Broken behind blanks, which stay at the end of a line, and inside what is longer than a line. */
function setIn(text: string, widthMm: number, pt: number, weight: Weight, takenMm: number): string[] {
  const em = pt * mmPerPt * (weight === "bold" ? boldFactor : 1);
  const lines: string[] = [];
  let line = "";
  let filled = takenMm;
  const end = () => {
    if (line !== "") lines.push(line);
    line = "";
    filled = 0;
  };
  for (const word of text.trim().replaceAll(/\s+/g, " ").match(/\S+ ?/g) ?? []) {
    const width = widthIn(word.trim()) * em;
    if (line !== "" && filled + width > widthMm) end();
    // A word that is longer than a line is broken where the line is full.
    for (const part of width <= widthMm ? [word] : word) {
      const one = widthIn(part.trim()) * em;
      if (line !== "" && filled + one > widthMm) end();
      line += part;
      filled += widthIn(part) * em;
    }
  }
  end();
  return lines;
}

function widthIn(word: string): number {
  let sum = 0;
  for (const character of word) sum += widthOf(character);
  return sum;
}

function widthOf(character: string): number {
  return widths.find(([characters]) => characters.test(character))?.[1] ?? capital;
}
