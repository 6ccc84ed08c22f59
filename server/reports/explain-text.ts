/** How a drink's figures come about: what each pour brings, the sum of each figure, what was assumed. */
import { type Measure, mlIn, showNumber } from "../house/show.ts";
import { showSum } from "../house/show-sum.ts";
import type { ExplanationReport } from "./assess-schema.ts";
import { type Column, type Look, labelled, table, wrap } from "./sheet.ts";

type Brought = ExplanationReport["brought"][number];
type Sum = ExplanationReport["sums"][number];

export function explanationText(explanation: ExplanationReport, measure: Measure, look: Look): string {
  const { brought, sums, assumptions } = explanation;
  const parts = [];
  if (brought.length > 0) parts.push(broughtTable(brought, measure, look));
  parts.push(sums.map((sum) => sumText(sum, look)).join("\n"));
  if (assumptions.length > 0)
    parts.push([look.strong("Assumed"), ...assumptions.map((text) => wrap(text, look.width, indent, "- "))].join("\n"));
  return parts.join("\n\n");
}

const indent = "  ";

/** Grams of each; a column that is empty for every pour is left out. */
function broughtTable(brought: readonly Brought[], measure: Measure, look: Look): string {
  const sweeter = brought.some(({ sugarG, sweetnessG }) => Math.abs((sugarG ?? 0) - (sweetnessG ?? 0)) > 0.05);
  const all: readonly { column: Column; of(one: Brought): number | null; always?: boolean }[] = [
    { column: ["Volume", measure.units], of: ({ ml }) => (ml === null ? null : ml / mlIn(measure)), always: true },
    { column: ["Weight", "g"], of: ({ g }) => g, always: true },
    { column: ["Alcohol", "g"], of: ({ ethanolG }) => ethanolG },
    { column: ["Sugar", "g"], of: ({ sugarG }) => sugarG },
    ...(sweeter ? [{ column: ["As sweet as", "g sucrose"] as const, of: ({ sweetnessG }: Brought) => sweetnessG }] : []),
    { column: ["Acid", "g citric"], of: ({ acidG }) => acidG },
    { column: ["Salt", "g"], of: ({ saltG }) => saltG },
    { column: ["Caffeine", "mg"], of: ({ caffeineMg }) => caffeineMg },
  ];
  const columns = all.filter(({ of, always }) => always || brought.some((one) => of(one) === null || of(one)! >= least));
  const cell = (value: number | null) => (value === null ? "?" : showNumber(value, 2));
  const rows = brought.map((one) => ({ name: one.name, numbers: columns.map(({ of }) => cell(of(one))) }));
  // Volumes of different liquids are no sum: together they take less room.
  const together = columns.map(({ of, column }) =>
    column[0] === "Volume"
      ? ""
      : cell(brought.reduce<number | null>((sum, one) => (sum === null || of(one) === null ? null : sum + of(one)!), 0)),
  );
  return table(
    ["What each pour brings"],
    columns.map(({ column }) => column),
    [...rows, { name: "together", numbers: together }],
    look,
  );
}
const least = 0.005;

/** The figure, the sum that gives it, where its uncertainty comes from, and the source of the formula. */
function sumText(sum: Sum, look: Look): string {
  const { said, spread } = showSum(sum);
  const lines = [
    labelled(sum.label, said, look),
    spread && labelled("", spread, look),
    sum.working !== undefined && sum.source && labelled("", `source: ${sum.source}`, look),
  ];
  return lines.filter(Boolean).join("\n");
}
