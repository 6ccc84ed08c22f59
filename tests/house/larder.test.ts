/** The built-in larder, audited: what each kind of ingredient has to state, with a range and a source. */
import { describe, expect, test } from "vitest";
import { type StockKind, stockKinds } from "../../grammar/fields.ts";
import type { Entry, FieldLine } from "../../grammar/tree.ts";
import { findFieldIn } from "../../server/house/entry.ts";
import { fold } from "../../server/house/names.ts";
import { stockFacts } from "../../server/house/stock.ts";
import { readLarder } from "../../server/larder/larder.ts";
import { houseOf } from "./make.ts";

const house = houseOf("drink none\n");
const entries = readLarder().flatMap(({ tree }) => tree.entries);
const stocks = entries.filter(({ kind }) => kind === "stock");
const kindOf = (entry: Entry) => stockFacts(house, entry).kind!;
const nameOf = (entry: Entry) => entry.name!.text;
/** The generic entry of a kind, whose ranges are as wide as the kind is. */
const isGeneric = (entry: Entry) => stockKinds.some((kind) => fold(kind) === fold(nameOf(entry)));

const wine = ["abv", "sugar", "acid"];
/** What an entry of a kind has to state itself; the rest may come from the kind's generic entry. */
const own: Readonly<Record<Exclude<StockKind, "other">, readonly string[]>> = {
  spirit: ["abv", "sugar", "acid"],
  liqueur: ["abv", "sugar", "acid"],
  bitters: ["abv", "sugar", "acid", "dash"],
  "fortified wine": wine,
  vermouth: wine,
  "bitter aperitif": ["abv", "sugar", "acid"],
  wine,
  "sparkling wine": [...wine, "fizz"],
  beer: [...wine, "fizz"],
  cider: [...wine, "fizz"],
  juice: ["sugar", "acid"],
  puree: ["sugar", "acid"],
  syrup: ["sugar", "acid"],
  sugar: ["sugar", "allergens", "diet"],
  honey: ["sugar", "density", "diet"],
  acid: ["acid"],
  salt: ["salt", "density", "allergens"],
  mixer: ["sugar", "acid", "fizz"],
  water: ["allergens", "diet"],
  dairy: ["sugar", "solids", "density", "allergens", "diet"],
  "plant milk": ["sugar", "solids", "diet"],
  egg: ["sugar", "solids", "density", "each", "allergens", "diet"],
  coffee: ["acid", "caffeine"],
  tea: ["acid", "caffeine"],
  vinegar: ["acid"],
  sauce: ["sugar", "acid", "salt"],
  fruit: ["sugar", "acid", "each"],
  vegetable: ["each"],
  herb: ["each", "diet"],
  spice: [],
};

/** What is in a thing by what it is, whatever its maker does. */
const hidden: Partial<Record<StockKind, string>> = {
  "fortified wine": "sulphites",
  vermouth: "sulphites",
  wine: "sulphites",
  "sparkling wine": "sulphites",
  cider: "sulphites",
  beer: "gluten",
  dairy: "milk",
  egg: "egg",
};

/** What the members of a kind may differ in so much that its generic entry is silent. */
const differing = new Set(["acid", "each", "density", "allergens", "diet"]);

const figures = ["abv", "sugar", "brix", "acid", "salt", "solids", "fat", "density", "dash", "drop", "each", "yield", "caffeine"];
const stated = (entry: Entry) =>
  figures.flatMap((name) => {
    const at = findFieldIn(entry, name);
    return at ? [{ name, field: at.field, source: entry.lines[at.line]?.comment?.text }] : [];
  });
const quantitiesIn = (field: FieldLine) => field.items.flatMap(({ parts }) => parts.flatMap(({ quantity }) => quantity ?? []));
/** There is none of it: nothing to be unsure of. */
const isNone = (field: FieldLine) => quantitiesIn(field).every(({ value, upTo }) => value === 0 && upTo === undefined);

test("at least 200 ingredients over all kinds", () => {
  expect(stocks.length).toBeGreaterThanOrEqual(200);
  expect(new Set(stocks.map(kindOf))).toEqual(new Set(stockKinds));
});

