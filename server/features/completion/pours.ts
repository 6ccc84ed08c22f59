/** Inside a pour: units behind its number, the thing's name, the words behind the name; and whole pours at the start of a line. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Pour } from "../../../grammar/tree.ts";
import { findUnit, units } from "../../../grammar/units.ts";
import { namesOf } from "../../house/declarations.ts";
import { findFieldIn } from "../../house/entry.ts";
import { modifiers } from "../../house/modifiers.ts";
import type { NameClass } from "../../house/names.ts";
import { settingsOf } from "../../house/settings.ts";
import { usageOf } from "../../house/usage.ts";
import { writtenName } from "../../house/write.ts";
import { type Named, namedFor, pouredNames, pouringOf } from "./names.ts";
import { type Asked, comma, type Group, inOrder, lineEnd, near, type Offer } from "./offer.ts";
import { temperaturesAt } from "./temperatures.ts";

const pourable: readonly NameClass[] = ["ingredient", "drink"];

/** In a pour that has begun with an amount or with `top`, or has nothing yet. `named`: what may be named, where that is not everything. */
export function inPour(asked: Asked, pour: Pour | undefined, named?: () => readonly Named[]): Group[] {
  const { before } = asked;
  const { name, quantity, lead } = pour ?? {};
  const lastComma = name?.commas.at(-1);
  if (name && lastComma !== undefined) return [...modifiersFrom(asked, lastComma), ...namesWithCommas(asked, name.start)];
  const atNewWord = /\s$/.test(before);
  const start = name ? (name.quoted?.start ?? name.start) : before.length;
  const names = (at = start) => namesAt(asked, at, lead?.text, named);
  if (!quantity) return [names()];
  if (!quantity.unit) return atNewWord || name ? [unitsAt(asked, start), names()] : [unitsAt(asked, start)];
  if (name || atNewWord) return [names()];
  return [unitsAt(asked, quantity.unit.start), names(quantity.unit.start)];
}

/** Names at a column; behind `top` those first that are poured so. */
export function namesAt(asked: Asked, start: number, lead?: string, named = () => namedFor(asked, pourable) as readonly Named[]): Group {
  let found = named();
  const word = lead && /^\w+/.exec(lead)![0].toLowerCase();
  if (word) {
    const usage = usageOf(asked.house, asked.scope);
    found = found.map((one) => ({ ...one, count: usage.led(pouringOf(asked.entry), namesOf(one.declared.entry), word) }));
  }
  return { start, until: comma, offers: pouredNames(found, asked.before.slice(start)) };
}

/** Names that hold a comma themselves, once it is typed. */
function namesWithCommas(asked: Asked, start: number): Group[] {
  const typed = asked.before.slice(start).toLowerCase();
  const named = namedFor(asked, pourable).filter(({ declared: { name } }) => name.includes(",") && name.toLowerCase().startsWith(typed));
  return named.length > 0 ? [{ start, until: lineEnd, offers: pouredNames(named, typed) }] : [];
}

// Units

const unitEnd = /[\s,;]|$/;
const nothing = /(?:)/;
const measured = new Set(["volume", "mass", "part", "piece"]);

export function unitsAt(asked: Asked, start: number): Group {
  return unitGroup(
    asked,
    start,
    units.filter(({ dimension }) => measured.has(dimension)).map(({ id }) => id),
  );
}

/** Units behind a number: the house's own first, then those that it measures in. None where one stands there already. */
export function unitGroup({ house, scope, before, behind }: Asked, start: number, ids: readonly string[]): Group {
  const [, gap = "", next = ""] = /^(\s*)([^\s\d,;]*)/.exec(behind)!;
  if (gap && findUnit(next)) return { start, until: unitEnd, offers: [] };
  // A name that the cursor touches stays, and is no part of the unit.
  const isName = !gap && next !== "" && !findUnit(next) && !findUnit(before.slice(start) + next);
  const usage = usageOf(house, scope);
  const own = settingsOf(house, scope).units;
  const offers = ids.map((id): Offer => {
    const used = usage.unit(id);
    const nearness = id === own ? near.first : used > 0 ? near.usual : near.likely;
    const text = isName ? { text: `${id} ` } : {};
    return { label: id, ...text, kind: CompletionItemKind.Unit, near: nearness, used, about: { what: "unit", name: id } };
  });
  return { start, until: isName ? nothing : unitEnd, offers };
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

/** Where the next word starts. */
export function wordStart(text: string, from: number): number {
  return from + /^\s*/.exec(text.slice(from))![0].length;
}

// Whole pours

/** At the start of a line: what the house pours with the amount it pours most, anything else with an amount to fill in. */
export function wholePours(asked: Asked, start: number): Group {
  const offers = namedFor(asked, pourable).map((named) => wholePour(asked, named));
  return { start, until: comma, offers };
}

function wholePour(asked: Asked, { declared, near, count, amount }: Named): Offer {
  const { name, entry, nameClass } = declared;
  const written = writtenName(name);
  const about = { what: nameClass === "drink" ? "drink" : "ingredient", name } as const;
  const common = { filter: name, kind: CompletionItemKind.Snippet, near, used: count, about };
  if (amount) return { ...common, label: `${amount} ${written}` };
  const { usual, unit } = placeholderFor(asked, entry);
  const snippet = `\${1:${usual}}${unit ? ` ${unit}` : ""} ${written.replace(/[$}\\]/g, "\\$&")}`;
  return { ...common, label: name, ...(written !== name && { text: written }), snippet };
}

/** What to start from by kind, where nothing was poured yet: an amount to fill in, no claim. Practice, no source. */
const placeholders: Readonly<Record<string, { readonly usual: string; readonly unit: string }>> = {
  bitters: { usual: "2", unit: "dashes" },
  egg: { usual: "1", unit: "" },
  fruit: { usual: "1", unit: "" },
  vegetable: { usual: "1", unit: "" },
  herb: { usual: "6", unit: "" },
  sugar: { usual: "5", unit: "g" },
  acid: { usual: "1", unit: "g" },
  salt: { usual: "1", unit: "pinch" },
  spice: { usual: "1", unit: "pinch" },
};
const byUnits = { ml: { usual: "25", unit: "ml" }, cl: { usual: "2.5", unit: "cl" }, oz: { usual: "1", unit: "oz" } } as const;

function placeholderFor({ house, scope }: Asked, entry: Named["declared"]["entry"]) {
  const stated = findFieldIn(entry, "kind") ?? aboveOf(house.lookup(scope, "ingredient", entry.name?.text ?? ""));
  return placeholders[stated?.field.value?.text.toLowerCase() ?? ""] ?? byUnits[settingsOf(house, scope).units];
}

function aboveOf(declarations: readonly Named["declared"][]) {
  return declarations.map(({ entry }) => findFieldIn(entry, "kind")).find(Boolean);
}
