/** Behind a number: its unit. */
import { CompletionItemKind } from "vscode-languageserver-types";
import { readLine } from "../../../grammar/line.ts";
import { findUnit, units } from "../../../grammar/units.ts";
import { pourOn } from "../../house/entry.ts";
import { unitText } from "../../house/measurable.ts";
import { settingsOf } from "../../house/settings.ts";
import { type Asked, type Group, near, type Offer } from "./offer.ts";

const unitEnd = /[\s,;]|$/;
const nothing = /(?:)/;
const measured = new Set(["volume", "mass", "part", "piece"]);

/** What a pour is measured in. */
export function unitsAt(asked: Asked, start: number): Group {
  return unitGroup(
    asked,
    start,
    units.filter(({ dimension }) => measured.has(dimension)).map(({ id }) => id),
  );
}

/** Units behind a number: the house's own first, then those that it measures in. None where one stands there already. */
export function unitGroup({ house, scope, usage, before, behind }: Asked, start: number, ids: readonly string[]): Group {
  // In the middle of a number there is nothing to name.
  if (/^[\d.,/½¼¾⅓⅔]/.test(behind)) return { start, until: unitEnd, offers: [] };
  const [, gap = "", next = ""] = /^(\s*)([^\s\d,;]*)/.exec(behind)!;
  if (gap && findUnit(next)) return { start, until: unitEnd, offers: [] };
  // A name that the cursor touches stays, and is no part of the unit.
  const isName = !gap && next !== "" && !findUnit(next) && !findUnit(before.slice(start) + next);
  const own = settingsOf(house, scope).units;
  const amount = pourOn(readLine(before.slice(0, start)).content)?.quantity?.value ?? 1;
  const offers = ids.map((id): Offer => {
    const used = usage().unit(id);
    const nearness = id === own ? near.first : used > 0 ? near.usual : near.likely;
    const unit = findUnit(id);
    const label = unit ? unitText(unit, id, amount) : id;
    const text = isName ? { text: `${label} ` } : {};
    return { label, ...text, kind: CompletionItemKind.Unit, near: nearness, used, about: { what: "unit", name: id } };
  });
  return { start, until: isName ? nothing : unitEnd, offers };
}
