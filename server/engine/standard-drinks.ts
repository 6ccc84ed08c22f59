/**
 * Standard drinks: grams of ethanol that a country counts as one. One row each.
 *
 * Source of most rows: Kalinowski and Humphreys, Addiction 2016 (75 countries, 37 with a definition),
 * as reported in the trade press; the others are national guidance, from memory. Where sources print
 * several figures the row holds the one named and says so.
 */

export interface StandardDrink {
  /** ISO 3166-1 alpha-2. */
  readonly country: string;
  readonly grams: number;
  /** What the country calls it. */
  readonly word: string;
  readonly source: string;
}

const survey = "Kalinowski and Humphreys, Addiction 2016, as reported";
const memory = "national guidance, from memory";

const row = (country: string, grams: number, source: string, word = "standard drink"): StandardDrink => ({ country, grams, word, source });

export const standardDrinks: readonly StandardDrink[] = [
  row("AU", 10, survey),
  row("AT", 20, survey),
  row("CA", 13.45, "national guidance (17.05 ml of ethanol); 13.5 and 13.6 are also printed"),
  row("CH", 10, "10 to 12 g, loosely defined: Addiction 2016, as reported"),
  row("CL", 14, survey),
  row("CN", 10, survey),
  row("DE", 10, survey),
  row("DK", 12, survey),
  row("EE", 10, memory),
  row("ES", 10, memory),
  row("FI", 12, memory),
  row("FR", 10, survey),
  row("GB", 8, survey, "unit"),
  row("HK", 10, "Hong Kong press, 2016"),
  row("HR", 10, "encyclopedia table of standard drinks"),
  row("HU", 17, memory),
  row("IE", 10, survey),
  row("IN", 10, survey),
  row("IS", 8, survey),
  row("IT", 12, memory),
  row("JP", 20, "about 20 g; 19.75 g is also printed"),
  row("LU", 12.8, survey),
  row("NL", 10, memory),
  row("NO", 12, memory),
  row("NZ", 10, survey),
  row("PL", 10, memory),
  row("PT", 10, memory),
  row("SE", 12, memory),
  row("SG", 10, survey),
  row("US", 14, survey),
  row("VN", 10, survey),
];

/** The World Health Organization's AUDIT questionnaire counts in these: for a house without a country. */
export const whoDrink: StandardDrink = row("", 10, "WHO AUDIT questionnaire: Addiction 2016, as reported", "standard drink of 10 g");

const byCountry = new Map(standardDrinks.map((one) => [one.country, one]));

/** What a country counts in; the WHO's 10 g for one that is not listed. */
export function standardDrinkOf(country: string | undefined): StandardDrink {
  return (country && byCountry.get(country)) || whoDrink;
}
