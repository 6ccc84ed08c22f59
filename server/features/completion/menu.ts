/** A menu's lines: the drinks that are not on it yet first, with the price that each states itself. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Entry } from "../../../grammar/tree.ts";
import { findFieldIn, linesOf } from "../../house/entry.ts";
import { menuEntryOf } from "../../house/menu.ts";
import { usageOf } from "../../house/usage.ts";
import { writtenName } from "../../house/write.ts";
import { type Asked, type Group, lineEnd, near, type Offer } from "./offer.ts";

/** `before`: what the line needs in front of the name. */
export function menuLines(asked: Asked, start: number, before = ""): Group {
  const { house, scope, entry, line, behind } = asked;
  const there = new Set<Entry>();
  for (const at of linesOf(entry, "menu")) {
    const drink = at.line === line ? undefined : menuEntryOf(house, scope, at.content)?.entry;
    if (drink) there.add(drink);
  }
  const hasPrice = priceBehind.test(behind);
  const offers: Offer[] = [];
  for (const { entry: drink, name, alias } of house.declarations(scope, "drink")) {
    if (alias) continue;
    const price = hasPrice ? undefined : priceOf(drink);
    offers.push({
      label: name,
      text: [before + writtenName(name), price].filter(Boolean).join(" "),
      kind: CompletionItemKind.Value,
      near: nearOf(drink, there),
      about: { what: "drink", name },
    });
  }
  return { start, until: hasPrice ? priceBehind : lineEnd, offers };
}

const priceBehind = /(?:^|\s)[£$€]?\d[\d.]*\s*(?:\p{L}{3})?\s*(?:\/.*)?$/u;

function nearOf(drink: Entry, there: ReadonlySet<Entry>): number {
  if (there.has(drink)) return near.last;
  const status = findFieldIn(drink, "status")?.field.value?.text.toLowerCase();
  return status === "retired" ? near.larder : status === "draft" ? near.own : near.poured;
}

/** As written, where it is for one serve. */
function priceOf(drink: Entry): string | undefined {
  const serves = findFieldIn(drink, "serves")?.field.items[0]?.parts[0]?.quantity?.value ?? 1;
  const text = findFieldIn(drink, "price")?.field.value?.text;
  return serves === 1 && text && /^[£$€]?\d+(?:\.\d+)?(?: ?[A-Z]{3})?$/.test(text) ? text : undefined;
}

/** The titles of the sections that other menus have. */
export function sectionTitles(asked: Asked, start: number): Group {
  const titles = usageOf(asked.house, asked.scope).words("menu", "section");
  const there = new Set(
    [...linesOf(asked.entry, "section")].flatMap(({ line, content }) => (line === asked.line ? [] : (content.title?.text ?? []))),
  );
  const offers = titles
    .filter(([text]) => !there.has(text) && text !== asked.before.slice(start).trim())
    .map(
      ([text, used]): Offer => ({
        label: text,
        kind: CompletionItemKind.Text,
        near: near.usual,
        used,
        about: { what: "written", name: text },
      }),
    );
  return { start, until: lineEnd, offers };
}
