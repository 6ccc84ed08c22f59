/**
 * What is known of a bought ingredient. A figure that the entry leaves out is taken from the parent
 * house's entry of the same name, then the larder's, then the larder's generic entry for its kind,
 * and is then marked as assumed. What nobody states stays unknown.
 */
import { type StockKind, stockKinds } from "../../grammar/fields.ts";
import type { Entry } from "../../grammar/tree.ts";
import type { Content, Known, StockModel, SugarName, Uncertain } from "../engine/plan.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { fold } from "./names.ts";
import { type Prices, pricesOf } from "./prices.ts";
import { amountOfBarMeasure } from "./settings.ts";
import { type ContentValue, isNone, isWrong, readContent, readPercent, readQuantity, spreadOf, times } from "./values.ts";

export interface StockFacts {
  readonly entry: Entry;
  readonly name: string;
  readonly kind: StockKind | undefined;
  readonly model: StockModel;
  readonly fizz: boolean;
  readonly stored: string | undefined;
  readonly prices: Prices;
  /** The field of a name in the entry, or where it is taken from. */
  field(name: string): FieldAt | undefined;
  /** The same without what stands for its kind alone. */
  namedField(name: string): FieldAt | undefined;
}

/** What dissolves or is drunk whole counts in the glass; a leaf or a zest does not. */
const solidKinds: ReadonlySet<StockKind> = new Set(["sugar", "acid", "salt", "fruit", "vegetable", "herb", "spice"]);
const inertKinds: ReadonlySet<StockKind> = new Set(["herb", "spice"]);

/** The sugar that a content without a named sugar is, by kind: how sweet it tastes depends on it. */
const usualSugar: Partial<Record<StockKind, SugarName>> = {
  juice: "invert",
  puree: "invert",
  wine: "invert",
  "sparkling wine": "invert",
  "fortified wine": "invert",
  vermouth: "invert",
  cider: "invert",
  fruit: "invert",
  vegetable: "invert",
  honey: "invert",
  dairy: "lactose",
  beer: "maltose",
};

export function stockFacts(house: House, entry: Entry): StockFacts {
  return house.recall(entry, "stock", () => {
    const chain = chainOf(house, entry);
    const named = [...chain];
    const kind = kindOf(chain);
    if (kind) chain.push(...genericOf(house, entry, kind));
    const field = (name: string) => findIn(chain, name);
    const name = entry.name?.text ?? "";
    const prices = pricesOf(house, entry, name, kind, field);
    return {
      entry,
      name,
      kind,
      field,
      namedField: (name) => findIn(named, name),
      fizz: /^(?:yes|true)$/i.test(field("fizz")?.field.value?.text ?? "") || (kind === "sparkling wine" && !field("fizz")),
      stored: field("stored")?.field.value?.text.toLowerCase(),
      prices,
      model: { ...modelOf(house, entry, name, kind, apart(chain, field)), ...(prices.bulk && { price: prices.bulk }) },
    };
  });
}

/**
 * A nearer entry that states one figure makes further ones of the same thing stale: its own `brix`
 * goes before the larder's `sugar`, and the larder's density is not that of another strength or sugar.
 */
function apart(chain: readonly Entry[], field: (name: string) => FieldAt | undefined): (name: string) => FieldAt | undefined {
  const rank = (at: FieldAt | undefined) => (at ? chain.indexOf(at.entry) : Number.POSITIVE_INFINITY);
  const outranked: Readonly<Record<string, readonly string[]>> = {
    sugar: ["brix"],
    brix: ["sugar"],
    density: ["abv", "sugar", "brix"],
  };
  return (name) => {
    const at = field(name);
    return outranked[name]?.some((other) => rank(field(other)) < rank(at)) ? undefined : at;
  };
}

/** A leaf, a zest or a spice brings taste and no liquid to speak of. */
export function isInert(facts: StockFacts): boolean {
  return facts.kind !== undefined && inertKinds.has(facts.kind);
}

/** How large one of a bar measure of this stock is, where the stock or what stands behind it says so. */
export function ownBarMeasure(facts: StockFacts, unit: string, ounceMl: number): Uncertain | undefined {
  return unit === "dash" || unit === "drop" ? amountOfBarMeasure(facts.field(unit), unit, ounceMl) : undefined;
}

function findIn(chain: readonly Entry[], name: string): FieldAt | undefined {
  for (const entry of chain) {
    const found = findFieldIn(entry, name);
    if (found) return found;
  }
  return undefined;
}

function chainOf(house: House, entry: Entry): Entry[] {
  const chain = [entry];
  const name = entry.name?.text;
  if (!name) return chain;
  for (let scope = house.scopeOf(entry).parent; scope; scope = scope.parent) {
    for (const { entry: other } of house.lookup(scope, "ingredient", name)) {
      if (other.kind === "stock" && !chain.includes(other)) chain.push(other);
    }
  }
  return chain;
}

function kindOf(chain: readonly Entry[]): StockKind | undefined {
  for (const entry of chain) {
    const text = findFieldIn(entry, "kind")?.field.value?.text.toLowerCase();
    const kind = stockKinds.find((one) => one === text);
    if (kind) return kind;
  }
  return undefined;
}

