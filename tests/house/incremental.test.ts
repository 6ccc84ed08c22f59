import fc from "fast-check";
import { expect, test } from "vitest";
import { read } from "../../grammar/read.ts";
import { figureNames } from "../../server/engine/plan.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { House } from "../../server/house/house.ts";
import { readLarder } from "../../server/larder/larder.ts";
import { rules } from "../../server/rules/all.ts";
import { findingsOf } from "../../server/rules/run.ts";
import { documentOf, houseOf, root, textOf } from "./make.ts";

/** Every drink of a house with all its plain figures. */
function figures(house: House): string[] {
  const lines: string[] = [];
  for (const { uri, tree } of [...house.documents()].sort((one, other) => (one.uri < other.uri ? -1 : 1))) {
    for (const entry of tree.entries) {
      if (entry.kind !== "drink") continue;
      const { outcome, flat } = assessDrink(house, entry);
      lines.push(
        `${uri} ${entry.name?.text} ${figureNames.map((name) => outcome.value(name)?.toFixed(6)).join(" ")} ${flat.problems.length}`,
      );
    }
  }
  return lines;
}

function assessAll(house: House): number {
  const before = house.memo.computed;
  figures(house);
  return house.memo.computed - before;
}

const drinks = Array.from(
  { length: 40 },
  (_, index) =>
    `drink D${index}\n  method: shake 12 s\n  50 ml slip gin\n  20 ml lemon juice\n  ${10 + index} ml ${index % 2 ? "slip syrup" : "sugar syrup"}\n`,
);
const houseText = `=== house.drink\nhouse H\nstock slip gin\n  kind: spirit\n  abv: 40 %\nprep slip syrup\n  1 part sugar\n  1 part water\n  parts by: weight\n${drinks.map((drink, index) => `=== d${index}.drink\n${drink}`).join("")}`;
const uriOf = (name: string) => `${root}/${name}.drink`;
const change = (house: House, name: string, text: string) => house.setDocument({ uri: uriOf(name), version: 1, tree: read(text) });

test("nothing is computed twice", () => {
  const house = houseOf(houseText);
  expect(assessAll(house)).toBeGreaterThan(40);
  expect(assessAll(house)).toBe(0);
});

test("editing one drink computes that drink again and no other", () => {
  const house = houseOf(houseText);
  assessAll(house);
  const one = assessAll(houseOf(`=== house.drink\nhouse H\nstock slip gin\n  abv: 40 %\n=== d0.drink\n${drinks[0]}`));
  house.takeStale();
  change(house, "d0", drinks[0]!.replace("50 ml", "55 ml"));
  expect(house.takeStale().map((document) => document.uri)).toEqual([uriOf("d0")]);
  const again = assessAll(house);
  expect(again).toBeGreaterThan(0);
  expect(again).toBeLessThanOrEqual(one);
});

test("editing a prep computes the drinks that use it, and only those", () => {
  const house = houseOf(houseText);
  assessAll(house);
  house.takeStale();
  const text = [...house.documents()].find((document) => document.uri === uriOf("house"))!;
  const lines = text.tree.entries.flatMap((entry) => entry.lines.map((line) => line.text + line.eol)).join("");
  change(house, "house", lines.replace("1 part sugar", "2 parts sugar"));
  const stale = house.takeStale().map((document) => document.uri);
  expect(stale).toContain(uriOf("d1"));
  expect(stale).not.toContain(uriOf("d2"));
  expect(stale.filter((uri) => uri !== uriOf("house"))).toHaveLength(20);
});

test("a name that was missing is found as soon as somebody declares it", () => {
  const house = houseOf("=== house.drink\nhouse H\n=== d.drink\ndrink X\n  50 ml kelp gin\n");
  const strength = () => assessDrink(house, [...house.documents()].at(-1)!.tree.entries[0]!).outcome.value("strengthPct");
  expect(strength()).toBeNull();
  house.setDocument({ uri: uriOf("stock"), version: null, tree: read("stock kelp gin\n  kind: spirit\n  abv: 44 %\n") });
  const entry = house.document(uriOf("d"))!.tree.entries[0]!;
  expect(assessDrink(house, entry).outcome.value("strengthPct")).toBeCloseTo(44, 6);
  house.removeDocument(uriOf("stock"));
  expect(assessDrink(house, entry).outcome.value("strengthPct")).toBeNull();
});

const chapters = ["one", "two"].map((name) => `${root}/${name}.md`);
const files = ["house", "a", "b", "low/house", "low/c"];
const bodies = [
  "house H\n  jigger: 2.5 ml\n",
  "house H\n  jigger: 5 ml\n  freezer: -25 C\n",
  "",
  "stock slip gin\n  kind: spirit\n  abv: 40 %\n",
  "stock slip gin\n  kind: spirit\n  abv: 50 %\n",
  "stock slip gins\n  kind: spirit\n  abv: 30 %\n",
  "prep slip syrup\n  1 part sugar\n  1 part water\n  parts by: weight\n",
  "prep slip syrup\n  50 g slip syrup\n",
  "drink One\n  method: shake 12 s\n  50 ml slip gin, frozen\n  20 ml lemon juice\n  20 ml slip syrup\n",
  "drink Two\n  from: One\n  swap slip gin for 40 ml vodka\n  without kelp\n",
  "drink One\n  from: Two\n  20 ml slip gin\n",
  "dri\n  20 ml gin\n",
];
const step = fc.record({
  file: fc.constantFrom(...files),
  parts: fc.array(fc.constantFrom(...bodies), { maxLength: 4 }),
  gone: fc.boolean(),
});

