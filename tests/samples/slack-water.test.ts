/** The sample book: whole, without a fault, and every directive in it says something. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Directive, Entry } from "../../grammar/tree.ts";
import { attributeOf, directiveRows, rowOf } from "../../server/house/book/directives.ts";
import { meaningOf, saidBy } from "../../server/house/book/saying.ts";
import { bookIn, indexKinds, styleOf } from "../../server/house/book/style.ts";
import { assessDrink } from "../../server/house/drink.ts";
import { findFieldIn } from "../../server/house/entry.ts";
import type { House } from "../../server/house/house.ts";
import { flatten } from "../../server/house/riff.ts";
import type { Scope } from "../../server/house/scope.ts";
import { documentOf, houseIn } from "../house/make.ts";
import { findIn } from "../rules/check.ts";

const folder = "samples/slack-water";
const files = readdirSync(folder).sort();

interface Written {
  readonly directive: Directive;
  readonly scope: Scope;
  readonly at: string;
}

function directivesIn(house: House): Written[] {
  return [...house.documents()].flatMap((document) =>
    document.tree.entries.flatMap(({ lines }, index) =>
      lines.flatMap(({ content, text }, line) =>
        content.kind !== "text"
          ? []
          : content.directives.map((directive) => ({
              directive,
              scope: house.scopeOf(document),
              at: `${document.uri}:${document.tree.starts[index]! + line + 1} ${text.slice(directive.start, directive.end)}`,
            })),
      ),
    ),
  );
}

const house = houseIn(folder);
const written = directivesIn(house);
const entries = [...house.documents()].flatMap(({ tree }) => tree.entries);
const ofKind = (kind: Entry["kind"]) => entries.filter((entry) => entry.kind === kind);
const recipes = [...ofKind("drink"), ...ofKind("prep")];
const book = ofKind("book")[0]!;
const chapters = findFieldIn(book, "chapters")!.field.items.map(({ parts }) => parts[0]!.text);

test("it has its chapters, each a file, and no file beside them", () => {
  expect([...chapters].sort()).toEqual(files.filter((name) => name.endsWith(".md")));
  expect(chapters).toHaveLength(11);
  expect(bookIn(house, house.scopeOf(book))).toBe(book);
});

test("at least six chapters hold recipes, and each chapter starts with its title", () => {
  const holding = chapters.filter((name) => /^(```drink|::spec\[)/m.test(readFileSync(`${folder}/${name}`, "utf8")));
  expect(holding).toHaveLength(7);
  for (const name of chapters) expect(readFileSync(`${folder}/${name}`, "utf8")).toMatch(/^# \S/);
});

test("it has its recipes", () => {
  expect(ofKind("drink")).toHaveLength(39);
  expect(ofKind("prep")).toHaveLength(13);
});

test("nothing in it is an error or a warning, and what is left is a caution", () => {
  expect(findIn(house).filter(({ finding }) => /error|warning/.test(finding.severity))).toEqual([]);
  const left = findIn(house).filter(({ finding }) => finding.severity === "information");
  expect(left.map(({ finding }) => finding.code).sort()).toEqual([
    "caffeine-with-alcohol",
    "quinine",
    "raw-egg",
    "strong-acid",
    "strong-acid",
  ]);
});

test("each recipe is printed once: in a fence where it stands, or by a `::spec`", () => {
  const specs = written.filter(({ directive }) => directive.name.text === "spec");
  const shown = specs.map(({ directive, scope }) => {
    const meant = meaningOf(house, scope, directive);
    return "row" in meant ? meant.recipe : undefined;
  });
  const fenced = recipes.filter((entry) => house.getDocumentOf(entry).uri.endsWith(".md"));
  const names = (some: readonly (Entry | undefined)[]) => some.map((entry) => entry?.name?.text).sort();
  expect(names([...shown, ...fenced])).toEqual(names(recipes));
});

test("each recipe has what its book requires, and each glass is in the book's list", () => {
  const { required, glassware } = styleOf(house, house.scopeOf(book));
  const lacking = ofKind("drink").flatMap((entry) =>
    required
      .filter((name) => !findFieldIn(entry, name) && !flatten(house, entry).field(name))
      .map((name) => `${entry.name?.text} has no ${name}`),
  );
  expect(lacking).toEqual([]);
  for (const prep of ofKind("prep"))
    expect([prep.name?.text, findFieldIn(prep, "headnote") !== undefined]).toEqual([prep.name?.text, true]);
  const glasses = ofKind("drink").map((entry) => flatten(house, entry).field("glass")!.field.items[0]!.parts[0]!.text);
  expect([...new Set(glasses)].sort()).toEqual([...glassware].sort());
});

test("every drink has figures and a cost", () => {
  for (const drink of ofKind("drink")) {
    const assessment = assessDrink(house, drink);
    for (const name of ["afterVolumeMl", "strengthPct", "sweetnessGPer100Ml", "acidGPer100Ml", "costPerServe"] as const) {
      expect([drink.name?.text, name, assessment.outcome.value(name)]).toEqual([drink.name?.text, name, expect.any(Number)]);
    }
  }
});

describe("directives", () => {
  test.each(written.map((one) => [one.at, one] as const))("%s says something", (_at, { directive, scope }) => {
    const row = rowOf(directive);
    expect(row).toBeDefined();
    expect(meaningOf(house, scope, directive)).toHaveProperty("row");
    if (row!.of.length > 0) expect(saidBy(house, scope, directive)).toEqual({ text: expect.stringMatching(/\S/) });
  });

  test("each kind is used, each index, and each way of saying an amount", () => {
    const used = (name: string, block: boolean) => written.some(({ directive: one }) => one.name.text === name && one.block === block);
    expect(directiveRows.filter(({ name, block }) => !used(name, block)).map(({ name }) => name)).toEqual([]);
    const values = (name: string) => new Set(written.flatMap(({ directive }) => attributeOf(directive, name) ?? []));
    expect(values("by")).toEqual(new Set(indexKinds));
    expect(values("units")).toEqual(new Set(["US", "both"]));
    for (const name of ["words", "figures", "as"]) expect(values(name).size).toBeGreaterThan(0);
  });

  test("a thinner syrup changes what the text says of every drink that pours it, and nothing else", () => {
    const thinner = houseIn(folder);
    const preps = readFileSync(`${folder}/preps.drink`, "utf8").replace("  400 g heather honey\n", "  200 g heather honey\n");
    thinner.setDocument(documentOf(`file:///${folder}/preps.drink`, preps));
    const said = (of: House) => directivesIn(of).map(({ directive, scope }) => saidBy(of, scope, directive));
    const after = said(thinner);
    const changed = said(house).flatMap((one, index) => (JSON.stringify(one) === JSON.stringify(after[index]) ? [] : written[index]!));
    const about = new Set(changed.map(({ directive }) => directive.label?.text));
    expect(about).toContain("Windward");
    const pouring = new Set(["Windward", "Half Tide", "Bulkhead", "Cabin Nineteen", "Donkeyman", "Galley Fire Out", "heather honey syrup"]);
    expect([...about].filter((name) => !pouring.has(name ?? ""))).toEqual([]);
  });
});

test("no word that the book avoids stands in it", () => {
  const { avoided } = styleOf(house, house.scopeOf(book));
  expect(avoided.length).toBeGreaterThan(5);
  const words = new RegExp(`\\b(${avoided.join("|")})`, "i");
  for (const name of files)
    if (name !== "house.drink") expect([name, words.exec(readFileSync(`${folder}/${name}`, "utf8"))]).toEqual([name, null]);
});
