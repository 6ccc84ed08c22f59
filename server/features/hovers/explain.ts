/** The second part of a drink's hover: the sum behind each figure. */
import type { Assessment } from "../../house/drink.ts";
import { type Brought, explain, type Sum } from "../../house/explain.ts";
import type { House } from "../../house/house.ts";
import { type Measure, showNumber, showVolume } from "../../house/show.ts";
import { showSum } from "../../house/show-sum.ts";
import { asText, bold, paragraphs, table } from "../markdown.ts";

/** Absent where nothing is poured that could be summed up. */
export function describeSums(house: House, assessment: Assessment, measure: Measure): string | undefined {
  const { brought, sums, assumptions } = explain(house, assessment);
  if (brought.length === 0) return undefined;
  return paragraphs(
    "---",
    broughtTable(brought, measure),
    sums
      .filter(({ working }) => working !== undefined)
      .map(sumLine)
      .join("\n"),
    assumptions.length > 0 && `Assumed: ${asText(assumptions.join("; "))}.`,
  );
}

function broughtTable(brought: readonly Brought[], measure: Measure): string {
  const cell = (value: number | null) => (value === null ? "?" : value < leastG ? "" : showNumber(value, 2));
  const columns: readonly [string, (one: Brought) => number | null][] = [
    ["alcohol", ({ ethanolG }) => ethanolG],
    ["sugar", ({ sugarG }) => sugarG],
    ["acid", ({ acidG }) => acidG],
    ["salt", ({ saltG }) => saltG],
  ];
  const shown = columns.filter(([, of]) => brought.some((one) => of(one) === null || of(one)! >= leastG));
  return table(
    ["grams brought by", "", ...shown.map(([head]) => head)],
    brought.map((one) => [asText(one.name), one.ml === null ? "?" : showVolume(one.ml, measure), ...shown.map(([, of]) => cell(of(one)))]),
  );
}
/** Less is none. */
const leastG = 0.005;

function sumLine(sum: Sum): string {
  const { said, spread } = showSum(sum);
  const text = `${said}.${spread ? ` ${spread}.` : ""}`;
  return `- ${bold(sum.label)} ${asText(text)}${sum.source ? ` *${asText(sum.source)}*` : ""}`;
}
