/** Fields of a spec as they read in a sentence: the glass, the garnish, and amounts within a text. */
import type { FieldLine, Item, Quantity, Words } from "../../../grammar/tree.ts";
import { showList } from "../show.ts";
import { printedAmount } from "./amount.ts";
import { amountText } from "./amount-text.ts";
import type { BookStyle, Numbers, System } from "./style.ts";

/** `chilled coupe`, `rocks glass at −8 °C`, `coupe or flute`. */
export function glassPhrase({ items }: FieldLine, style: BookStyle): string {
  const glasses = items.map((item) => {
    const [name = "", ...qualifiers] = partsOf(item, style, "figures");
    return qualified(shortNames.has(name.toLowerCase()) ? `${name} glass` : name, qualifiers, isSimple);
  });
  return showList(glasses, glasses.length).replace(/ and ([^,]*)$/, " or $1");
}

/** What is called by half of its name: a rocks glass. From memory. */
const shortNames = new Set(["rocks", "highball", "collins", "shot", "cocktail", "wine", "sour", "fizz", "toddy", "pint"]);

/** `expressed lemon zest and grated nutmeg`, `a lemon wheel and 3 cloves`. */
export function garnishPhrase({ items }: Pick<FieldLine, "items">, style: BookStyle, numbers: Numbers = "figures"): string {
  const things = items.map((item) => {
    const [name = "", ...qualifiers] = partsOf(item, style, numbers);
    const single = /^(?:1|one)\s+(?=[a-z])/i;
    const bare = name.replace(single, "");
    const whole = qualified(bare, qualifiers, isDone);
    return bare === name ? whole : withArticle(whole);
  });
  return showList(things, things.length);
}

/** `a coupe`, `an orange wheel`. */
export function withArticle(noun: string): string {
  return `${/^(?:[aeio]|u(?!n[ic]|s[eu]))/i.test(noun) ? "an" : "a"} ${noun}`;
}

/** One word of what was done to it goes before a name, anything longer behind it. */
function qualified(name: string, qualifiers: readonly string[], goesBefore: (text: string) => boolean): string {
  const before = qualifiers.filter(goesBefore);
  const behind = qualifiers.filter((one) => !before.includes(one));
  return [...before, name].join(" ") + behind.map((one) => (one.startsWith("at ") ? ` ${one}` : `, ${one}`)).join("");
}

function isSimple(text: string): boolean {
  return /^[a-z-]+$/i.test(text);
}

function isDone(text: string): boolean {
  return /^[a-z-]+(?:ed|en)$/i.test(text);
}

function partsOf({ parts }: Item, style: BookStyle, numbers: Numbers): string[] {
  return parts.map((part) => withAmounts(part, part.quantities, (quantity) => sayQuantity(quantity, style, numbers)));
}

/** A text with its amounts put otherwise; what is answered with nothing stays as it is written. */
export function withAmounts(text: Words, quantities: readonly Quantity[], say: (quantity: Quantity) => string | undefined): string {
  let rest = text.text;
  for (const quantity of quantities.toSorted((one, other) => other.start - one.start)) {
    const said = say(quantity);
    if (said === undefined) continue;
    rest = rest.slice(0, quantity.start - text.start) + said + rest.slice(quantity.end - text.start);
  }
  return rest;
}

/** An amount within a text, in every system of the book: `320 ml (10¾ oz)`, `−5 °C (23 °F)`, `12 seconds`. */
export function sayQuantity(
  quantity: Quantity,
  style: BookStyle,
  numbers: Numbers,
  shown: readonly System[] = style.systems,
): string | undefined {
  const unit = quantity.unit?.unit;
  if (quantity.value === undefined) return undefined;
  if (unit?.dimension === "temperature") return besides(shown.map((system) => degrees(quantity, system === "US" ? "F" : "C")));
  // Ice and what is boiled down is weighed in grams everywhere.
  const systems = unit?.dimension === "volume" ? shown : (["metric"] as const);
  return besides(systems.map((system) => amountText(printedAmount({ quantity }, style, system)!, style, numbers)));
}

/** `25 ml (¾ oz)`; equal ones once. */
export function besides(texts: readonly string[]): string {
  const [first = "", second] = [...new Set(texts)];
  return second ? `${first} (${second})` : first;
}

/** Whole degrees, as they are set on anything: `−5 °C`. */
export function degrees({ value, upTo, unit }: Pick<Quantity, "value" | "upTo" | "unit">, into: "C" | "F"): string {
  const from = unit?.unit.id === "F" ? "F" : "C";
  const turned = (number: number) => (from === into ? number : into === "F" ? number * 1.8 + 32 : (number - 32) / 1.8);
  const texts = [value!, ...(upTo === undefined ? [] : [upTo])].map((one) => String(Math.round(turned(one))).replace("-", "−"));
  return `${texts.join(" to ")} °${into}`;
}
