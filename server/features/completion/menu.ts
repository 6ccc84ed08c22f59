/** A menu's lines: the drinks that are not on it yet first, with the price that each states itself. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Entry } from "../../../grammar/tree.ts";
import { findFieldIn, linesOf } from "../../house/entry.ts";
import { menuEntryOf } from "../../house/menu.ts";
import { plain } from "../../house/names.ts";
import { writtenName } from "../../house/write.ts";
import { type Called, namedFor } from "./names.ts";
import { type Asked, type Group, lineEnd, near, type Offer } from "./offer.ts";

/** `before`: what the line needs in front of the name. */
export function menuLines(asked: Asked, start: number, before = ""): Group {
  const { house, scope, entry, line, behind } = asked;
  const there = new Set<string>();
  for (const at of linesOf(entry, "menu")) {
    const drink = at.line === line ? undefined : menuEntryOf(house, scope, at.content)?.entry;
    if (drink?.name) there.add(plain(drink.name.text));
  }
  const hasPrice = priceBehind.test(behind);
  const nearOf = ({ key, alias }: Called) => (there.has(key) ? near.last : alias ? near.larder : near.poured);
  const { named, isLong } = namedFor(asked, ["drink"], asked.before.slice(start), nearOf, () => 0);
  const offers = named.map(({ called: { name }, near: usual }): Offer => {
    const drink = house.lookup(scope, "drink", name)[0]?.entry;
    const price = hasPrice || !drink ? undefined : priceOf(drink);
    return {
      label: name,
      text: [before + writtenName(name), price].filter(Boolean).join(" "),
      kind: CompletionItemKind.Class,
      near: Math.max(usual, drink ? nearOfStatus(drink) : 0),
      about: { what: "drink", name },
    };
  });
  return { start, until: hasPrice ? priceBehind : lineEnd, offers, isLong };
}

const priceBehind = /(?:^|\s)[£$€]?\d[\d.]*\s*(?:\p{L}{3})?\s*(?:\/.*)?$/u;

function nearOfStatus(drink: Entry): number {
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
  const titles = asked.usage().words("menu", "section");
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
        about: { what: "written", name: text, of: "menu section" },
      }),
    );
  return { start, until: lineEnd, offers };
}
