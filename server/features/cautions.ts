/** The usual cautions of a drink or a prep in one line of a hover. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { showList } from "../house/show.ts";
import { cautionsOf } from "../rules/cautions/all.ts";

/** The gravest in full, the others by name, for more is not read at a glance; absent where there is none. */
export function describeCautions(house: House, entry: Entry): string | undefined {
  const [gravest, ...others] = cautionsOf(house, entry);
  if (!gravest) return undefined;
  const names = others.map((line) => line.slice(0, line.indexOf(":")).toLowerCase());
  return `⚠ ${gravest}${names.length > 0 ? ` Also: ${showList(names)}.` : ""}`;
}
