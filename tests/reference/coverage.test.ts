/** First-order propagation against Monte Carlo: an interval holds its figure as often as it claims. */
import { expect, test } from "vitest";
import { claimed, coverageOf } from "./coverage.ts";
import { coveragePage, enough, together } from "./coverage-page.ts";

const [drinks, drawsEach] = [1000, 8];
const coverages = coverageOf(drinks, drawsEach, 1);
const mostOff = 0.03;

const rows = Object.entries(coverages).flatMap(([of, list]) => [
  ...enough(list).map((one) => ({ ...one, of })),
  { of, figure: "all together", ...together(enough(list)) },
]);

test.each(rows)("$of: $figure is within its ± as often as claimed", ({ within1, within2 }) => {
  expect(Math.abs(within1 - claimed.within1)).toBeLessThanOrEqual(mostOff);
  expect(Math.abs(within2 - claimed.within2)).toBeLessThanOrEqual(mostOff);
});

test("the page shows these shares (`npm run docs` writes it)", () =>
  expect(coveragePage(coverages, drinks, drawsEach)).toMatchFileSnapshot("./coverage.md"));
