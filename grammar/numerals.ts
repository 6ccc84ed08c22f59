/**
 * Numerals as people write them: `50`, `1.5`, `.5`, `1/2`, `1 1/2`, `1½`, `1-1/2`, `2,5`, `1,000`.
 * Every function reads forward only and looks at each character a fixed number of times.
 */
import { isDigit, isSpace } from "./characters.ts";

export type NumeralForm = "plain" | "decimal-comma" | "thousands-comma" | "hyphen-fraction";

export interface Numeral {
  readonly end: number;
  /** Absent where the numeral cannot be told: 1,000 may be one or a thousand. */
  readonly value: number | undefined;
  readonly form: NumeralForm;
  /** The numeral in the language's own spelling, where there is just one. */
  readonly instead: string | undefined;
}

/** Whether a numeral starts here (a sign is not part of it). */
export function startsNumeral(text: string, at: number, end: number): boolean {
  if (at >= end) return false;
  const code = text.charCodeAt(at);
  if (isDigit(code)) return true;
  if (code === point) return at + 1 < end && isDigit(text.charCodeAt(at + 1));
  return code > 127 && vulgarFractions.has(code);
}

/** The numeral that starts here, without the second half of a mixed number. */
export function readNumeral(text: string, at: number, end: number): Numeral | undefined {
  if (!startsNumeral(text, at, end)) return undefined;
  const vulgar = vulgarFractions.get(text.charCodeAt(at));
  if (vulgar !== undefined) return plain(at + 1, vulgar);
  const whole = skipDigits(text, at, end);
  if (whole < end && whole > at) {
    const code = text.charCodeAt(whole);
    const tail = code > 127 ? vulgarFractions.get(code) : undefined;
    if (tail !== undefined) return plain(whole + 1, Number(text.slice(at, whole)) + tail);
    if (isFractionSlash(code)) {
      const fraction = readFraction(text, at, end);
      if (fraction) return plain(fraction.end, fraction.top / fraction.bottom);
    }
  }
  return readPointed(text, at, whole, end);
}

/**
 * The proper fraction that makes `1` before it a mixed number: ` 1/2`, ` ½`, or `-1/2` without spaces.
 * `wholeStart` to `wholeEnd` is the whole number.
 */
export function readMixed(text: string, wholeStart: number, wholeEnd: number, end: number): Numeral | undefined {
  if (wholeEnd >= end || skipDigits(text, wholeStart, end) !== wholeEnd) return undefined;
  let at = wholeEnd;
  const hyphened = text.charCodeAt(at) === hyphen;
  if (hyphened) at++;
  else while (at < end && isSpace(text.charCodeAt(at))) at++;
  if (at === wholeEnd || at >= end) return undefined;
  const whole = Number(text.slice(wholeStart, wholeEnd));
  const vulgar = vulgarFractions.get(text.charCodeAt(at));
  if (vulgar !== undefined) return hyphened ? undefined : plain(at + 1, whole + vulgar);
  const fraction = readFraction(text, at, end);
  if (!fraction || fraction.top >= fraction.bottom || fraction.top === 0) return undefined;
  const value = whole + fraction.top / fraction.bottom;
  if (!hyphened) return plain(fraction.end, value);
  const instead = `${text.slice(wholeStart, wholeEnd)} ${text.slice(at, fraction.end)}`;
  return { end: fraction.end, value: finite(value), form: "hyphen-fraction", instead };
}

const comma = 44;
const hyphen = 45;
const point = 46;
const slash = 47;

/** Unicode's own fractions and what they are worth. */
const vulgarFractions = new Map<number, number>(
  Object.entries({
    "½": 1 / 2,
    "⅓": 1 / 3,
    "⅔": 2 / 3,
    "¼": 1 / 4,
    "¾": 3 / 4,
    "⅕": 1 / 5,
    "⅖": 2 / 5,
    "⅗": 3 / 5,
    "⅘": 4 / 5,
    "⅙": 1 / 6,
    "⅚": 5 / 6,
    "⅐": 1 / 7,
    "⅛": 1 / 8,
    "⅜": 3 / 8,
    "⅝": 5 / 8,
    "⅞": 7 / 8,
    "⅑": 1 / 9,
    "⅒": 1 / 10,
  }).map(([sign, value]) => [sign.charCodeAt(0), value]),
);

function plain(end: number, value: number): Numeral {
  return { end, value: finite(value), form: "plain", instead: undefined };
}

/** A numeral of hundreds of digits is no number that anything can be computed from. */
function finite(value: number): number | undefined {
  return Number.isFinite(value) ? value : undefined;
}

function skipDigits(text: string, at: number, end: number): number {
  while (at < end && isDigit(text.charCodeAt(at))) at++;
  return at;
}

/** `/`, and the fraction and division slashes U+2044 and U+2215. */
function isFractionSlash(code: number): boolean {
  return code === slash || code === 0x2044 || code === 0x2215;
}

function readFraction(text: string, at: number, end: number): { top: number; bottom: number; end: number } | undefined {
  const middle = skipDigits(text, at, end);
  if (middle === at || middle >= end || !isFractionSlash(text.charCodeAt(middle))) return undefined;
  const last = skipDigits(text, middle + 1, end);
  if (last === middle + 1) return undefined;
  const bottom = Number(text.slice(middle + 1, last));
  return bottom > 0 ? { top: Number(text.slice(at, middle)), bottom, end: last } : undefined;
}

/** Digits with points and commas among them; `whole` is where the first run of digits ends. */
function readPointed(text: string, at: number, whole: number, end: number): Numeral | undefined {
  let points = 0;
  let commas = 0;
  let stop = whole;
  while (stop + 1 < end && isDigit(text.charCodeAt(stop + 1))) {
    const code = text.charCodeAt(stop);
    if (code === point) points++;
    else if (code === comma) commas++;
    else break;
    stop = skipDigits(text, stop + 1, end);
  }
  if (commas === 0) return points <= 1 ? plain(stop, Number(text.slice(at, stop))) : undefined;
  return readWithCommas(text.slice(at, stop), stop, points, commas);
}

function readWithCommas(written: string, end: number, points: number, commas: number): Numeral | undefined {
  const unsure = (instead: string | undefined): Numeral => ({ end, value: undefined, form: "thousands-comma", instead });
  const groups = written.split(",");
  if (points > 0) {
    // 1,000.5 and 1.000,5 can each be read in one way only.
    if (englishThousands.test(written)) return unsure(written.replaceAll(",", ""));
    if (continentalThousands.test(written)) return unsure(written.replaceAll(".", "").replace(",", "."));
    return undefined;
  }
  if (commas > 1) return groups.slice(1).every((group) => group.length === 3) ? unsure(groups.join("")) : undefined;
  if (groups[1]?.length === 3) return unsure(undefined);
  const instead = written.replace(",", ".");
  return { end, value: finite(Number(instead)), form: "decimal-comma", instead };
}

const englishThousands = /^\d{1,3}(?:,\d{3})+\.\d+$/;
const continentalThousands = /^\d{1,3}(?:\.\d{3})+,\d+$/;
