/** Lines and pours as they are written, without their blanks: what is equal here was not changed by anybody. */
import { sense } from "../../../grammar/sense.ts";
import type { Entry } from "../../../grammar/tree.ts";
import { fold } from "../names.ts";
import type { FlatPour } from "../riff.ts";
import { quantityText } from "../written.ts";

/** Whether two entries say the same: blanks, blank lines and comments aside. */
export function saySame(one: Entry, other: Entry): boolean {
  return one === other || (one.kind === other.kind && spoken(one) === spoken(other));
}

/** Whether two entries are the same to the letter; line breaks and blanks at the ends of lines are no matter. */
export function standAlike(one: Entry, other: Entry): boolean {
  return bareText(one) === bareText(other);
}

/** An entry's lines without what nobody sees: it is the same wherever the entry has moved to. */
export function bareText({ lines }: Entry): string {
  return lines
    .map(({ text }) => text.trimEnd())
    .join("\n")
    .trimEnd();
}

function spoken({ lines }: Entry): string {
  const said = lines.filter(({ content }) => content.kind !== "blank" && content.kind !== "comment");
  return sense(said.map(({ comment: _, ...line }) => line));
}

/** `50 ml aged rum, frozen or 50 ml rye`, names folded. */
export function writtenPour({ lead, quantity, ingredient, modifiers, alternatives }: FlatPour): string {
  const amount = (of: FlatPour["quantity"]) => (of ? quantityText(of) : "");
  const own = [lead?.text, amount(quantity), fold(ingredient.resolution.text), ...modifiers.map(({ text }) => `, ${text}`)];
  const others = alternatives.map((one) => `or ${amount(one.quantity)} ${fold(one.ingredient.resolution.text)}`);
  return [...own, ...others].filter(Boolean).join(" ");
}
