/** How long a drink's makings are good for: the shortest that is stated. It is never worked out from sugar, acid or strength. */
import type { Entry } from "../../grammar/tree.ts";
import { isCyclic } from "./cycles.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { secondsIn } from "./method.ts";
import { flatten } from "./riff.ts";
import { stockFacts } from "./stock.ts";
import { isNone } from "./values.ts";

export interface Keeping {
  /** As it is written: `1 day chilled`. */
  readonly text: string;
  readonly name: string;
  readonly seconds: number;
}

/** The shortest stated `keeps` of what a drink pours, or a prep's or a stock's own; absent where none is stated. */
export function shortestKeeping(house: House, entry: Entry): Keeping | undefined {
  return house.recall(entry, "keeping", () => {
    if (entry.kind !== "drink") return keepingOf(house, entry);
    if (isCyclic(house, entry)) return undefined;
    const found = flatten(house, entry).pours.flatMap(({ ingredient }) => {
      const poured = ingredient.resolution.found?.entry;
      return (poured && shortestKeeping(house, poured)) ?? [];
    });
    return found.sort((one, other) => one.seconds - other.seconds)[0];
  });
}

function keepingOf(house: House, entry: Entry): Keeping | undefined {
  const at = entry.kind === "stock" ? stockFacts(house, entry).namedField("keeps") : findFieldIn(entry, "keeps");
  if (!at || isNone(at.field)) return undefined;
  const seconds = secondsOf(at);
  return seconds === undefined ? undefined : { text: at.field.items[0]!.text, name: entry.name?.text ?? "", seconds };
}

/** The lower end of a range. */
function secondsOf({ field }: FieldAt): number | undefined {
  const time = field.items[0]?.parts.flatMap((part) => part.quantities).find(({ unit }) => unit?.unit.dimension === "time");
  return time?.value === undefined ? undefined : Math.min(time.value, time.upTo ?? time.value) * secondsIn[time.unit!.unit.id]!;
}
