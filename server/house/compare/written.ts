/** Lines and pours as they are written, without their blanks: what is equal here was not changed by anybody. */
import { sense } from "../../../grammar/sense.ts";
import type { Entry } from "../../../grammar/tree.ts";
import { fold } from "../names.ts";
import type { FlatPour } from "../riff.ts";
import { quantityText } from "../written.ts";

/** Whether two entries say the same: blanks, blank lines and comments aside. */
export function saySame(one: Entry, other: Entry): boolean {
  return one.kind === other.kind && spoken(one) === spoken(other);
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
