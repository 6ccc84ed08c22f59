/** What goes into an entry, through preps, drinks poured in drinks, alternatives, garnish and rim; and what is done. */
import type { Entry } from "../../../grammar/tree.ts";
import { isCyclic } from "../../house/cycles.ts";
import type { Place } from "../../house/document.ts";
import { type FieldAt, fieldsIn, findFieldIn } from "../../house/entry.ts";
import { garnishesOf } from "../../house/garnish.ts";
import type { House } from "../../house/house.ts";
import type { Ingredient } from "../../house/ingredient.ts";
import { pouredIn } from "../../house/poured.ts";
import { flatten } from "../../house/riff.ts";
import type { StockFacts } from "../../house/stock.ts";
import { placeOf } from "../places.ts";

/** The line that brings it: of the entry, or of what it is a riff of. */
interface Bringing {
  readonly entry: Entry;
  readonly place: Place;
}

export interface Held extends Bringing {
  /** As it reads in the pour or the garnish. */
  readonly name: string;
  /** All that it goes by, a line each: as written with what stands behind it, as declared, and its other names. */
  readonly names: string;
  /** For a stock. */
  readonly facts?: StockFacts;
  /** As the stock, or a prep that it comes by, states; absent where nobody does. */
  readonly pasteurised?: boolean;
  /** The prep or drink by which it comes. */
  readonly through?: string;
  /** On the drink, not in it. */
  readonly onTop?: boolean;
}

/** Everything that an entry holds and that is no prep or drink itself. */
export function heldIn(house: House, entry: Entry): readonly Held[] {
  return house.recall(entry, "held", () => {
    if (isCyclic(house, entry)) return [];
    return [
      ...pouredIn(house, entry).flatMap((poured) => heldBy(house, poured, poured.name.text, poured.ingredient)),
      ...onTopOf(house, entry),
    ];
  });
}

/** `text` is all that is written of it. */
function heldBy(house: House, { entry, place }: Bringing, text: string, { resolution, facts }: Ingredient): Held[] {
  const found = resolution.found?.entry;
  if (!found || facts) {
    const other = found ? [found.name?.text ?? "", ...(fieldsIn(found).get("aka") ?? []).map(({ field }) => field.value?.text ?? "")] : [];
    const pasteurised = answerIn(facts?.field("pasteurised"));
    return [{ entry, place, name: resolution.text, names: [text, ...other].join("\n"), ...(facts && { facts }), ...pasteurised }];
  }
  const pasteurised = answerIn(findFieldIn(found, "pasteurised"));
  return heldIn(house, found).map((held) => ({ ...held, ...pasteurised, entry, place, through: resolution.text }));
}

function answerIn(at: FieldAt | undefined): { pasteurised?: boolean } {
  const text = at?.field.value?.text;
  return text === undefined ? {} : { pasteurised: /^(?:yes|true)$/i.test(text) };
}

function onTopOf(house: House, entry: Entry): Held[] {
  if (entry.kind !== "drink") return [];
  const flat = flatten(house, entry);
  return garnishesOf(house, house.scopeOf(entry), flat).flatMap(({ field, item, ingredient }): Held[] => {
    const { entry: by, line } = flat.field(field)!;
    const bringing = { entry: by, place: placeOf(line, item) };
    const written = { ...bringing, name: item.parts[0]?.text ?? item.text, names: item.text, onTop: true };
    if (!ingredient) return [written];
    const held = heldBy(house, bringing, item.text, ingredient);
    // A stock goes by what is written, `1 tonka bean, grated`; a prep by what is in it.
    return held.map((one) => ({ ...one, ...(!one.through && { name: written.name }), onTop: true }));
  });
}

export interface Done extends Bringing {
  readonly text: string;
}

/** The steps of the method, inherited ones too, and the entry's own steps in sentences. */
export function doneIn(house: House, entry: Entry): readonly Done[] {
  return house.recall(entry, "done", () => findDone(house, entry));
}

function findDone(house: House, entry: Entry): Done[] {
  const done: Done[] = [];
  const method = entry.kind === "drink" ? flatten(house, entry).field("method") : findFieldIn(entry, "method");
  for (const item of method?.field.items ?? []) done.push({ entry: method!.entry, place: placeOf(method!.line, item), text: item.text });
  let steps = false;
  for (const [line, { content }] of entry.lines.entries()) {
    if (content.kind === "prose" && steps) done.push({ entry, place: placeOf(line, content), text: content.text });
    if (content.kind !== "field") continue;
    steps = content.name.text.toLowerCase() === "steps";
    if (steps && content.value) done.push({ entry, place: placeOf(line, content.value), text: content.value.text });
  }
  return done;
}
