/** The usual cautions of a drink or a prep in one line of a hover. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { cautionsOf } from "../rules/cautions/all.ts";

/** More of them are not read at a glance. */
const most = 3;

/** The gravest ones; absent where there is none. */
export function describeCautions(house: House, entry: Entry): string | undefined {
  const cautions = cautionsOf(house, entry);
  if (cautions.length === 0) return undefined;
  const more = cautions.length > most ? [`And ${cautions.length - most} more.`] : [];
  return `⚠ ${[...cautions.slice(0, most), ...more].join(" ")}`;
}
