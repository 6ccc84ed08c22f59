/** How a book prints: what its `book` entry says, with the usual below it. */
import type { Entry } from "../../../grammar/tree.ts";
import { usOunceMl } from "../../../grammar/units.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import type { Scope } from "../scope.ts";
import { orderIn, type Settings, settingsOf } from "../settings.ts";
import type { Measure } from "../show.ts";
import { onlyPart } from "../values.ts";

export type System = "metric" | "US";
export type Spelling = "British" | "American";
export type Numbers = "figures" | "words to ten" | "words";
export const indexKinds = ["spirit", "family", "ingredient", "strength"] as const;
export type IndexKind = (typeof indexKinds)[number];

export interface BookStyle {
  /** One or two; prose speaks in the first. */
  readonly systems: readonly [System] | readonly [System, System];
  /** The step that printed ounces are rounded to, in ounces. */
  readonly ounceStep: number;
  /** How large a printed ounce is, ml: the house's pouring ounce, where it has one, keeps every ratio; else the US fluid ounce. */
  readonly ounceMl: number;
  /** How large an ounce is that a spec pours. */
  readonly writtenOunceMl: number;
  /** The kinds of what is poured, in the order of print; absent: as they are written. */
  readonly order: Settings["order"];
  readonly numbers: Numbers;
  readonly method: "sentences" | "steps";
  readonly typeface: "serif" | "sans";
  readonly spelling: Spelling;
  /** What no recipe may lack. */
  readonly required: readonly string[];
  /** Words that shall not stand in the text. */
  readonly avoided: readonly string[];
  readonly glassware: readonly string[];
  readonly tools: readonly string[];
  readonly indexes: readonly IndexKind[];
}

/** The book that a scope belongs to; absent where nobody declares one. */
export function bookIn(house: House, scope: Scope): Entry | undefined {
  return house.booksIn(scope)[0];
}

/** How the book of a scope prints; as usual where there is none. */
export function styleOf(house: House, scope: Scope): BookStyle {
  const book = bookIn(house, scope);
  const settings = settingsOf(house, scope);
  const text = (name: string) => (book && findFieldIn(book, name)?.field.value?.text) ?? "";
  const words = (name: string) =>
    (book && findFieldIn(book, name)?.field.items.flatMap(({ parts }) => parts.map((part) => part.text))) ?? [];
  const one = <T extends string>(name: string, choices: readonly T[]) =>
    choices.find((choice) => choice.toLowerCase() === text(name).toLowerCase()) ?? choices[0]!;
  const step = book && findFieldIn(book, "ounce step");
  const order = book && findFieldIn(book, "order");
  const indexes = indexKinds.filter((kind) => words("indexes").some((word) => word.toLowerCase() === kind));
  return {
    systems: systems[one("units shown", settings.units === "oz" ? ["US first", ...shown] : shown)],
    ounceStep: (step && onlyPart(step.field)?.quantity?.value) || 0.25,
    ounceMl: settings.pouringOunce ? settings.ounceMl : usOunceMl,
    writtenOunceMl: settings.ounceMl,
    order: order ? orderIn(order) : settings.order,
    numbers: one<Numbers>("numbers", ["figures", "words to ten", "words"]),
    method: one("method as", ["sentences", "steps"]),
    typeface: one("typeface", ["serif", "sans"]),
    spelling: one<Spelling>("spelling", settings.country === "US" ? ["American", "British"] : ["British", "American"]),
    required: words("recipes have"),
    avoided: words("avoid"),
    glassware: words("glassware"),
    tools: words("tools"),
    indexes: indexes.length > 0 ? indexes : indexKinds,
  };
}

const systems = {
  "metric first": ["metric", "US"],
  "US first": ["US", "metric"],
  metric: ["metric"],
  US: ["US"],
} as const satisfies Record<string, BookStyle["systems"]>;
const shown = Object.keys(systems) as (keyof typeof systems)[];

/** How amounts of a system are shown by the words of `show.ts`. */
export function measureOf({ ounceMl }: BookStyle, system: System): Measure {
  return { units: system === "US" ? "oz" : "ml", ounceMl };
}
