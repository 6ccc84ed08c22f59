/** `aged rum +10 %`, `aged rum 24.00 per 700 ml`: a house in which one price is another, all else being as it is. */
import { readLine } from "../../grammar/line.ts";
import { makeTree, read } from "../../grammar/read.ts";
import type { Entry, FieldLine } from "../../grammar/tree.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { askFor, nearestNames } from "./nearest.ts";
import type { Declaration, Scope } from "./scope.ts";
import { stockFacts } from "./stock.ts";
import { isNone, isWrong, readPrice } from "./values.ts";

export interface Supposed {
  readonly house: House;
  readonly stock: string;
  /** As prices are written; absent where there is none yet. */
  readonly before: string | undefined;
  readonly after: string;
}

export interface NotSupposed {
  readonly problem: string;
  readonly todo: string;
}

const example = "Write a stock and its change or its new price, such as `aged rum +10 %` or `aged rum 24.00 per 700 ml`.";

/** The house with that price in the place of the stock's or the ice's own. */
export function supposePrice(house: House, scope: Scope, text: string): Supposed | NotSupposed {
  const named = namedIn(house, scope, text.trim());
  if (!named) {
    const [, name = ""] = /^(.*?)\s*(?:[-+−]?\s?[\d.,]+.*)?$/.exec(text.trim()) ?? [];
    const near = name ? nearestNames(house, scope, "ingredient", name) : [];
    return { problem: `“${text}” names no stock that is known here.`, todo: askFor(near, example) };
  }
  const { entry, rest } = named;
  const name = entry.name?.text ?? "";
  if (entry.kind !== "stock" && entry.kind !== "ice")
    return { problem: `${name} is made here, so it has no price of its own.`, todo: "Name what goes into it." };
  const at = entry.kind === "stock" ? stockFacts(house, entry).field("price") : findFieldIn(entry, "price");
  const before = at && !isNone(at.field) ? at.field.value?.text : undefined;
  const after = newPrice(name, before, rest);
  if (typeof after !== "string") return after;
  if (house.isLarder(entry) && !at)
    return { problem: `${name} is the larder's, and the house does not buy it.`, todo: `Write a \`stock ${name}\` for the house first.` };
  return { house: withPrice(house, entry, at, after), stock: name, before, after };
}

/** The longest name that a text starts with, and what stands behind it. */
function namedIn(house: House, scope: Scope, text: string): (Pick<Declaration, "entry"> & { readonly rest: string }) | undefined {
  const words = text.split(/\s+/);
  for (let count = words.length; count > 0; count--) {
    const name = words.slice(0, count).join(" ");
    const found = house.find(scope, "ingredient", name) ?? house.lookup(scope, "ice", name)[0];
    if (found) return { entry: found.entry, rest: words.slice(count).join(" ") };
  }
  return undefined;
}

/** The price as a spec would write it. */
function newPrice(name: string, before: string | undefined, change: string): string | NotSupposed {
  const percent = /^([-+−])\s?(\d+(?:\.\d+)?)\s?%$/.exec(change);
  const old = before === undefined ? undefined : priceIn(before);
  if (percent) {
    if (!old)
      return { problem: `${name} has no price that could change.`, todo: `Give the new one, such as \`${name} 24.00 per 700 ml\`.` };
    const factor = 1 + (percent[1] === "+" ? 1 : -1) * (Number(percent[2]) / 100);
    if (factor < 0) return { problem: `The price of ${name} cannot fall by more than all of it.`, todo: "Give less than 100 %." };
    return withNumber(before!, old.amount * factor);
  }
  const fresh = priceIn(change);
  if (!fresh) return { problem: `“${change}” behind ${name} reads as no change and as no price.`, todo: example };
  if (fresh.per) return change;
  if (old?.per) return withNumber(before!, fresh.amount);
  return { problem: `“${change}” does not say for how much of ${name}.`, todo: `Write it as \`${name} 24.00 per 700 ml\`.` };
}

function priceIn(text: string) {
  const { content } = readLine(`  price: ${text}`);
  const read = content.kind === "field" ? readPrice(content as FieldLine, "26.50 per 700 ml") : undefined;
  return read && !isWrong(read) ? read.value : undefined;
}

/** To the hundredth of a penny: nobody writes a finer price, and none is lost to a rounding. */
function withNumber(price: string, amount: number): string {
  return price.replace(/\d+(?:\.\d+)?/, amount.toFixed(4).replace(/(\.\d\d\d*?)0+$/, "$1"));
}

/** Entry by entry, so that every other one keeps its place, in the blocks of Markdown too. */
function withPrice(house: House, of: Entry, at: FieldAt | undefined, price: string): House {
  const entry = at?.entry ?? of;
  const document = house.getDocumentOf(entry);
  const lines = entry.lines.map(({ text, eol }, line) => {
    if (!at) return line === 0 ? `${text}\n  price: ${price}${eol}` : text + eol;
    if (line !== at.line) return text + eol;
    const { start, end } = at.field.value ?? { start: text.length, end: text.length };
    return `${text.slice(0, start).trimEnd()} ${price}${text.slice(end)}${eol}`;
  });
  const { entries } = document.tree;
  const changed = entries.with(house.getIndexOf(entry), read(lines.join("")).entries[0]!);
  return house.supposing([{ ...document, tree: makeTree(changed) }]);
}
