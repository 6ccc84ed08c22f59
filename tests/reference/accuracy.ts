/** The accuracy that each sort of figure is to reach, and the worst of its check points. */
import { printTable } from "../../server/reports/markers.ts";
import type { Check, Table } from "./checks.ts";

export interface Goal {
  readonly figure: string;
  readonly against: string;
  readonly within: number;
  /** What the goal is counted in: a unit, or `of itself` for a share of the published figure. */
  readonly unit: string;
  readonly points: readonly Check[];
}

export function goalsIn(tables: readonly Table[]): readonly Goal[] {
  const points = (title: string, counts: (check: Check) => boolean = () => true): readonly Check[] =>
    tables.find((table) => table.title === title)!.checks.filter(counts);
  const unit = (name: string) => (check: Check) => check.unit === name;
  const legal = "Density of ethanol and water: the legal formula";
  const upTo30 = ({ what }: Check) => Number(/ ([\d.]+) % mass/.exec(what)?.[1]) <= 30;
  const goal = (figure: string, against: string, within: number, unit: string, points: readonly Check[]): Goal => ({
    figure,
    against,
    within,
    unit,
    points,
  });
  return [
    goal("density of ethanol and water", "OIML R 22", 0.01, "kg/m³", points(legal, unit("kg/m³"))),
    goal("strength by volume from mass fraction", "OIML R 22", 0.01, "% vol", points(legal, unit("% vol"))),
    goal(
      "strength of a mix of spirits and water",
      "mass balance through OIML R 22",
      0.02,
      "% vol",
      points("Mixes of spirits, 20 °C", unit("% vol")),
    ),
    goal("°Brix from density", "ICUMSA", 0.02, "°Bx", points("°Brix from density")),
    goal(
      "density of sucrose solutions",
      "ICUMSA",
      0.02,
      "kg/m³",
      points("Density of sucrose solutions", ({ what }) => what.startsWith("ICUMSA")),
    ),
    goal("titratable acidity of weighed acids", "equivalent weights", 0.001, "of itself", points("Acid solutions made by weight")),
    goal(
      "freezing point, single solutes to 30 % mass",
      "CRC Handbook (fitted to it)",
      0.2,
      "K",
      points("Freezing-point depression of single solutes", upTo30),
    ),
    goal(
      "dilution, shaken and stirred, 15 to 40 % vol",
      "Arnold 2014 (a calibration)",
      0.05,
      "of itself",
      points("Dilution, shaken and stirred: a calibration"),
    ),
    goal(
      "energy by the regulation's factors",
      "food tables, in whole numbers",
      0.5,
      "kJ or kcal",
      points("Energy from fat, carbohydrate, protein and ethanol"),
    ),
    goal("standard drinks", "each country's own figure", 0.0005, "of itself", points("Standard drinks")),
    goal("units", "NIST Handbook 44, UK Weights and Measures Act", 1e-12, "of itself", points("Units")),
  ];
}

/** The largest difference among a goal's check points, in what the goal is counted in. */
export function reached({ unit, points }: Goal): number {
  return Math.max(...points.map(({ ours, reference }) => Math.abs(ours - reference) / (unit === "of itself" ? Math.abs(reference) : 1)));
}

export function accuracyTable(goals: readonly Goal[]): string {
  return printTable(
    ["figure", "against", "to be within", "worst of", "reached"],
    goals.map((goal) => [
      goal.figure,
      goal.against,
      amount(goal.within, goal.unit),
      `${goal.points.length}`,
      amount(reached(goal), goal.unit),
    ]),
  );
}

/** Two digits are enough of a difference; under a millionth it is the arithmetic's own last digit. */
function amount(size: number, unit: string): string {
  if (size < 1e-9) return "exact";
  const shown = unit === "of itself" ? 100 * size : size;
  return `${Number(shown.toPrecision(2))} ${unit === "of itself" ? "% of itself" : unit}`;
}