test("after any sequence of events the house is as if freshly read", () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
      const house = houseOf("");
      const texts = new Map<string, string>();
      for (const { file, parts, gone } of steps) {
        const uri = uriOf(file);
        if (gone) {
          house.removeDocument(uri);
          texts.delete(uri);
        } else {
          house.setDocument({ uri, version: null, tree: read(parts.join("")) });
          texts.set(uri, parts.join(""));
        }
        figures(house); // Computed in between, so that anything stale would show.
      }
      const fresh = new House({ larder: readLarder(), roots: [root] });
      for (const [uri, text] of [...texts].reverse()) fresh.setDocument({ uri, version: null, tree: read(text) });
      expect(figures(house)).toEqual(figures(fresh));
    }),
    { numRuns: 100 },
  );
}, 60_000);

const texts = [
  "# One\n\nIt is :strength[One] strong, with 20 ml of lemon juice.\n\n::spec[One]\n\nA :see[Two] of the color of grey harbours.\n",
  "## One\n\nGive it thirty millilitres of slip syrup and an ounce of gin.\n\n```drink\ndrink One\n  20 ml slip gin\n  5 ml slip syrup\n```\n",
  '## Two\n\nGive it :pour[slip gin]{in="Two"}, or 50 ml of slip gin.\n\n```drink\nhouse Aboard\n\nbook Aboard\n  avoid: or\n```\n',
  "::spec[Two]\n\n::spec[slip syrup]\n\n## Two\n\n30 ml slip gin\n",
  "",
];
const books = [
  "book A\n  avoid: grey; ounce\n  recipes have: glass, headnote\n  tools: muddler\n",
  "book A\n  chapters: one.md\n  units shown: US\n  indexes: family\n  spelling: American\n",
  "book\n  avoid: it\n",
  "book B\n  spelling: American\n",
];
const specs = bodies.filter((body) => !body.startsWith("house"));
const changed = (uris: readonly string[], parts: readonly string[]) =>
  fc.record({
    uri: fc.constantFrom(...uris),
    text: fc.array(fc.constantFrom(...parts), { minLength: 1, maxLength: 2 }).map((some) => some.join("")),
    gone: fc.boolean().map((gone) => gone && uris.length > 1),
  });
// The house stays where it is: one that comes or goes makes everything be computed anew.
const edit = fc.oneof(
  { weight: 3, arbitrary: changed(chapters, texts) },
  { weight: 3, arbitrary: changed([uriOf("a"), uriOf("b")], specs) },
  { weight: 2, arbitrary: changed([uriOf("book")], books) },
);

test("after any sequence of events everything found in a manuscript is what is found in it opened afresh", () => {
  const told = (house: House) =>
    [...house.documents()]
      .flatMap(({ uri, tree }) =>
        tree.entries.flatMap((entry, index) =>
          findingsOf(house, entry, rules, (code, cause) => {
            throw new Error(code, { cause });
          }).map(({ code, place, what, todo }) => `${uri} ${tree.starts[index]! + place.line} ${place.start} ${code} ${what} ${todo}`),
        ),
      )
      .sort();
  fc.assert(
    fc.property(fc.array(edit, { minLength: 4, maxLength: 12, size: "max" }), (edits) => {
      const house = houseOf("");
      const now = new Map<string, string>();
      for (const { uri, text, gone } of edits) {
        if (gone) house.removeDocument(uri);
        else house.setDocument(documentOf(uri, text));
        if (gone) now.delete(uri);
        else now.set(uri, text);
        told(house);
      }
      const fresh = new House({ larder: readLarder(), roots: [root] });
      for (const [uri, text] of [...now].reverse()) fresh.setDocument(documentOf(uri, text));
      expect(told(house)).toEqual(told(fresh));
    }),
    { numRuns: 150 },
  );
}, 60_000);

test("typing in a paragraph finds anew in that paragraph, and in those of the chapter that tell of amounts", () => {
  const many = Array.from({ length: 50 }, (_, index) => `## Part ${index}\n\nA calm sea, and :strength[One].\n`).join("\n");
  const house = houseOf(
    `=== house.drink\nhouse H\n\nbook A\n\ndrink One\n  50 ml gin\n=== one.md\n${many}\n## One\n\nGive it 50 ml of gin.\n`,
  );
  const find = () => {
    const before = house.memo.computed;
    for (const { tree } of house.documents()) for (const entry of tree.entries) findingsOf(house, entry, rules, () => {});
    return house.memo.computed - before;
  };
  expect(find()).toBeGreaterThan(50);
  const uri = `${root}/one.md`;
  house.setDocument(documentOf(uri, textOf(house.document(uri)!).replace("A calm sea", "A rough sea")));
  // The paragraph's findings, and those of the one with an amount in it, whose section may be another now.
  expect(find()).toBeLessThanOrEqual(6);
});
