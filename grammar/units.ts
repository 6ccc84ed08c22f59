/**
 * The units of the language: one row each, with spelling and size. Parsing, conversion, completion
 * and the reference page read this table; adding a unit is one row.
 *
 * Exact sizes: NIST Handbook 44 App. C and SP 811 (US), UK Weights and Measures Act 1985 (imperial).
 * Bar measures: common practice, no source; a house or a stock may set its own.
 */

export type Dimension = "volume" | "mass" | "part" | "piece" | "temperature" | "share" | "time" | "other";

export interface Unit {
  /** The canonical spelling, as printed. */
  readonly id: string;
  /** Every other spelling that is read, in lower case, without a closing point. */
  readonly also: readonly string[];
  readonly dimension: Dimension;
  /** Millilitres in one, for a volume. */
  readonly ml?: number;
  /** Grams in one, for a mass. */
  readonly g?: number;
  /** Relative standard uncertainty of one as poured by hand; 0 for a measured unit. */
  readonly spread: number;
  /** A pour's amount of it counts things that are not measured with a jigger. */
  readonly bar?: boolean;
  readonly doc: string;
}

const volume = (id: string, ml: number, doc: string, also: string[] = [], spread = 0, bar = false): Unit => ({
  id,
  also,
  dimension: "volume",
  ml,
  spread,
  bar,
  doc,
});
const mass = (id: string, g: number, doc: string, also: string[] = [], spread = 0, bar = false): Unit => ({
  id,
  also,
  dimension: "mass",
  g,
  spread,
  bar,
  doc,
});
const piece = (id: string, doc: string, also: string[] = []): Unit => ({ id, also, dimension: "piece", spread: 0.2, doc });
const other = (id: string, dimension: Dimension, doc: string, also: string[] = []): Unit => ({ id, also, dimension, spread: 0, doc });

/** US fluid ounce: NIST HB 44, exactly 231 in³ / 128. */
export const usOunceMl = 29.5735295625;
/** Imperial fluid ounce: 4.54609 dm³ / 160, Weights and Measures Act 1985. */
export const imperialOunceMl = 28.4130625;

