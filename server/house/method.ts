/** A method's steps: technique, then time, number, temperature or ice in any order. What no table knows is prose. */
import type { Entry, Item, Quantity, Words } from "../../grammar/tree.ts";
import type { IcePlan, Uncertain } from "../engine/plan.ts";
import type { Technique } from "../engine/technique.ts";
import { findTechnique } from "../engine/techniques.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import type { Declaration, Scope } from "./scope.ts";
import { celsiusOf, counted, isWrong, readQuantity, readTemperature, spreadOf, times } from "./values.ts";

export interface Step {
  readonly item: Item;
  /** Absent: prose, kept and printed, changing no number. */
  readonly technique?: Technique;
  readonly seconds?: Uncertain;
  /** The ice that the step names. */
  readonly ice?: IceFacts;
  /** The drink is strained or built over ice. */
  readonly over: boolean;
  /** `pre-dilute 25 %` is 0.25. */
  readonly share?: Uncertain;
  /** The temperature that the drink is brought to. */
  readonly temperatureC?: Uncertain;
  /** Volumes of carbon dioxide. */
  readonly volumes?: number;
  /** It is the glass that is warmed or cooled: `warm the mug`. */
  readonly toGlass?: boolean;
}

export interface IceFacts {
  readonly name: string;
  readonly plan: IcePlan;
  /** The weight of one piece. */
  readonly pieceG?: Uncertain;
}

export const secondsIn: Record<string, number> = { s: 1, min: 60, hour: 3600, day: 86400, week: 604800, month: 2629800 };

/** The steps of a `method`, read once for its entry and for every riff that inherits it. */
export function stepsOf(house: House, { entry, line, field }: FieldAt): readonly Step[] {
  return house.recall(entry, `steps on line ${line}`, () => {
    const scope = house.scopeOf(entry);
    return field.items.map((item) => readStep(house, scope, item));
  });
}

function readStep(house: House, scope: Scope, item: Item): Step {
  const technique = techniqueOf(item.text);
  const quantities = item.parts.flatMap((part) => part.quantities);
  const seconds = secondsOf(quantities, technique);
  const named = iceNamedIn(item);
  const ice = named ? iceIn(house, scope, named, quantities) : undefined;
  const share = technique?.dilutes ? shareIn(quantities) : undefined;
  const temperatureC = technique?.brings ? temperatureIn(quantities) : undefined;
  const volumes = quantities.find(({ unit }) => unit?.unit.id === "vol")?.value;
  return {
    item,
    over: named !== undefined && named.word !== "with" && (ice !== undefined || /\b(?:ice|cubes?|rocks)\b/i.test(named.text)),
    ...(technique && { technique }),
    ...(seconds && { seconds }),
    ...(ice && { ice }),
    ...(share && { share }),
    ...(temperatureC && { temperatureC }),
    ...(volumes !== undefined && { volumes }),
    ...(technique?.brings && glassWords.test(item.text) && { toGlass: true }),
  };
}
const glassWords = /\b(?:glass(?:es)?|mugs?|cups?|coupes?|tumblers?|goblets?)\b/i;

/** What is timed by hand is right to a tenth, so many times to a fifth: practice, no source. */
function secondsOf(quantities: readonly Quantity[], technique: Technique | undefined): Uncertain | undefined {
  const time = quantities.find(({ unit }) => unit?.unit.dimension === "time");
  if (time)
    return scaled(
      spreadOf(time, (value) => 0.1 * value, "how long it takes, timed by hand"),
      secondsIn[time.unit!.unit.id] ?? 1,
    );
  const roundS = technique?.chill?.roundS;
  const times = roundS && quantities.find(({ unit }) => unit?.unit.id === "times");
  return times
    ? scaled(
        spreadOf(times, (value) => 0.2 * value, "how long so many times take, practice"),
        roundS,
      )
    : undefined;
}

function shareIn(quantities: readonly Quantity[]): Uncertain | undefined {
  const percent = quantities.find(({ unit }) => unit?.unit.id === "%");
  return scaled(percent && spreadOf(percent, (value) => 0.01 * value, "water as measured in a jug"), 0.01);
}

function temperatureIn(quantities: readonly Quantity[]): Uncertain | undefined {
  const degrees = quantities.find(({ unit }) => unit?.unit.dimension === "temperature");
  return degrees && celsiusOf(degrees, "the temperature stated in the method");
}

function scaled(known: Uncertain | undefined, by: number): Uncertain | undefined {
  return known && times(known, by);
}

/** The technique that the step's first words name, the longest reading first: `dry shake 10 s` is not a `dry`. */
export function techniqueOf(text: string): Technique | undefined {
  return techniqueWords(text)?.technique;
}

