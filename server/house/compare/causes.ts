/** Through what a drink came to something else: the changed things that it is made with, served in and sold by. */
import type { Entry } from "../../../grammar/tree.ts";
import { isCyclic } from "../cycles.ts";
import { garnishesOf } from "../garnish.ts";
import type { House } from "../house.ts";
import { iceNameIn } from "../method.ts";
import { pouredIn } from "../poured.ts";
import { flatten } from "../riff.ts";
import { settingsOf } from "../settings.ts";
import type { ThingCompared } from "./compare.ts";
import type { Houses } from "./pair.ts";

/** The changed things by the entries that they are and were. Those of which only prose is another move nothing. */
export function byEntry(things: readonly ThingCompared[]): ReadonlyMap<Entry, ThingCompared> {
  const moving = things.filter(({ fields, pours, how }) => how !== "changed" || pours !== undefined || fields.some(({ prose }) => !prose));
  return new Map(moving.flatMap((one) => [one.before, one.after].flatMap((entry) => (entry ? [[entry, one] as const] : []))));
}

/** Of either state of a drink, each once, what it is poured from first. */
export function causesOf({ before, after }: Houses, old: Entry, now: Entry, things: ReadonlyMap<Entry, ThingCompared>): ThingCompared[] {
  return [...new Set([...usedIn(before, old), ...usedIn(after, now)].flatMap((entry) => things.get(entry) ?? []))];
}

/** Everything that a drink is made with and held against, down to what is bought, and the houses that govern it. */
function usedIn(house: House, entry: Entry): Entry[] {
  const scope = house.scopeOf(entry);
  const flat = flatten(house, entry);
  const named = (["glass", "family"] as const).flatMap((kind) => {
    const text = flat.field(kind)?.field.value?.text;
    return (text && house.lookup(scope, kind, text.split(",")[0]!.trim())[0]?.entry) || [];
  });
  const steps = flat.field("method")?.field.items ?? [];
  const ice = flat.field("ice")?.field.value?.text ?? settingsOf(house, scope).ice;
  const ices = [...steps.map((item) => iceNameIn(house, scope, item)?.found), ice ? house.lookup(scope, "ice", ice)[0] : undefined];
  const governing: Entry[] = [];
  for (let at: typeof scope | undefined = scope; at; at = at.parent) governing.push(...at.houses);
  return [
    ...chainOf(house, entry),
    ...garnishesOf(house, scope, flat).flatMap(({ ingredient }) => ingredient?.resolution.found?.entry ?? []),
    ...named,
    ...ices.flatMap((found) => found?.entry ?? []),
    ...governing,
  ];
}

/** The stocks, preps and drinks inside an entry, whatever the depth, each once. */
export function chainOf(house: House, entry: Entry, seen = new Set<Entry>()): ReadonlySet<Entry> {
  for (const { ingredient } of pouredIn(house, entry)) {
    const found = ingredient.resolution.found?.entry;
    if (!found || found === entry || seen.has(found)) continue;
    seen.add(found);
    if ((found.kind === "prep" || found.kind === "drink") && !isCyclic(house, found)) chainOf(house, found, seen);
  }
  return seen;
}
