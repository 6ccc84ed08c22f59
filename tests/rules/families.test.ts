/**
 * The built-in families against drinks that ought to stand inside their windows, and drinks that ought
 * not. Where one that should pass does not, the window is wrong, not the drink.
 */
import { describe, expect, test } from "vitest";
import { assessDrink } from "../../server/house/drink.ts";
import { specimen } from "../../server/rules/specimen.ts";
import { entryNamed, houseOf } from "../house/make.ts";
import { codesIn } from "./check.ts";
import { build, found, long, passing, type Spec, shake, textOf } from "./family-specs.ts";

// Shaken with citrus and sherry, it holds 1.6 g of acid before its ice and 1.2 after: inside, once it is finished.
const beforeIce: Spec = ["low sour", shake, "60 ml oloroso sherry", "22.5 ml lemon juice", "17.5 ml maple syrup"];

const weighed = new Set(["unbalanced", "strength-outside", "salty"]);

function findingsOf(spec: Spec): string[] {
  const codes = codesIn(textOf(spec));
  // A name that is not known, or figures that are unknown, would make every drink pass.
  expect(codes.filter((code) => code.startsWith("unknown"))).toEqual([]);
  return codes.filter((code) => weighed.has(code));
}

const outcomeOf = (spec: Spec) => {
  const house = houseOf(textOf(spec));
  return assessDrink(house, entryNamed(house, "Slip Water")).outcome;
};

const named = (specs: readonly Spec[]) => specs.map((spec) => [spec[0], spec.slice(2).join(", "), spec] as const);

describe("inside its windows", () => {
  test.each(named(passing))("%s: %s", (_family, _pours, spec) => expect(findingsOf(spec)).toEqual([]));
});

describe("outside its windows", () => {
  test.each(named(found))("%s: %s", (_family, _pours, spec) => expect(findingsOf(spec)).not.toEqual([]));
});

test("citrus in a cream drink curdles, which is a finding of its own", () =>
  expect(
    codesIn(specimen(["30 ml brandy", "30 ml cacao liqueur", "30 ml cream", "15 ml lemon juice"], { ...shake, family: "cream" })),
  ).toContain("curdling"));

test("a window is for the finished drink: what is too sour before the ice may be right after it", () => {
  expect(findingsOf(beforeIce)).toEqual([]);
  const outcome = outcomeOf(beforeIce);
  const before = (outcome.value("acidGPer100Ml")! * outcome.value("afterVolumeMl")!) / outcome.value("beforeVolumeMl")!;
  expect(before).toBeCloseTo(1.65, 1);
  expect(outcome.value("acidGPer100Ml")).toBeLessThan(1.35);
});

// Worked figures for the collins with added volumes come to 9.8 % vol, 6.3 g sugar, 0.73 g acid: those have 20 ml of
// water from the ice, a fifth of what is in the tin, as much as building gives. Shaken, it takes up half.
test("a collins is as strong as its ice leaves it: about 10 % vol built, 9 % shaken", () => {
  const pours = ["50 ml gin", "25 ml lemon juice", "20 ml plain syrup", "90 ml soda water, after"] as const;
  const built = outcomeOf(["fizz", build, ...pours]);
  const shaken = outcomeOf(["fizz", long, ...pours]);
  expect(built.value("strengthPct")).toBeGreaterThan(9.5);
  expect(built.value("strengthPct")).toBeLessThan(10.8);
  expect(shaken.value("strengthPct")).toBeCloseTo(8.9, 0);
  // The water alone: what dilutes it dilutes sugar and acid alike.
  expect(built.value("ratio")).toBeCloseTo(shaken.value("ratio")!, 9);
});
