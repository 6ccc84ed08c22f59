import { describe, expect, test } from "vitest";
import { accuracyTable, goalsIn, reached } from "./accuracy.ts";
import { acidTables } from "./acids.ts";
import type { Check, Table } from "./checks.ts";
import { conflictsTable } from "./conflicts.ts";
import { densityTables } from "./density.ts";
import { dilutionTables } from "./dilution.ts";
import { energyTables } from "./energy.ts";
import { exampleTables } from "./examples.ts";
import { freezingTables } from "./freezing.ts";
import { gaugingTables } from "./gauging.ts";
import { heatTables } from "./heat.ts";
import { larderTables } from "./larder.ts";
import { secondOpinionTables } from "./second-opinion.ts";
import { sugarTables } from "./sugar.ts";
import { sweetnessTables } from "./sweetness.ts";
import { unitTables } from "./units.ts";

const tables: readonly Table[] = [
  ...densityTables,
  ...sugarTables,
  ...acidTables,
  ...freezingTables,
  ...heatTables,
  ...dilutionTables,
  ...gaugingTables,
  ...exampleTables,
  ...energyTables,
  ...sweetnessTables,
  ...unitTables,
  ...larderTables,
  ...secondOpinionTables,
];

describe.each(tables)("$title", ({ checks }) => {
  test.each(checks)("$what: $reference $unit", ({ reference, ours, within }) => {
    expect(Math.abs(ours - reference)).toBeLessThanOrEqual(within * (1 + 1e-9));
  });
});

const goals = goalsIn(tables);

test.each(goals)("$figure: within $within $unit of $against", (goal) => {
  expect(goal.points.length).toBeGreaterThan(2);
  expect(reached(goal)).toBeLessThanOrEqual(goal.within * (1 + 1e-9));
});

test("README.md shows these figures as they are (`npm run docs` writes it)", async () => {
  await expect(page()).toMatchFileSnapshot("./README.md");
});

function page(): string {
  const count = tables.reduce((sum, { checks }) => sum + checks.length, 0);
  return [
    "# Published figures and ours",
    "",
    `${count} figures from elsewhere, what the engine says, and the difference. Written by the tests, which fail when a`,
    "difference is larger than allowed or when this page is out of date.",
    "",
    "A table that the engine's constants were fitted to says so: it shows how well they fit, and is no test of the physics.",
    'Figures "from memory" were not read in the source; handbook figures were read in public transcriptions of the books.',
    "",
    "[How often the ± holds](coverage.md) is a page of its own.",
    "",
    "## What is to be reached",
    "",
    accuracyTable(goals),
    "",
    ...tables.flatMap(section),
    "## Where published figures disagree",
    "",
    conflictsTable(),
    "",
  ].join("\n");
}

function section({ title, source, checks }: Table): string[] {
  const rows = [["figure", "unit", "published", "ours", "difference", "allowed"], ...checks.map(cells)];
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  const lines = rows.map((row) => `| ${row.map((cell, i) => (i < 2 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join(" | ")} |`);
  const rule = `| ${widths.map((width, i) => (i < 2 ? "-".repeat(width) : `${"-".repeat(width - 1)}:`)).join(" | ")} |`;
  return [`## ${title}`, "", source, "", lines[0]!, rule, ...lines.slice(1), ""];
}

function cells({ what, unit, reference, ours, within }: Check): string[] {
  const decimals = Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(within))));
  const difference = (ours - reference).toFixed(decimals).replace(/^-(0\.?0*)$/, "$1");
  return [
    what,
    unit,
    String(Number(reference.toPrecision(within < 1e-6 ? 14 : 8))),
    ours.toFixed(decimals),
    difference,
    String(Number(within.toPrecision(2))),
  ];
}
