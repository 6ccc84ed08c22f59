/** Inside a pour: units behind its number, the thing's name, the words behind the name. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Pour } from "../../../grammar/tree.ts";
import { modifiers } from "../../house/modifiers.ts";
import type { NameClass } from "../../house/names.ts";
import { type Called, type NearOf, namedFor, pouredNames, pouringOf } from "./names.ts";
import { type Asked, comma, type Group, inOrder, lineEnd, near, type Offer } from "./offer.ts";
import { temperaturesAt } from "./temperatures.ts";
import { unitsAt } from "./units.ts";
import { wordStart } from "./values.ts";

/** What may be poured. */
export const pourable: readonly NameClass[] = ["ingredient", "drink"];

/** In a pour that has begun with an amount or with `top`, or has nothing yet. `nearOf`: what is likelier than its use tells. */
export function inPour(asked: Asked, pour: Pour | undefined, nearOf?: NearOf): Group[] {
  const { before } = asked;
  const { name, quantity, lead } = pour ?? {};
  const lastComma = name?.commas.at(-1);
  if (name && lastComma !== undefined) return [...modifiersFrom(asked, lastComma), ...namesWithCommas(asked, name.start)];
  const atNewWord = /\s$/.test(before);
  const start = name ? (name.quoted?.start ?? name.start) : before.length;
  const names = (at = start) => namesAt(asked, at, lead?.text, nearOf);
  if (!quantity) return [names()];
  if (!quantity.unit) return atNewWord || name ? [unitsAt(asked, start), names()] : [unitsAt(asked, start)];
  if (name || atNewWord) return [names()];
  return [unitsAt(asked, quantity.unit.start), names(quantity.unit.start)];
}

/** Names at a column; behind `top` those first that are poured so. */
function namesAt(asked: Asked, start: number, lead?: string, nearOf?: NearOf): Group {
  const typed = asked.before.slice(start);
  const word = lead && /^\w+/.exec(lead)![0].toLowerCase();
  const usage = asked.usage();
  const led = word ? ({ calls }: Called) => usage.led(pouringOf(asked.entry), calls, word) : undefined;
  const { named, isLong } = namedFor(asked, pourable, typed, nearOf, led);
  return { start, until: comma, offers: pouredNames(named, typed), isLong };
}

/** Names that hold a comma themselves, once it is typed. */
function namesWithCommas(asked: Asked, start: number): Group[] {
  const typed = asked.before.slice(start);
  const { named, isLong } = namedFor(asked, pourable, typed);
  const whole = named.filter(({ called: { name } }) => name.includes(",") && name.toLowerCase().startsWith(typed.toLowerCase()));
  return whole.length > 0 ? [{ start, until: lineEnd, offers: pouredNames(whole, typed), isLong }] : [];
}

// Modifiers

function modifiersFrom(asked: Asked, after: number): Group[] {
  const start = wordStart(asked.before, after + 1);
  const typed = asked.before.slice(start);
  const temperature = temperaturesAt(asked, start);
  if (temperature) return [temperature];
  const there = new Set(`${asked.before.slice(0, start)},${asked.behind}`.split(",").map((part) => part.trim().toLowerCase()));
  const words = modifiers.filter(({ word }) => !there.has(word));
  const offers = words.map(({ word }): Offer => {
    return { label: word, kind: CompletionItemKind.Keyword, near: near.usual, about: { what: "modifier", name: word } };
  });
  const at: Offer = {
    label: "at",
    text: "at ",
    kind: CompletionItemKind.Keyword,
    near: near.likely,
    about: { what: "modifier", name: "at" },
  };
  return [{ start, until: comma, offers: inOrder(typed.includes(" ") ? offers : [...offers, at]) }];
}