/** The same with those words as they are written. */
export function techniqueWords(text: string): { readonly technique: Technique; readonly words: string } | undefined {
  const words = text.split(/\s+/);
  for (let count = Math.min(words.length, longestTechnique); count > 0; count--) {
    const technique = findTechnique(words.slice(0, count).join(" "));
    if (technique) return { technique, words: words.slice(0, count).join(" ") };
  }
  return undefined;
}

/** Words in the longest name of a technique (`reverse dry shake`), with one to spare. */
const longestTechnique = 4;

interface IceNamed extends Words {
  readonly word: "with" | "over" | "on" | "without";
}

/** What follows `with`, `over` or `on`, up to a comma; `without ice` is none of it. */
export function iceNamedIn({ parts }: Item): IceNamed | undefined {
  for (const part of parts) {
    const match = /\b(with|over|on|without)\s+(.*)$/i.exec(part.text);
    if (match)
      return { word: match[1]!.toLowerCase() as IceNamed["word"], text: match[2]!, start: part.end - match[2]!.length, end: part.end };
  }
  return undefined;
}

/** The declared ice that a step names, and where its name stands in it. */
export function iceNameIn(house: House, scope: Scope, item: Item): (Words & { readonly found: Declaration }) | undefined {
  const named = iceNamedIn(item);
  if (!named || named.word === "without") return undefined;
  const own = item.parts.flatMap(({ quantities }) => quantities).filter(({ start }) => start >= named.start);
  const text = nameAmong(named, own);
  const offset = named.text.indexOf(text);
  const found = readings(text)
    .map((reading) => house.lookup(scope, "ice", reading)[0])
    .find(Boolean);
  return found && offset >= 0 ? { text, start: named.start + offset, end: named.start + offset + text.length, found } : undefined;
}

/** `cracked` is cracked ice, `cubes` may be called so. */
function readings(name: string): string[] {
  return [name, `${name} ice`, name.replace(/ ice$/i, "")];
}

/** `120 g crushed ice`, `cracked ice at -5 C`, `2 large cubes`, `a block`. */
function iceIn(house: House, scope: Scope, named: IceNamed, quantities: readonly Quantity[]): IceFacts | undefined {
  if (named.word === "without") return /^(?:any )?ice$/i.test(named.text) ? noIce : undefined;
  const own = quantities.filter(({ start }) => start >= named.start);
  const facts = readings(nameAmong(named, own))
    .map((name) => iceFacts(house, scope, name))
    .find(Boolean);
  if (!facts) return undefined;
  const massG = weightOf(own, facts);
  const temperatureC = own.find(({ unit }) => unit?.unit.dimension === "temperature");
  const statedC = temperatureC && celsiusOf(temperatureC, "the temperature of the ice, as stated");
  return { ...facts, plan: { ...facts.plan, ...(massG && { massG }), ...(statedC && { temperatureC: statedC }) } };
}

/** The name without the amounts that stand around it: of a count only the number goes, for `cubes` may be the name. */
function nameAmong({ text, start }: IceNamed, quantities: readonly Quantity[]): string {
  let rest = text;
  for (const quantity of quantities.toReversed()) {
    const { end } = isCount(quantity) ? quantity.numeral : quantity;
    rest = rest.slice(0, quantity.start - start) + rest.slice(end - start);
  }
  return rest
    .replace(/^\s*(?:(?:an?|one|fresh|of)\s+)*/i, "")
    .replace(/\s+(?:at|for)\s*$/i, "")
    .trim();
}

function isCount({ unit }: Quantity): boolean {
  return !unit || unit.unit.dimension === "piece";
}

function weightOf(quantities: readonly Quantity[], { pieceG }: IceFacts): Uncertain | undefined {
  const weight = quantities.find(({ unit }) => unit?.unit.dimension === "mass");
  if (weight)
    return scaled(
      spreadOf(weight, (value) => 0.05 * value, "the ice as weighed"),
      weight.unit!.unit.g!,
    );
  const volume = quantities.find(({ unit }) => unit?.unit.dimension === "volume" && unit.unit.ml);
  if (volume)
    return scaled(
      spreadOf(volume, (value) => 0.2 * value, "how much ice fills a measure, practice"),
      volume.unit!.unit.ml! * looseGPerMl,
    );
  const count = pieceG && quantities.find(isCount);
  return count && counted(count, pieceG);
}

/** Pieces of ice with the air between them, g in a ml: practice, no source. */
const looseGPerMl = 0.58;

export const noIce: IceFacts = {
  name: "no ice",
  plan: { kind: "cubed", massG: { value: 0, u: 0, why: "no ice" }, temperatureC: { value: 0, u: 0, why: "no ice" } },
};

/** Of ice whose entry states no temperature. */
export const wellIceC: Uncertain = { value: -1, u: 1, why: "ice as taken from the well, practice" };

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
    plan: { kind, temperatureC: read && !isWrong(read) ? read.value : wellIceC },
    ...(piece && { pieceG: piece }),
  };
}