export const units: readonly Unit[] = [
  volume("ml", 1, "Millilitre.", ["millilitre", "millilitres", "milliliter", "milliliters", "mls", "cc"]),
  volume("cl", 10, "Centilitre: 10 ml.", ["centilitre", "centilitres", "centiliter", "centiliters"]),
  volume("dl", 100, "Decilitre: 100 ml.", ["decilitre", "decilitres", "deciliter", "deciliters"]),
  volume("l", 1000, "Litre: 1,000 ml.", ["litre", "litres", "liter", "liters", "lt"]),
  mass("mg", 0.001, "Milligram.", ["milligram", "milligrams"]),
  mass("g", 1, "Gram.", ["gram", "grams", "gr", "gramme", "grammes"]),
  mass("kg", 1000, "Kilogram.", ["kilogram", "kilograms", "kilo", "kilos"]),
  volume("oz", usOunceMl, "Fluid ounce: US 29.5735 ml, unless the house sets `ounce:`.", [
    "fl oz",
    "ounce",
    "ounces",
    "fluid ounce",
    "fluid ounces",
    "floz",
  ]),
  mass("oz wt", 28.349523125, "Avoirdupois ounce, by weight: 28.3495 g.", ["oz weight", "wt oz"]),
  mass("lb", 453.59237, "Avoirdupois pound: 453.592 g.", ["lbs", "pound", "pounds"]),
  volume("tsp", usOunceMl / 6, "US teaspoon: a sixth of a fluid ounce, 4.93 ml.", ["tsps", "teaspoon", "teaspoons"], 0.05),
  volume("tbsp", usOunceMl / 2, "US tablespoon: half a fluid ounce, 14.79 ml.", ["tbsps", "tablespoon", "tablespoons"], 0.05),
  volume("cup", usOunceMl * 8, "US cup: 8 fluid ounces, 236.6 ml.", ["cups"], 0.03),
  volume("pint", usOunceMl * 16, "US pint: 16 fluid ounces, 473.2 ml.", ["pints", "pt"]),
  volume("quart", usOunceMl * 32, "US quart: 32 fluid ounces, 946.4 ml.", ["quarts", "qt"]),
  volume("gallon", usOunceMl * 128, "US gallon: 128 fluid ounces, 3,785.4 ml.", ["gallons", "gal"]),
  volume("dash", 0.8, "One shake of a dasher bottle: 0.6 to 1 ml, common practice.", ["dashes"], 0.25, true),
  volume("drop", 0.05, "One drop: 0.03 to 0.1 ml by liquid and dropper (20 to the ml: pharmacy convention).", ["drops"], 0.3, true),
  volume("barspoon", 5, "One barspoon: 2.5 to 5 ml by make, common practice.", ["barspoons", "bar spoon", "bar spoons", "bsp"], 0.2, true),
  mass("pinch", 0.3, "What two fingers hold: 0.2 to 0.5 g, common practice.", ["pinches"], 0.35, true),
  mass("handful", 8, "A loose handful of leaves: common practice, wide.", ["handfuls"], 0.4, true),
  volume("splash", 7, "A splash: 5 to 10 ml, common practice.", ["splashes"], 0.3, true),
  volume("spray", 0.15, "One press of an atomiser: about 0.15 ml, common practice.", ["sprays", "spritz", "mist"], 0.35, true),
  other("part", "part", "A share of the whole: needs `total:` or `part:` for an amount.", ["parts"]),
  piece("leaf", "One leaf.", ["leaves"]),
  piece("sprig", "One sprig.", ["sprigs"]),
  piece("slice", "One slice.", ["slices"]),
  piece("wedge", "One wedge.", ["wedges"]),
  piece("wheel", "One wheel.", ["wheels"]),
  piece("twist", "One twist of zest.", ["twists"]),
  piece("zest", "One strip of zest.", ["zests"]),
  piece("peel", "One strip of peel.", ["peels"]),
  piece("piece", "One piece.", ["pieces"]),
  piece("clove", "One clove.", ["cloves"]),
  piece("stick", "One stick.", ["sticks"]),
  piece("pod", "One pod.", ["pods"]),
  piece("bunch", "One bunch.", ["bunches"]),
  piece("cube", "One cube.", ["cubes"]),
  piece("bag", "One bag.", ["bags"]),
  piece("can", "One can.", ["cans"]),
  piece("bottle", "One bottle.", ["bottles"]),
  piece("scoop", "One scoop.", ["scoops"]),
  other("%", "share", "Per cent: strength, tax, dilution, waste, margin.", ["percent", "per cent"]),
  other("C", "temperature", "Degrees Celsius.", ["°c", "c", "celsius"]),
  other("F", "temperature", "Degrees Fahrenheit.", ["°f", "f", "fahrenheit"]),
  other("s", "time", "Seconds.", ["sec", "secs", "second", "seconds"]),
  other("min", "time", "Minutes.", ["mins", "minute", "minutes"]),
  other("hour", "time", "Hours.", ["hours", "hr", "hrs", "h"]),
  other("day", "time", "Days.", ["days"]),
  other("week", "time", "Weeks.", ["weeks"]),
  other("month", "time", "Months.", ["months"]),
  other("times", "other", "So many times.", ["time", "x"]),
  other("vol", "other", "Volumes of carbon dioxide.", ["volumes"]),
  other("brix", "other", "Degrees Brix: grams of sugar in 100 g.", ["°bx", "bx", "°brix"]),
  other("g/100 ml", "other", "Grams in 100 ml of the liquid.", ["g/100ml"]),
  other("g/100 g", "other", "Grams in 100 g.", ["g/100g"]),
  other("mg/100 g", "other", "Milligrams in 100 g.", ["mg/100g"]),
  other("mg/100 ml", "other", "Milligrams in 100 ml.", ["mg/100ml"]),
  other("g/l", "other", "Grams in a litre.", []),
  other("g/ml", "other", "Grams in a millilitre.", []),
];

const bySpelling = new Map<string, Unit>();
for (const unit of units) for (const word of [unit.id, ...unit.also]) bySpelling.set(word.toLowerCase(), unit);

/** The unit that a word (or two: `fl oz`) spells; case does not matter, a closing point is read. */
export function findUnit(word: string): Unit | undefined {
  return bySpelling.get(word.toLowerCase().replace(/\.$/, ""));
}
