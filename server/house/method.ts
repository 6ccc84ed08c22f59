/** A method's steps: technique, then time, number, temperature or ice in any order. What no table knows is prose. */
import type { Entry, FieldLine, Item, Quantity } from "../../grammar/tree.ts";
import type { IcePlan, Technique, Uncertain } from "../engine/plan.ts";
import { findTechnique } from "../engine/techniques.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import type { Scope } from "./scope.ts";
import { isWrong, readQuantity, readTemperature, spreadOf } from "./values.ts";

export interface Step {
  readonly item: Item;
  /** Absent: prose, kept and printed, changing no number. */
  readonly technique?: Technique;
  readonly seconds?: number;
  /** The ice that the step names. */
  readonly ice?: IceFacts;
  /** The drink is strained or built over that ice. */
  readonly over: boolean;
}

export interface IceFacts {
  readonly name: string;
  readonly plan: IcePlan;
  /** The weight of one piece. */
  readonly pieceG?: Uncertain;
}

const secondsIn: Record<string, number> = { s: 1, min: 60, hour: 3600, day: 86400, week: 604800, month: 2629800 };

export function readMethod(house: House, scope: Scope, method: FieldLine): Step[] {
  return method.items.map((item) => readStep(house, scope, item));
}

function readStep(house: House, scope: Scope, item: Item): Step {
  const technique = techniqueOf(item.text);
  const quantities = item.parts.flatMap((part) => part.quantities);
  const time = quantities.find((quantity) => quantity.unit?.unit.dimension === "time");
  const seconds =
    time?.value === undefined ? undefined : ((time.value + (time.upTo ?? time.value)) / 2) * (secondsIn[time.unit!.unit.id] ?? 1);
  const named = /\b(with|over|on)\s+(.*)$/i.exec(item.text);
  const ice = named ? iceIn(house, scope, named[2]!, quantities) : undefined;
  return {
    item,
    over: named?.[1]?.toLowerCase() === "over" || named?.[1]?.toLowerCase() === "on",
    ...(technique && { technique }),
    ...(seconds !== undefined && { seconds }),
    ...(ice && { ice }),
  };
}

/** The technique that the step's first words name, the longest reading first: `dry shake 10 s` is not a `dry`. */
function techniqueOf(text: string): Technique | undefined {
  const words = text.split(/\s+/);
  for (let count = Math.min(words.length, longestTechnique); count > 0; count--) {
    const technique = findTechnique(words.slice(0, count).join(" "));
    if (technique) return technique;
  }
  return undefined;
}

/** Words in the longest name of a technique (`reverse dry shake`), with one to spare. */
const longestTechnique = 4;

/** `120 g crushed ice`, `cracked ice`, `large cube`, `a block`. */
function iceIn(house: House, scope: Scope, text: string, quantities: readonly Quantity[]): IceFacts | undefined {
  const name = text
    .replace(/^(?:about\s+)?[\d.]+\s*\S+\s+/, "")
    .replace(/^(?:an?|fresh|one)\s+/i, "")
    .trim();
  const facts = iceFacts(house, scope, name) ?? iceFacts(house, scope, `${name} ice`) ?? iceFacts(house, scope, name.replace(/ ice$/i, ""));
  const weight = quantities.find((quantity) => quantity.unit?.unit.dimension === "mass");
  const massG = weight && spreadOf(weight, (value) => 0.05 * value, "the ice as weighed");
  if (!facts || !massG) return facts;
  const grams = weight.unit!.unit.g!;
  return { ...facts, plan: { ...facts.plan, massG: { ...massG, value: massG.value * grams, u: massG.u * grams } } };
}

/** What is known of an ice by its name; absent where none of that name is declared. */
export function iceFacts(house: House, scope: Scope, name: string): IceFacts | undefined {
  const entry = house.lookup(scope, "ice", name)[0]?.entry;
  return entry && house.recall(entry, "ice", () => readIce(entry, name));
}

function readIce(entry: Entry, name: string): IceFacts {
  const kinds = ["cubed", "cracked", "crushed", "large cube", "block"] as const;
  const text = findFieldIn(entry, "kind")?.field.value?.text.toLowerCase();
  const kind = kinds.find((one) => one === text) ?? kinds.find((one) => (entry.name?.text ?? name).toLowerCase().includes(one)) ?? "cubed";
  const temperature = findFieldIn(entry, "temperature");
  const read = temperature && readTemperature(temperature.field, "-1 C", `the temperature of ${name}`);
  const weight = findFieldIn(entry, "weight");
  const weightRead = weight && readQuantity(weight.field, "25 g");
  const grams = weightRead && !isWrong(weightRead) ? weightRead.value : undefined;
  const piece = grams && spreadOf(grams, (value) => 0.1 * value, `one piece of ${name}`);
  return {
    name,
    plan: { kind, temperatureC: read && !isWrong(read) ? read.value : { value: -1, u: 1, why: "ice as taken from the well, practice" } },
    ...(piece && { pieceG: piece }),
  };
}