describe.each(stocks.filter((entry) => kindOf(entry) !== "other").map((entry) => [nameOf(entry), entry] as const))("%s", (_name, entry) => {
  const kind = kindOf(entry) as Exclude<StockKind, "other">;

  test(`states what a ${kind} has to`, () => {
    const missing = own[kind].filter((name) => !findFieldIn(entry, name) && !(name === "sugar" && findFieldIn(entry, "brix")));
    // The generic entry of a kind whose members differ in it says nothing of it.
    expect(isGeneric(entry) ? missing.filter((name) => !differing.has(name)) : missing).toEqual([]);
  });

  test("can be computed: strength, sugar, acid, salt and caffeine are known, by its own entry or its kind's", () => {
    const { model } = stockFacts(house, entry);
    const contents = [...model.sugars, ...model.acids, model.salt, ...(isGeneric(entry) ? [] : [model.caffeineMg])].map(
      ({ amount }) => amount,
    );
    const unknown = [model.abvPct, ...contents].filter((one) => "because" in one);
    // Which acid it is decides everything.
    expect(unknown).toHaveLength(isGeneric(entry) && kind === "acid" ? 1 : 0);
  });

  test("gives each figure as a range, with its source", () => {
    const bare = stated(entry).filter(({ field }) => !isNone(field));
    const single = bare.filter(({ field }) => quantitiesIn(field).some(({ value, upTo }) => value !== 0 && upTo === undefined));
    expect(single.map(({ name, field }) => `${name}: ${field.value?.text}`)).toEqual([]);
    expect(bare.filter(({ source }) => !source).map(({ name }) => name)).toEqual([]);
  });

  test("hides no allergen that it holds by what it is", () => {
    const allergens =
      findFieldIn(entry, "allergens")?.field.value?.text ?? stockFacts(house, entry).field("allergens")?.field.value?.text ?? "";
    if (hidden[kind]) expect(allergens).toContain(hidden[kind]);
  });
});

describe("in short", () => {
  const named = (name: string) => stocks.find((entry) => nameOf(entry) === name)!;
  const text = (name: string, field: string) => stockFacts(house, named(name)).field(field)?.field.value?.text;

  test.each([
    ["almond syrup", "nuts"],
    ["almond milk", "nuts"],
    ["hazelnut liqueur", "nuts"],
    ["oat milk", "gluten"],
    ["soya milk", "soya"],
    ["soy sauce", "soya"],
    ["worcester sauce", "fish"],
    ["celery bitters", "celery"],
    ["celery salt", "celery"],
    ["cream liqueur", "milk"],
    ["egg liqueur", "egg"],
  ])("%s: %s", (name, allergen) => expect(text(name, "allergens")).toContain(allergen));

  test.each(["lemon", "lime", "orange", "grapefruit"])("%s gives juice, and has its pieces by form", (name) => {
    expect(text(name, "yield")).toMatch(/^juiced/);
    expect(text(name, "each")).toMatch(/wedge .*zest /);
  });

  test.each(["mint", "basil", "rosemary", "thyme", "sage"])("%s weighs something by the sprig", (name) =>
    expect(text(name, "each")).toContain("sprig"),
  );

  test.each(["coffee", "espresso", "cold brew", "tea", "green tea", "cola", "coffee liqueur", "cacao liqueur", "cocoa powder"])(
    "%s holds caffeine",
    (name) => {
      const { amount } = stockFacts(house, named(name)).model.caffeineMg;
      expect("value" in amount && amount.value).toBeGreaterThan(0);
    },
  );

  test("what bubbles says so", () => {
    const bubbles = stocks.filter((entry) => stockFacts(house, entry).fizz).map(nameOf);
    expect(bubbles).toEqual(
      expect.arrayContaining(["soda water", "tonic water", "ginger beer", "cola", "brut sparkling wine", "beer", "cider"]),
    );
    expect(bubbles).not.toContain("alcohol-free spirit");
  });
});
