/** The notes that a book owes its reader: what its units are, and how its drinks are served. */
import { jugOunces } from "../../house/book/amount.ts";
import { fractionText } from "../../house/book/amount-text.ts";
import type { Book } from "../../house/book/book.ts";
import { numberInWords } from "../../house/book/number-words.ts";
import { spelled } from "../../house/book/spelling.ts";
import type { BookStyle } from "../../house/book/style.ts";
import { showNumber } from "../../house/show.ts";
import type { Block } from "./blocks.ts";

export function units({ style }: Book): readonly Block[] {
  return paragraphs(
    [`${shownIn(style)} ${ofTheOunce(style)}`.trim(), style.systems.includes("US") ? ofRounding(style) : "", ofTheRest],
    style,
  );
}

function shownIn({ systems: [first, second] }: BookStyle): string {
  const names = { metric: "millilitres", US: "ounces" };
  return second ? `Liquids are given in ${names[first]} and, beside them, in ${names[second]}.` : `Liquids are given in ${names[first]}.`;
}

/** 1 US fl oz: NIST Handbook 44, appendix C. */
const exactOunceMl = 29.5735;

function ofTheOunce({ systems, ounceMl }: BookStyle): string {
  if (!systems.includes("US")) return "";
  const size = `The ounce of this book is ${showNumber(ounceMl)} millilitres.`;
  return Math.abs(ounceMl - exactOunceMl) < 0.01
    ? `${size} That is the US fluid ounce.`
    : `${size} The US fluid ounce is ${showNumber(exactOunceMl)}; the round one keeps every recipe's proportions, and the whole drink comes out a little larger or smaller.`;
}

function ofRounding({ ounceStep, spelling }: BookStyle): string {
  const step = fractionText(ounceStep);
  const eight = numberInWords(jugOunces, spelling);
  return `Ounces are rounded to the nearest ${step}, so a single pour may be off by half of that. Below ${eight} ounces what comes out even in eighths or thirds stays as it is, and a little that lies between the marks is given in teaspoons, six to the ounce. Keep to one column: a drink measured in both by turns is neither.`;
}

const ofTheRest =
  "Weights are in grams, since a scale is more exact than a spoon. A dash, a drop, a pinch and a barspoon are what they are in your hand; the figures of this book take usual sizes for them.";

const serving = [
  "The strengths and the standard drinks in this book are computed from the recipes as they are printed. Poured larger, or with stronger bottles, they are more.",
  "Serve water with every drink and food where you can. Nobody who has had enough needs another, and nobody who drives, works with machines, is pregnant, or takes medicine that does not go with alcohol needs one at all: have something as good to offer that holds none.",
  "Say what is in a drink before it is asked: allergens, raw egg, caffeine, and what is stronger than it tastes. Keep what is made in house cold and dated, and throw away what is past its day.",
  "The age at which people may be served, the measures that may be poured and the hours differ from place to place. Local law and licensed practice go before anything that is printed here.",
];

export function responsibleService({ style }: Book): readonly Block[] {
  return paragraphs(serving, style);
}

function paragraphs(texts: readonly string[], { spelling }: BookStyle): readonly Block[] {
  return texts.filter(Boolean).map((text) => ({ kind: "paragraph", words: [spelled(text, spelling)] }));
}
