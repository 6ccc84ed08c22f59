/** Prose that gives another amount than the recipe it stands under. */
import type { Entry } from "../../../grammar/tree.ts";
import { mlOf, mlOfPrinted, type Poured, printedAmount } from "../../house/book/amount.ts";
import { spoken } from "../../house/book/amount-text.ts";
import { type PouredInProse, pouredInProse } from "../../house/book/poured-in-prose.ts";
import { bookOfChapter } from "../../house/book/printed.ts";
import type { ProseAmount } from "../../house/book/prose-amounts.ts";
import { type BookStyle, type System, styleOf } from "../../house/book/style.ts";
import type { Fix } from "../../house/finding.ts";
import type { Rule } from "../rule.ts";
import { specimen } from "../specimen.ts";
import { chapter, fenced } from "./chapter.ts";
import { systemOf } from "./systems.ts";

const spec = fenced(specimen(["50 ml gin", "22.5 ml lemon juice", "15 ml sugar syrup", "60 ml soda water"]));
const prose = (amount: string) => chapter(`## Slip Water\n\nGive it ${amount} of lemon juice and no less.\n\n${spec}`);

export const proseDisagrees: Rule = {
  code: "prose-disagrees",
  severity: "hint",
  entries: ["text"],
  docs: {
    title: "The text gives another amount than the recipe",
    why: "A recipe is changed at the last tasting, and the sentence about it three pages on is not. An amount, a unit and an ingredient that follow each other under the heading of one drink are compared with what it pours, as the book prints it. Anything vaguer is left alone: ranges, guesses, what two recipes of the section pour. Said by `:pour[…]`, it can never disagree.",
    bad: prose("25 ml"),
    good: prose("twenty-two and a half millilitres"),
  },
  *check(house, entry) {
    const said = pouredInProse(house, entry);
    if (said.length === 0 || !bookOfChapter(house, entry)) return;
    const style = styleOf(house, house.scopeOf(entry));
    for (const one of said) {
      const { line, amount, drink, name, pours } = one;
      const [pour, ...more] = pours;
      if (!pour || pours.some((each) => agrees(each, amount, style))) continue;
      // Of two pours of the same thing, either may be meant, and so may both together.
      if (more.length > 0) continue;
      const right = spoken(pour, style, systemOf(amount.unit) ?? style.systems[0]);
      const place = { line, start: amount.start, end: amount.end };
      yield {
        place,
        what: `The text says ${textAt(entry, one)} of ${name}, and ${drink.name!.text} pours ${right}.`,
        todo: "Change one of the two, or let the text say what the recipe pours.",
        fixes: () => [
          { title: `Say what ${drink.name!.text} pours`, safe: false, edits: [{ entry, ...place, text: directiveFor(one, style) }] },
          ...inTheSameForm(entry, one, style, pour),
        ],
      };
    }
  },
};

function textAt({ lines }: Entry, { line, amount }: PouredInProse): string {
  return lines[line]!.text.slice(amount.start, amount.end);
}

/** Whether a sentence says what a recipe pours: exactly, or as it is printed. What cannot be compared is no disagreement. */
function agrees(pour: Poured, { value, unit }: ProseAmount, style: BookStyle): boolean {
  const { quantity } = pour;
  const poured = quantity?.unit?.unit;
  if (!quantity || !poured || quantity.value === undefined || quantity.upTo !== undefined || quantity.about) return true;
  if (unit.bar || poured.bar) return unit.id !== poured.id || quantity.value === value;
  if (unit.g && poured.g) return near(value * unit.g, quantity.value * poured.g, 0.01);
  if (!unit.ml || !(poured.ml || pour.part)) return true;
  const said = value * (unit.id === "oz" ? style.ounceMl : unit.ml);
  if (poured.ml && near(said, quantity.value * mlOf(poured, style), 0.005)) return true;
  const printed = printedAmount(pour, style, systemOf(unit) ?? "US");
  const asPrinted = printed && mlOfPrinted(printed, style);
  return asPrinted !== undefined ? near(said, asPrinted, 0.005) : !poured.ml;
}

function near(one: number, other: number, share: number): boolean {
  return Math.abs(one - other) <= share * Math.abs(other);
}

function directiveFor({ amount, drink, name }: PouredInProse, style: BookStyle): string {
  const system: System = systemOf(amount.unit) ?? style.systems[0];
  const attributes = [
    `in="${drink.name!.text}"`,
    ...(style.numbers === amount.form ? [] : [amount.form]),
    ...(system === style.systems[0] ? [] : [`units=${system}`]),
  ];
  return `:pour[${name}]{${attributes.join(" ")}}`;
}

function inTheSameForm(entry: Entry, { line, amount }: PouredInProse, style: BookStyle, pour: Poured): Fix[] {
  const text = spoken(pour, style, systemOf(amount.unit) ?? style.systems[0], amount.form);
  return text ? [{ title: `Write “${text}”`, safe: false, edits: [{ entry, line, start: amount.start, end: amount.end, text }] }] : [];
}
