import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { InlayHint, Range } from "vscode-languageserver-types";
import { print } from "../../grammar/print.ts";
import { inlayHints, resolveInlayHint } from "../../server/features/inlay-hints.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { anyText } from "../grammar/texts.ts";
import { entryNamed, houseOf, root } from "../house/make.ts";

const everything = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };
const all = { figures: true, parts: true, otherUnits: true };
const none = { figures: false, parts: false, otherUnits: false };

function hintsIn(text: string, wanted = all, range: Range = everything) {
  const house = houseOf(text);
  const document = house.document(`${root}/spec.drink`)!;
  return { house, document, hints: inlayHints(house, document, range, wanted) };
}

/** The lines that have hints, with them where they stand. */
function shown(text: string, wanted = all): string[] {
  const { document, hints } = hintsIn(text, wanted);
  const lines = print(document.tree).split("\n");
  return hints.map(
    ({ position: { line, character }, label }) => `${lines[line]!.slice(0, character)} «${label}»${lines[line]!.slice(character)}`,
  );
}
const pourOf = (line: string, house = "") => shown(`${house}drink Slip\n  ${line}\n`, { ...none, otherUnits: true });

describe("the other system's units", () => {
  // US fluid ounces: NIST Handbook 44, Appendix C: 29.57353 ml.
  test.each([
    ["30 ml gin", "  30 ml gin «1.01 oz»"],
    ["6 cl gin, frozen # the cold one", "  6 cl gin, frozen «2.03 oz» # the cold one"],
    ["1 1/2 oz gin", "  1 1/2 oz gin «44.4 ml»"],
    ["1½ oz crème 🍋", "  1½ oz crème 🍋 «44.4 ml»"],
    ["10-15 ml gin", "  10-15 ml gin «0.338 oz to 0.507 oz»"],
    ["swap gin for 2 oz rum", "  swap gin for 2 oz rum «59.1 ml»"],
    ["or 2 oz rum", "  or 2 oz rum «59.1 ml»"],
    ["top to 180 ml soda water", "  top to 180 ml soda water «6.09 oz»"],
  ])("%s", (line, expected) => expect(pourOf(line)).toEqual([expected]));

  test.each(["2 dashes bitters", "1 egg white", "5 g salt", "1 tsp sugar", "2,500 ml gin", "top soda water"])("none for %s", (line) =>
    expect(pourOf(line)).toEqual([]),
  );

  test("by the house's own ounce, in the house's own unit", () => {
    expect(pourOf("22.5 ml gin", "house Slip\n  ounce: 30 ml\n")).toEqual(["  22.5 ml gin «3/4 oz»"]);
    expect(pourOf("1 oz gin", "house Slip\n  ounce: 30 ml\n  units: cl\n")).toEqual(["  1 oz gin «3 cl»"]);
  });
});

describe("what parts come to", () => {
  const parts = (fields: string, ...pours: string[]) =>
    shown(["drink Slip", fields, ...pours].map((line, index) => (index ? `  ${line}` : line)).join("\n"), { ...none, parts: true });

  test("by the size of one, or by what they make together", () => {
    expect(parts("part: 22.5 ml", "2 parts gin, frozen # cold", "1 part lemon juice")).toEqual([
      "  2 parts gin, frozen «= 45 ml» # cold",
      "  1 part lemon juice «= 22.5 ml»",
    ]);
    expect(parts("total: 90 ml", "2 parts gin", "1 part lemon juice", "5 ml rum")).toEqual([
      "  2 parts gin «= 60 ml»",
      "  1 part lemon juice «= 30 ml»",
    ]);
  });
  test("none where nothing says how large they are", () => expect(parts("glass: coupe", "2 parts gin", "1 part lemon juice")).toEqual([]));
  test("by weight", () => expect(parts("part: 20 g\n  parts by: weight", "2 parts gin")).toEqual(["  2 parts gin «= 40 g»"]));
  test("a riff's own line, and a swap that names an amount", () => {
    const parent = "drink Slip\n  part: 30 ml\n  2 parts gin\n  1 part lemon juice\n";
    expect(
      shown(`${parent}drink Rope\n  from: Slip\n  1.5 parts gin\n  swap lemon juice for lime juice\n`, { ...none, parts: true }).slice(2),
    ).toEqual(["  1.5 parts gin «= 45 ml»"]);
    expect(shown(`${parent}drink Rope\n  from: Slip\n  swap gin for 3 parts rum\n`, { ...none, parts: true }).slice(2)).toEqual([
      "  swap gin for 3 parts rum «= 90 ml»",
    ]);
  });
});