function genericOf(house: House, entry: Entry, kind: StockKind): Entry[] {
  const found = house.lookup(house.scopeOf(entry), "ingredient", kind).filter((one) => house.isLarder(one.entry) && !one.alias);
  return found.map((one) => one.entry).filter((one) => one !== entry && fold(one.name?.text ?? "") === fold(kind));
}

function modelOf(
  house: House,
  entry: Entry,
  name: string,
  kind: StockKind | undefined,
  field: (name: string) => FieldAt | undefined,
): StockModel {
  const reason = (at: FieldAt) => (at.entry === entry && !house.isLarder(entry) ? `stated for ${name}` : sourceOf(house, at, name));
  const marked = <T extends Uncertain>(at: FieldAt, value: T): T =>
    at.entry === entry && !house.isLarder(entry) ? value : { ...value, assumed: true };
  const unknown = (what: string): Known => ({ because: `the ${what} of ${name || "this stock"} is not given` });

  const abv = field("abv");
  const abvRead = abv && readPercent(abv.field, "40 %", reason(abv));
  const contents = (fieldName: string): ContentValue[] | undefined => {
    const at = field(fieldName);
    if (!at) return undefined;
    if (isNone(at.field)) return [];
    const read = readContent(at.field, "2.5 g/100 ml", reason(at));
    return isWrong(read) ? undefined : read.value.map((one) => ({ ...one, amount: marked(at, one.amount) }));
  };
  const single = (fieldName: string, what: string, absent: Known): Content => {
    const found = contents(fieldName);
    if (found === undefined) return { amount: field(fieldName) ? unknown(what) : absent, per: "100 ml" };
    return found[0] ? { amount: found[0].amount, per: found[0].per } : { amount: nothing, per: "100 ml" };
  };
  const density = field("density");
  const densityRead = density && readQuantity(density.field, "1.04 g/ml");
  const densityValue =
    densityRead && !isWrong(densityRead) ? spreadOf(densityRead.value, (value) => 0.005 * value, reason(density!)) : undefined;
  const acids = contents("acid");
  return {
    type: "stock",
    name,
    solid: kind !== undefined && solidKinds.has(kind),
    abvPct: abv && abvRead && !isWrong(abvRead) ? marked(abv, abvRead.value) : unknown("strength"),
    sugars: sugarsOf(contents("sugar"), field("brix"), kind, unknown("sugar"), reason, marked),
    acids: acids
      ? acids.map(({ amount, per, acid, titrated }) => ({ amount, per, acid: acid ?? "citric", titrated: titrated || !acid }))
      : [{ amount: unknown("acid"), per: "100 ml", acid: "citric", titrated: true }],
    salt: single("salt", "salt", nothing),
    ...solidsAndFat(single("solids", "other solids", unknown("other solids")), single("fat", "fat", unknown("fat")), field("solids")),
    caffeineMg: inMilligrams(single("caffeine", "caffeine", unknown("caffeine"))),
    ...(densityValue && { densityGPerMl: marked(density!, densityValue) }),
  };
}

/** Solids from an entry that says nothing of fat hold the fat too, wherever that is known from. */
function solidsAndFat(solids: Content, fat: Content, solidsAt: FieldAt | undefined): { solids: Content; fat: Content } {
  const [all, of] = [solids.amount, fat.amount];
  if (!solidsAt || findFieldIn(solidsAt.entry, "fat") || "because" in all || "because" in of || solids.per !== fat.per)
    return { solids, fat };
  const value = Math.min(of.value, all.value);
  return { solids: { ...solids, amount: { ...all, value: all.value - value } }, fat: { ...fat, amount: { ...of, value } } };
}

/** Salt that nobody states is taken to be none: what holds it says so on its label. */
const nothing: Uncertain = { value: 0, u: 0, why: "none stated" };

function inMilligrams(content: Content): Content {
  const { amount } = content;
  if ("because" in amount) return content;
  return { ...content, amount: times(amount, 1000) };
}

function sugarsOf(
  stated: readonly ContentValue[] | undefined,
  brix: FieldAt | undefined,
  kind: StockKind | undefined,
  unknown: Known,
  reason: (at: FieldAt) => string,
  marked: <T extends Uncertain>(at: FieldAt, value: T) => T,
): StockModel["sugars"] {
  const usual = (kind && usualSugar[kind]) ?? "sucrose";
  if (stated) return stated.map(({ amount, per, sugar }) => ({ amount, per, sugar: sugar ?? usual }));
  const read = brix && readQuantity(brix.field, "66");
  if (brix && read && !isWrong(read)) {
    const value = spreadOf(read.value, () => 0.5, reason(brix));
    if (value) return [{ amount: marked(brix, value), per: "100 g", sugar: usual }];
  }
  return [{ amount: unknown, per: "100 ml", sugar: usual }];
}

function sourceOf(house: House, at: FieldAt, name: string): string {
  const from = at.entry.name?.text ?? "";
  if (!house.isLarder(at.entry)) return `stated for ${from} in the house above`;
  return fold(from) === fold(name) ? `the larder's ${from}` : `the larder's figure for any ${from}`;
}
