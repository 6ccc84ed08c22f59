/** Where published figures do not agree, and which of them is followed. */
import { printTable } from "../../server/reports/markers.ts";

const conflicts = [
  [
    "contraction of ethanol and water",
    "52 + 48 ml make 96.3; 100 + 100 make 192.75",
    "OIML R 22 at 20 °C: 96.45 and 192.93",
    "the classic figures are of 15 °C, as the table above shows; labels state strengths at 20 °C",
  ],
  [
    "energy of ethanol",
    "6.93 kcal/g (USDA); 29 kJ/g and 7 kcal/g (EU)",
    "Regulation (EU) 1169/2011, Annex XIV; kJ and kcal each by its own factor",
    "a factor that a law prints; USDA's differ from food to food",
  ],
  ["standard drink of Canada", "13.6, 13.5 and 13.45 g", "13.45 g", "17.05 ml of ethanol by its density; the others are that, rounded"],
  ["standard drink of Japan", "20 and 19.75 g", "20 g", "the guidance's own round figure"],
  ["standard drink of Switzerland", "10 to 12 g", "10 g", "loosely defined there; the lower end counts more drinks, not fewer"],
  [
    "heat capacity of ethanol and water",
    "a line between the pure ones; tables above water's own at 10 to 20 % mass",
    "the tables (Melinder, Perry)",
    "measured; the line is a tenth too low there",
  ],
  ["density of syrups", "tables in kg/m³ that start at 1000.00", "998.20 for water at 20 °C", "those tables are of relative density"],
  ["caffeine of espresso", "133, 200 and 212 mg/100 g", "the whole range, 133 to 212", "cups differ as much as the sources do"],
  ["sweetness of invert sugar", "1.0 and 1.3", "half glucose and half fructose, by their own ranges", "it is what it is made of"],
] as const;

export function conflictsTable(): string {
  return printTable(["figure", "published", "followed", "because"], conflicts);
}
