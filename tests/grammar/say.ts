/** What a line says, in one line of plain text, so that tables of readings can be read. */
import { readLine } from "../../grammar/line.ts";
import type { Content, Item, MenuPrice, Name, Pour, Quantity } from "../../grammar/tree.ts";

/** As `pour 50 ml | aged rum, frozen !code`. */
export function say(text: string): string {
  const { content, comment, problem } = readLine(text);
  const parts = [sayContent(content)];
  if (comment) parts.push(`{${comment.text}}`);
  if (problem) parts.push(`!${problem.code}`);
  return parts.join(" ");
}

export function sayQuantity(quantity: Quantity): string {
  const range = quantity.upTo === undefined ? "" : `..${quantity.upTo}`;
  const value = quantity.value === undefined ? "?" : String(Number(quantity.value.toFixed(4)));
  return [quantity.about && "about", value + range, quantity.unit?.unit.id].filter(Boolean).join(" ");
}

export function sayPour(pour: Pour | undefined): string {
  if (!pour) return "nothing";
  const lead = pour.lead && `${pour.lead.text}→${pour.lead.lead}`;
  const amount = pour.quantity ? sayQuantity(pour.quantity) : "-";
  return [pour.turned && "turned", lead, `${amount} | ${sayName(pour.name)}`].filter(Boolean).join(" ");
}

function sayName(name: Name | undefined): string {
  if (!name) return "-";
  return name.quoted ? `[${name.text}]` : name.text;
}

function sayItem(item: Item): string {
  return item.parts
    .map(({ text, quantity, quantities }) => {
      const found = quantities.map((one) => (one === quantity ? `=${sayQuantity(one)}` : sayQuantity(one)));
      return found.length > 0 ? `${text} (${found.join("; ")})` : text;
    })
    .join(" + ");
}

function sayPrice({ amount, currency, label }: MenuPrice): string {
  return [currency?.text, String(amount), label && `'${label.text}'`].filter(Boolean).join(" ");
}

function sayContent(content: Content): string {
  switch (content.kind) {
    case "entry":
      return `entry ${content.entry ?? `?${content.word.text}`} | ${sayName(content.name)}`;
    case "field":
      return `field ${content.name.text} = ${content.items.length > 0 ? content.items.map(sayItem).join(" ; ") : (content.value?.text ?? "-")}`;
    case "pour":
      return `pour ${sayPour(content.pour)}`;
    case "or":
      return `or ${sayPour(content.pour)}`;
    case "swap":
      return `swap ${content.readings.map((reading) => `${sayPour(reading.out)} => ${sayPour(reading.in)}`).join(" / ")}`;
    case "without":
      return `without ${content.all ? "all " : ""}${sayPour(content.pour)}`;
    case "section":
      return `section ${content.title ? sayName(content.title as Name) : "-"}`;
    case "menu": {
      const priced = content.priced;
      const prices = priced && `${sayName(priced.name)} at ${priced.prices.map(sayPrice).join(" & ")}${priced.sure ? "" : " ?"}`;
      return `menu ${sayName(content.whole)}${prices ? ` / ${prices}` : ""}`;
    }
    case "unread":
    case "prose":
      return `${content.kind} ${content.text}`;
    default:
      return content.kind;
  }
}
