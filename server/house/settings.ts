/** What the `house` entries set, with the built-in default below them. A sub-house overrides its parent field by field. */
import { type StockKind, stockKinds } from "../../grammar/fields.ts";
import { imperialOunceMl, units, usOunceMl } from "../../grammar/units.ts";
import type { Uncertain } from "../engine/plan.ts";
import { type FieldAt, fieldsIn, findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import type { Scope } from "./scope.ts";
import { isNone, isWrong, onlyPart, readQuantity, readTemperature, spreadOf, times } from "./values.ts";

export const severities = ["off", "hint", "information", "warning", "error"] as const;
export type Severity = (typeof severities)[number];

export interface Settings {
  readonly country: string | undefined;
  readonly currency: string | undefined;
  readonly units: "ml" | "cl" | "oz";
  readonly ounceMl: number;
  /** The house set a pouring ounce of its own: conversions keep ratios exact. */
  readonly pouringOunce: boolean;
  /** The smallest step that is measured, ml. */
  readonly jiggerMl: number;
  /** The unit that the jigger is marked in. */
  readonly jiggerUnit: "ml" | "oz";
  /** The smallest step that is weighed, g. */
  readonly scaleG: number;
  /** One of each bar measure, in ml, or in g for a pinch and a handful. */
  readonly bar: Readonly<Record<string, Uncertain>>;
  readonly ambientC: Uncertain;
  readonly freezerC: Uncertain;
  readonly fridgeC: Uncertain;
  readonly hotC: Uncertain;
  /** The bottle of a pre-mixed drink, ml. */
  readonly bottleMl: number;
  /** The kinds of what is poured, in the order in which they are written; absent where the house does not say. */
  readonly order: readonly (readonly StockKind[])[] | undefined;
  /** The name of the ice where a method names none. */
  readonly ice: string;
  /** Sales tax on a served drink, as a share; absent where the house states none. */
  readonly tax: number | undefined;
  /** Menu prices already hold the tax; absent where the house does not say. */
  readonly pricesWithTax: boolean | undefined;
  /** Share of what is bought that never reaches a glass, where the stock does not say. */
  readonly waste: Uncertain | undefined;
  /** Share of the net price that the ingredients may cost. */
  readonly targetCost: number | undefined;
  /** The most alcohol that one serve holds without a remark, g; absent for no limit. */
  readonly serveLimitG: number | undefined;
  readonly severities: ReadonlyMap<string, Severity>;
}

const practice = "common practice, not set by the house";

export const defaultSettings: Settings = {
  country: undefined,
  currency: undefined,
  units: "ml",
  ounceMl: usOunceMl,
  pouringOunce: false,
  jiggerMl: 2.5,
  jiggerUnit: "ml",
  scaleG: 0.1,
  bar: Object.fromEntries(
    units
      .filter((unit) => unit.bar)
      .map((unit) => [unit.id, { value: unit.ml ?? unit.g!, u: (unit.ml ?? unit.g!) * unit.spread, why: `a usual ${unit.id}` }]),
  ),
  ambientC: { value: 20, u: 2, why: practice, assumed: true },
  freezerC: { value: -18, u: 2, why: practice, assumed: true },
  fridgeC: { value: 4, u: 1.5, why: practice, assumed: true },
  hotC: { value: 85, u: 5, why: practice, assumed: true },
  // The size that spirits are sold in: Directive 2007/45/EC.
  bottleMl: 700,
  order: undefined,
  ice: "cubed ice",
  tax: undefined,
  pricesWithTax: undefined,
  waste: undefined,
  targetCost: undefined,
  // Four UK units of 8 g: a house's own choice, no source.
  serveLimitG: 32,
  severities: new Map(),
};

/** The settings that hold in a scope. */
export function settingsOf(house: House, scope: Scope): Settings {
  house.noteSettings();
  const governing = scope.houses[0];
  if (!governing) return scope.parent ? settingsOf(house, scope.parent) : defaultSettings;
  return house.recall(governing, "settings", () => {
    const above = scope.parent ? settingsOf(house, scope.parent) : defaultSettings;
    return { ...above, ...stated((name) => findFieldIn(governing, name), above), severities: severitiesIn(governing, above) };
  });
}

function stated(find: (name: string) => FieldAt | undefined, above: Settings): Partial<Settings> {
  const text = (name: string) => find(name)?.field.value?.text;
  const found: { -readonly [K in keyof Settings]?: Settings[K] } = {};
  const country = text("country");
  if (country) found.country = country.toUpperCase();
  const currency = text("currency");
  if (currency) found.currency = currency.toUpperCase();
  const unit = text("units")?.toLowerCase();
  if (unit === "ml" || unit === "cl" || unit === "oz") found.units = unit;
  Object.assign(found, ounceOf(find("ounce")));
  const jiggerAt = find("jigger");
  const jigger = amountMl(jiggerAt, found.ounceMl ?? above.ounceMl);
  if (jigger) {
    found.jiggerMl = jigger.value;
    found.jiggerUnit = onlyPart(jiggerAt!.field)?.quantity?.unit?.unit.id === "oz" ? "oz" : "ml";
  }
  const scale = find("scale");
  const scaleRead = scale && readQuantity(scale.field, "0.1 g");
  if (scaleRead && !isWrong(scaleRead) && scaleRead.value.unit?.unit.g && scaleRead.value.value) {
    found.scaleG = scaleRead.value.value * scaleRead.value.unit.unit.g;
  }
  for (const [key, name] of [
    ["ambientC", "ambient"],
    ["freezerC", "freezer"],
    ["fridgeC", "fridge"],
    ["hotC", "hot"],
  ] as const) {
    const at = find(name);
    const read = at && readTemperature(at.field, "4 C", `the house's ${name}`);
    if (read && !isWrong(read)) found[key] = read.value;
  }
  const bar = { ...above.bar };
  for (const name of Object.keys(bar)) {
    const own = amountOfBarMeasure(find(name), name, found.ounceMl ?? above.ounceMl);
    if (own) bar[name] = own;
  }
  found.bar = bar;
  const bottle = amountMl(find("bottle"), found.ounceMl ?? above.ounceMl);
  if (bottle) found.bottleMl = bottle.value;
  if (find("order")) found.order = orderIn(find("order")!);
  const ice = text("ice");
  if (ice) found.ice = ice;
  const prices = text("prices")?.toLowerCase();
  if (prices === "with tax" || prices === "without tax") found.pricesWithTax = prices === "with tax";
  if (find("tax")) found.tax = shareIn(find("tax"))?.value;
  if (find("waste")) found.waste = shareIn(find("waste"));
  if (find("target cost")) found.targetCost = shareIn(find("target cost"))?.value;
  const limit = find("serve limit");
  const limitRead = limit && readQuantity(limit.field, "32 g");
  if (limit && isNone(limit.field)) found.serveLimitG = undefined;
  else if (limitRead && !isWrong(limitRead) && limitRead.value.unit?.unit.id === "g") found.serveLimitG = limitRead.value.value!;
  return found;
}

/** `us`, `imperial`, or so many ml. */
function ounceOf(at: FieldAt | undefined): Pick<Settings, "ounceMl" | "pouringOunce"> | undefined {
  const text = at?.field.value?.text.toLowerCase();
  if (!at || !text) return undefined;
  if (text === "us") return { ounceMl: usOunceMl, pouringOunce: false };
  if (text === "imperial") return { ounceMl: imperialOunceMl, pouringOunce: false };
  const ml = amountMl(at, usOunceMl);
  return ml ? { ounceMl: ml.value, pouringOunce: true } : undefined;
}

/** A share of 1 as stated in per cent, its spread that of its range; absent for `none`, and for all of it and more. */
export function shareIn(at: FieldAt | undefined): Uncertain | undefined {
  const read = at && readQuantity(at.field, "20 %");
  if (!at || !read || isWrong(read)) return undefined;
  const percent = spreadOf(read.value, () => 0, `the ${at.field.name.text.toLowerCase()} as stated`);
  return percent && percent.value >= 0 && percent.value < 100 ? { ...percent, value: percent.value / 100, u: percent.u / 100 } : undefined;
}

function amountMl(at: FieldAt | undefined, ounceMl: number): Uncertain | undefined {
  const read = at && readQuantity(at.field, "2.5 ml");
  if (!read || isWrong(read) || !read.value.unit?.unit.ml) return undefined;
  const { unit } = read.value.unit;
  const size = unit.id === "oz" ? ounceMl : unit.ml!;
  const spread = spreadOf(read.value, (value) => 0.05 * value, "set by the house");
  return spread && spread.value > 0 ? times(spread, size) : undefined;
}

/** A bar measure as a house or a stock sets it (`dash: 0.8 ml`, `pinch: 0.3 g`): a tenth of spread where none is stated. */
export function amountOfBarMeasure(at: FieldAt | undefined, name: string, ounceMl: number): Uncertain | undefined {
  const read = at && readQuantity(at.field, "0.8 ml");
  if (!read || isWrong(read) || !read.value.unit) return undefined;
  const { unit } = read.value.unit;
  const size = unit.id === "oz" ? ounceMl : (unit.ml ?? unit.g);
  const spread = spreadOf(read.value, (value) => 0.1 * value, `the ${name} as set`);
  return size && spread ? times(spread, size) : undefined;
}

/** The order that a field states; absent for `none`. A word that is no kind is left out. */
export function orderIn({ field }: FieldAt): Settings["order"] {
  if (isNone(field)) return undefined;
  const known = ({ text }: { readonly text: string }) => stockKinds.find((kind) => kind === text.toLowerCase()) ?? [];
  return field.items.map(({ parts }) => parts.flatMap(known));
}

function severitiesIn(entry: FieldAt["entry"], above: Settings): ReadonlyMap<string, Severity> {
  const own = fieldsIn(entry).get("severity");
  if (!own) return above.severities;
  const found = new Map(above.severities);
  for (const { field } of own) {
    const [code, level] = onlyPart(field)?.text.toLowerCase().split(/\s+/) ?? [];
    const severity = severities.find((one) => one === level);
    if (code && severity) found.set(code, severity);
  }
  return found;
}
