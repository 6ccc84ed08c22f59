/**
 * Standard drinks: how much ethanol a country counts as one. One row each.
 *
 * Sources disagree, and not all are laws. Most rows are from a survey of 75 countries, of which 37 have a
 * definition; where it prints a range or other sources another figure, the row says which is taken. The
 * United Kingdom defines its unit by volume (units = % vol × ml ÷ 1000): 10 ml, of which the usual 8 g is
 * a rounding, so its row is 10 ml at 20 °C.
 */
import { ethanolDensity } from "./ethanol-water.ts";

export interface StandardDrink {
  /** ISO 3166-1, two letters. */
  readonly country: string;
  /** Of ethanol. */
  readonly grams: number;
  /** One of them, as people there call it; `s` makes it several. */
  readonly word: string;
  readonly source: string;
}

const survey = "Kalinowski and Humphreys, Addiction 2016, as reported in the trade press";
const memory = "national guidance, from memory";

export const standardDrinks: readonly StandardDrink[] = [
  row("AT", 20, "Austrian", survey),
  row("AU", 10, "Australian", survey),
  row("CA", 13.45, "Canadian", "17.05 ml of ethanol; 13.5 and 13.6 g are also printed"),
  row("CH", 10, "Swiss", `10 to 12 g, loosely defined, the lower end taken: ${survey}`),
  row("CL", 14, "Chilean", survey),
  row("CN", 10, "Chinese", survey),
  row("DE", 10, "German", survey),
  row("DK", 12, "Danish", survey),
  row("EE", 10, "Estonian", memory),
  row("ES", 10, "Spanish", memory),
  row("FI", 12, "Finnish", memory),
  row("FR", 10, "French", survey),
  {
    ...row("GB", (10 * ethanolDensity) / 1000, "UK", "10 ml of ethanol: United Kingdom guidance, as taught by the Open University"),
    word: "UK unit",
  },
  row("HK", 10, "Hong Kong", "South China Morning Post, 2016"),
  row("HR", 10, "Croatian", "encyclopedia table of standard drinks"),
  row("HU", 17, "Hungarian", memory),
  row("IE", 10, "Irish", survey),
  row("IN", 10, "Indian", survey),
  row("IS", 8, "Icelandic", survey),
  row("IT", 12, "Italian", memory),
  row("JP", 20, "Japanese", "about 20 g; 19.75 g is also printed"),
  row("LU", 12.8, "Luxembourg", survey),
  row("NL", 10, "Dutch", memory),
  row("NO", 12, "Norwegian", memory),
  row("NZ", 10, "New Zealand", survey),
  row("PL", 10, "Polish", memory),
  row("PT", 10, "Portuguese", memory),
  row("SE", 12, "Swedish", memory),
  row("SG", 10, "Singapore", survey),
  row("US", 14, "US", survey),
  row("VN", 10, "Vietnamese", survey),
];

/** For a house that names no country, or one that is not listed. */
export const worldDrink: StandardDrink = row("", 10, "WHO", `World Health Organization, AUDIT questionnaire: ${survey}`);

/** What a country counts in, by its two letters in capitals; the World Health Organization's 10 g where it is not listed. */
export function standardDrinkOf(country: string | undefined): StandardDrink {
  return standardDrinks.find((one) => one.country === country) ?? worldDrink;
}

function row(country: string, grams: number, whose: string, source: string): StandardDrink {
  return { country, grams, word: `${whose} standard drink`, source };
}
