/** Numbers in words, as they are read out: with the broken ones that a bar pours, and what they count. */
import { toCardinal as british } from "n2words/en-GB";
import { toCardinal as american } from "n2words/en-US";
import type { Spelling } from "./style.ts";

/** What is counted, as one and as many: `ounce`, `ounces`. */
export interface Counted {
  readonly one: string;
  readonly many: string;
}

/** `one hundred and five`, in America `one hundred five`; `twenty-two and a half`, `seventeen point three`, `minus five`. */
export function numberInWords(value: number, spelling: Spelling): string {
  if (!Number.isFinite(value) || Math.abs(value) >= most) return String(value);
  if (value < 0) return `minus ${numberInWords(-value, spelling)}`;
  const { whole, broken } = partsOf(value);
  if (broken === undefined) return decimalInWords(value, spelling);
  if (!broken) return cardinal(whole, spelling);
  return whole > 0 ? `${cardinal(whole, spelling)} and ${broken.behind}` : broken.noun;
}

/** `twenty-five millilitres`, `three quarters of an ounce`, `half an ounce`, `one and three-quarter ounces`. */
export function amountInWords(value: number, { one, many }: Counted, spelling: Spelling): string {
  const { whole, broken } = partsOf(value);
  if (value > 0 && whole === 0 && broken) {
    const article = /^[aeiou]/i.test(one) ? "an" : "a";
    return broken.noun === half ? `half ${article} ${one}` : `${broken.noun} of ${article} ${one}`;
  }
  return `${numberInWords(value, spelling)} ${value === 1 ? one : many}`.trimEnd();
}

/** From here on figures are easier to read. */
const most = 1e6;
const half = "half";

/** Each with the words that it is called by alone, and behind a whole number. */
const brokens = [
  { share: 1 / 8, noun: "an eighth", behind: "an eighth" },
  { share: 1 / 4, noun: "a quarter", behind: "a quarter" },
  { share: 1 / 3, noun: "a third", behind: "a third" },
  { share: 3 / 8, noun: "three eighths", behind: "three-eighths" },
  { share: 1 / 2, noun: half, behind: "a half" },
  { share: 5 / 8, noun: "five eighths", behind: "five-eighths" },
  { share: 2 / 3, noun: "two thirds", behind: "two-thirds" },
  { share: 3 / 4, noun: "three quarters", behind: "three-quarter" },
  { share: 7 / 8, noun: "seven eighths", behind: "seven-eighths" },
] as const;

/** The broken part is null for a whole number, absent where no words are usual for it. */
function partsOf(value: number): { whole: number; broken: (typeof brokens)[number] | null | undefined } {
  const near = (one: number, other: number) => Math.abs(one - other) < 1e-9 * Math.max(1, value);
  const nearest = Math.round(value);
  if (near(value, nearest)) return { whole: nearest, broken: null };
  const whole = Math.floor(value);
  return { whole, broken: brokens.find(({ share }) => near(value - whole, share)) };
}

function cardinal(whole: number, spelling: Spelling): string {
  return (spelling === "American" ? american : british)(whole);
}

/** Digit by digit behind the point, to a millionth. */
function decimalInWords(value: number, spelling: Spelling): string {
  const [whole = "0", digits = ""] = value.toFixed(6).replace(/0+$/, "").split(".");
  const behind = [...digits].map((digit) => cardinal(Number(digit), spelling));
  return [cardinal(Number(whole), spelling), ...(behind.length > 0 ? ["point", ...behind] : [])].join(" ");
}