describe("what a drink comes to", () => {
  const sour = "drink Slip # of course\n  method: shake 12 s\n  50 ml gin\n  25 ml lemon juice\n  20 ml sugar syrup\n";
  const figures = { ...none, figures: true };

  test("behind its name, in the digits that are true", () => {
    const { house, hints } = hintsIn(sour, figures);
    const { outcome } = assessDrink(house, entryNamed(house, "Slip"));
    const [strength, volume, ratio] = (hints[0]!.label as string).split(" · ");
    expect(hints[0]!.position).toEqual({ line: 0, character: "drink Slip".length });
    expect(Math.abs(Number.parseFloat(strength!) - outcome.value("strengthPct")!)).toBeLessThan(outcome.figure("strengthPct").plusMinus!);
    expect(Math.abs(Number.parseFloat(volume!) - outcome.value("afterVolumeMl")!)).toBeLessThan(outcome.figure("afterVolumeMl").plusMinus!);
    expect(Math.abs(Number(ratio) - outcome.value("ratio")!)).toBeLessThan(outcome.figure("ratio").plusMinus!);
    expect(strength).toMatch(/^\d+(\.\d)? % vol$/);
    expect(volume).toMatch(/^\d+ ml$/);
  });
  test("of one serve", () => {
    const one = hintsIn(sour, figures).hints[0]!.label;
    const four = sour.replace("50", "200").replace("25", "100").replace("20 ml", "80 ml").replace("method", "serves: 4\n  method");
    expect(String(hintsIn(four, figures).hints[0]!.label).split(" · ")[0]).toBe(String(one).split(" · ")[0]);
    expect(Number.parseFloat(String(hintsIn(four, figures).hints[0]!.label).split(" · ")[1]!)).toBeLessThan(200);
  });
  test("nothing where nothing is poured, and nothing unknown", () => {
    expect(shown("drink Slip\n  glass: coupe\n", figures)).toEqual([]);
    expect(shown("drink Slip\n  50 ml moonlight\n", figures).join()).not.toMatch(/unknown|% vol/);
    expect(shown("drink Slip\n  2 parts gin\n  1 part lemon juice\n", figures).join()).not.toMatch(/ ml/);
  });
  test("the uncertainty only when it is asked for", () => {
    const { house, hints } = hintsIn(sour, figures);
    expect(hints[0]!.tooltip).toBeUndefined();
    const { value } = resolveInlayHint(house, hints[0]!).tooltip as { value: string };
    expect(value).toMatch(/^In the glass: .* ± .* % vol, .* ± .* ml\./);
  });
});

test("a tooltip for each kind, none for a text that is gone", () => {
  const { house, document, hints } = hintsIn("drink Slip\n  part: 30 ml\n  2 parts gin\n  30 ml rum\n");
  const tooltip = (hint: InlayHint) => (resolveInlayHint(house, hint).tooltip as { value: string } | undefined)?.value;
  expect(hints.map(tooltip).slice(1)).toEqual(["By `part: 30 ml`.", "One ounce is 29.6 ml here."]);
  house.removeDocument(document.uri);
  expect(hints.map(tooltip)).toEqual([undefined, undefined, undefined]);
});

test("only what the range asks for, and only what is switched on", () => {
  const text = "drink One\n  30 ml gin\ndrink Two\n  30 ml gin\n";
  const range = { start: { line: 1, character: 0 }, end: { line: 2, character: 3 } };
  expect(hintsIn(text, all, range).hints.map(({ position }) => position.line)).toEqual([1]);
  expect(hintsIn(text, none).hints).toEqual([]);
});

test("no text throws, and every hint stands in its line", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const { house, document, hints } = hintsIn(text.replace(/^=== /gm, ""));
      const lines = document?.tree.entries.flatMap((entry) => entry.lines.map((line) => line.text)) ?? [];
      for (const hint of hints) {
        expect(hint.position.character).toBeLessThanOrEqual(lines[hint.position.line]!.length);
        expect(hint.label).not.toBe("");
        resolveInlayHint(house, hint);
      }
    }),
  );
}, 60_000);
