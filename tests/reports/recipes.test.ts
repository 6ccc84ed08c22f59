/**
 * Recipes out and in. The properties and what each may hold are those that schema.org publishes; they are read
 * out of the declarations of the package schema-dts, which is made from that vocabulary.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import fc from "fast-check";
import type { RecipeLeaf } from "schema-dts";
import { expect, test } from "vitest";
import { read } from "../../grammar/read.ts";
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../../server/house/house.ts";
import { flatten } from "../../server/house/riff.ts";
import { exportRecipes, type RecipeNode } from "../../server/reports/export-recipes.ts";
import { importRecipes } from "../../server/reports/import-recipes.ts";
import type { Imported } from "../../server/reports/imported.ts";
import { entryNamed, houseIn, houseOf } from "../house/make.ts";

const published = readFileSync(
  createRequire(import.meta.url)
    .resolve("schema-dts/package.json")
    .replace("package.json", "dist/schema.d.ts"),
  "utf8",
);

/** The compiler holds the one against the other. */
const asPublished = (recipe: RecipeNode): RecipeLeaf => recipe;
const restrictedDiets = /^export type RestrictedDiet = (.*);$/m.exec(published)![1]!;
const found = new Map<string, ReadonlyMap<string, string>>();

/** The properties of a type and of all that it is a kind of, with what each takes. */
function propertiesOf(type: string): ReadonlyMap<string, string> {
  if (!found.has(type)) found.set(type, findProperties(type));
  return found.get(type)!;
}

function findProperties(type: string): ReadonlyMap<string, string> {
  const [, above = "", body = ""] = new RegExp(`^interface ${type}Base extends ([^{]*) \\{\\n([\\s\\S]*?)^\\}`, "m").exec(published) ?? [];
  const [, partOfThing = ""] = new RegExp(`^interface ${type}Base \\{\\n([\\s\\S]*?)^\\}`, "m").exec(published) ?? [];
  const inherited = [...above.matchAll(/(\w+)Base/g)].flatMap(([, name]) => [...propertiesOf(name!)]);
  const own = [...(body + partOfThing).matchAll(/^ {4}"(\w+)"\?: SchemaValue<(.*), "\w+">;$/gm)].map(
    ([, name, of]) => [name!, of!] as const,
  );
  return new Map([...inherited, ...own]);
}

const entriesOf = (house: House) => [...house.documents()].flatMap(({ tree }) => tree.entries);

function exported(house: House): { recipes: RecipeNode[]; leftOut: readonly string[]; text: string } {
  const { text, leftOut } = exportRecipes(house, entriesOf(house));
  const whole = JSON.parse(text);
  expect(Object.keys(whole)).toEqual(["@context", "@graph"]);
  expect(whole["@context"]).toBe("https://schema.org");
  return { recipes: whole["@graph"], leftOut, text };
}

function imported(value: unknown): Imported {
  const made = importRecipes(typeof value === "string" ? value : JSON.stringify(value));
  if ("problem" in made) throw new Error(made.problem);
  return made;
}

test("the published vocabulary is found, and what Recipe inherits with it", () => {
  const known = propertiesOf("Recipe");
  expect(known.get("recipeYield")).toContain("QuantitativeValue | Text");
  expect([...known.keys()]).toEqual(expect.arrayContaining(["name", "description", "creditText", "keywords", "totalTime"]));
  expect(known.has("glass")).toBe(false);
});

test("every property of every recipe of the demo house is one that the vocabulary has, and of a type that it takes", () => {
  const check = (node: unknown, where: string) => {
    const { "@type": type, ...said } = node as Record<string, unknown>;
    const known = propertiesOf(type as string);
    for (const [name, value] of Object.entries(said)) {
      const takes = known.get(name) ?? "";
      expect({ where: `${where} ${type}.${name}`, known: takes !== "" }).toEqual({ where: `${where} ${type}.${name}`, known: true });
      for (const one of Array.isArray(value) ? value : [value]) {
        if (typeof one === "object") check(one, `${where} ${name}`);
        else if (name === "suitableForDiet") expect(restrictedDiets).toContain(`"${one}"`);
        else expect({ name, text: typeof one === "string" && /\b(?:Text|Energy)\b/.test(takes) }).toEqual({ name, text: true });
      }
    }
  };
  const { recipes } = exported(houseIn("samples/halyard-room"));
  expect(recipes.length).toBeGreaterThan(20);
  for (const recipe of recipes) check(asPublished(recipe), recipe.name);
});

test("a diet is told only where all that goes in is stated to suit it, in the vocabulary's own word", () => {
  const house = houseOf(
    "stock a\n  kind: spirit\n  diet: vegan; gluten free\nstock b\n  kind: spirit\n  diet: vegan\ndrink One\n  50 ml a\n  10 ml b\ndrink Two\n  50 ml a\n  10 ml gin\ndrink Three\n  50 ml c\n",
  );
  const told = exported(house).recipes.map(({ suitableForDiet }) => suitableForDiet);
  expect(told).toEqual([["https://schema.org/VeganDiet", "https://schema.org/VegetarianDiet"], undefined, undefined]);
  for (const diet of told[0] ?? []) expect(restrictedDiets).toContain(`"${diet}"`);
});

test("energy is a number and its unit, as the vocabulary's Energy is written, and left out where it is unknown", () => {
  const { recipes } = exported(houseOf("drink One\n  50 ml gin\ndrink Two\n  50 ml something nobody declared\n"));
  expect(recipes[0]!.nutrition?.calories).toMatch(/^\d+ kcal$/);
  expect(recipes[1]!.nutrition).toBeUndefined();
});

test("what recipes have no place for is said", () => {
  const { leftOut } = exported(houseOf("drink One\n  price: 12\n  story: Long.\n  guest: Short.\n  season: winter\n  50 ml gin\n"));
  expect(leftOut).toEqual(["Recipes have no place for these fields, which are not in the file: price, story, season."]);
});

const parts = (house: House, entry: Entry) => {
  const flat = flatten(house, entry);
  const fields = ["family", "glass", "method", "garnish", "rim", "serves"].map((name) =>
    flat.field(name)?.field.value?.text.replace(/^./, (letter) => letter.toLowerCase()),
  );
  return {
    pours: flat.pours.map(({ name, quantity, lead, alternatives }) => [
      lead?.text,
      quantity?.value,
      quantity?.unit?.text,
      name.text,
      alternatives.map((one) => one.name.text),
    ]),
    fields,
  };
};

test("the drinks and preps of the demo house come back with every pour, their family, glass, method, garnish and rim", () => {
  const house = houseIn("samples/halyard-room");
  const { text, misread } = imported(exported(house).text);
  expect(misread).toEqual([]);
  const back = houseOf(text);
  const entries = entriesOf(house).filter(({ kind, name }) => name && (kind === "drink" || kind === "prep"));
  const same = entriesOf(back).filter(({ kind }) => kind === "drink" || kind === "prep");
  expect(same.map(({ name }) => name!.text)).toEqual(entries.map(({ name }) => name!.text));
  for (const [index, entry] of entries.entries()) {
    // A family of the house's own is none that everybody knows.
    const { fields, ...before } = parts(house, entry);
    const { fields: after, ...behind } = parts(back, same[index]!);
    expect({ ...behind, fields: after }).toEqual({ ...before, fields: after[0] === undefined ? [undefined, ...fields.slice(1)] : fields });
  }
});

/** As pages on the web write one; the drink is invented. */
const page = {
  "@context": "https://schema.org/",
  "@type": ["Recipe", "NewsArticle"],
  name: "Anchor Watch",
  author: { "@type": "Person", name: "The late shift", url: "https://halyard.invalid/late" },
  image: ["https://halyard.invalid/anchor.jpg"],
  recipeYield: ["2", "2 servings"],
  recipeCategory: ["Sour", "Something else"],
  keywords: "winter, rum",
  description: "Dark,\nand slow.",
  totalTime: "PT5M",
  suitableForDiet: "https://schema.org/VeganDiet",
  recipeIngredient: [
    "60 ml aged rum",
    "1 1/2 oz lemon juice",
    "2,5 cl simple syrup",
    "Orange juice: 25 ml",
    "30 ml (1 oz) dry gin",
    "2 dashes bitters or 1 dash orange bitters",
    "fresh mint leaves",
    "Juice of 1 lemon",
    "30 ml gin, 20 ml rum",
    "lemon zest, expressed, to garnish",
    "- 1 tsp sugar",
    "1 egg white (optional)",
    "2 cherries for garnish",
    "sea salt, to rim",
  ],
  recipeInstructions: [
    { "@type": "HowToStep", text: "Shake it hard.", url: "https://halyard.invalid/anchor#1" },
    { "@type": "HowToSection", name: "To serve", itemListElement: [{ "@type": "HowToStep", name: "Strain", text: "Strain it." }] },
  ],
};

test("a page's recipe: what reads is a spec, what does not is kept and told", () => {
  const { text, misread, remarks } = imported(page);
  expect(text).toBe(`drink Anchor Watch
  family: Sour
  garnish: lemon zest, expressed; 2 cherries
  rim: sea salt
  serves: 2
  steps:
    Shake it hard.
    To serve
    Strain it.
  credit: The late shift
  guest:
    Dark,
    and slow.
  tags: winter, rum

  # not understood, author: {"url":"https://halyard.invalid/late"}
  # not understood, image: ["https://halyard.invalid/anchor.jpg"]
  # not understood, recipeCategory: Something else
  # not understood, totalTime: PT5M
  # the recipe says, suitableForDiet: https://schema.org/VeganDiet
  60 ml aged rum
  1 1/2 oz lemon juice
  2.5 cl simple syrup
  25 ml Orange juice
  30 ml dry gin # (1 oz)
  2 dashes bitters
    or 1 dash orange bitters
  # not understood, recipeIngredient 7: fresh mint leaves
  # not understood, recipeIngredient 8: Juice of 1 lemon
  # not understood, recipeIngredient 9: 30 ml gin, 20 ml rum
  # not understood, recipeIngredient 11: - 1 tsp sugar
  1 egg white, optional
  # not understood, recipeInstructions: {"url":"https://halyard.invalid/anchor#1"}
`);
  expect(misread.map(({ where }) => where.replace("the recipe, “Anchor Watch”, ", ""))).toEqual([
    ...["author", "image", "recipeCategory", "totalTime", "recipeIngredient 7", "recipeIngredient 8", "recipeIngredient 9"],
    ...["recipeIngredient 11", "recipeInstructions"],
  ]);
  expect(remarks).toEqual(["Not taken over, since it is the house's own to say: suitableForDiet. It stands in comments."]);
});

test("a page's signs in HTML's way are written as signs, and told; in JSON alone they are what they say", () => {
  const value = {
    "@type": "Recipe",
    name: "Gin &amp; Thyme &bogus; &lt;b&gt;",
    recipeIngredient: ["30&nbsp;ml honey", "Soda water, to top up"],
  };
  const html = `<script type="application/ld+json">${JSON.stringify(value)}</script>`;
  expect(imported(html)).toMatchObject({
    text: "drink Gin & Thyme &bogus; <b>\n  30 ml honey\n  top Soda water\n",
    misread: [],
    remarks: ["Written as the signs that they stand for: &amp;, &lt;, &gt;, &nbsp;."],
  });
  expect(imported(value).text).toContain("drink Gin &amp; Thyme");
});

test("data that is put into a page does not end there, and is read back from it", () => {
  const { text } = exported(houseOf('drink "</script><script>alert(1)</script>"\n  50 ml gin\n'));
  expect(text).not.toContain("<");
  const page = `<script type="application/ld+json">${text}</script>`;
  expect(imported(page).text).toContain("</script><script>alert(1)</script>");
});

test.each([
  ["bare", { "@type": "Recipe", name: "A", recipeIngredient: "50 ml gin" }],
  ["list", [{ "@type": "https://schema.org/Recipe", name: "A", ingredients: ["50 ml gin"] }]],
  ["graph", { "@context": "https://schema.org", "@graph": [{ "@type": "schema:Recipe", name: "A", recipeIngredient: ["50 ml gin"] }] }],
  ["what a page is about", { mainEntity: { "@type": ["Recipe"], name: "A", recipeIngredient: ["50 ml gin"] } }],
])("a recipe is found: %s", (_, value) => expect(imported(value)).toMatchObject({ text: "drink A\n  50 ml gin\n", misread: [] }));

test("an amount without a unit is told where it is hardly a count", () => {
  const recipeIngredient = ["50 gin", "1 egg white", "8 juniper berries", "25 unheard of"];
  const { text, misread } = imported({ "@type": "Recipe", name: "A", recipeIngredient });
  expect(text).toBe("drink A\n  50 gin\n  1 egg white\n  8 juniper berries\n  25 unheard of\n");
  expect(misread.map((one) => [one.where, one.text])).toEqual([
    ["drink “A”", "50 gin"],
    ["drink “A”", "25 unheard of"],
  ]);
});

test("a saved page is read for its data alone", () => {
  const slip = JSON.stringify({ "@type": "Recipe", name: "Slip </b> & Knot", recipeIngredient: ["50 ml gin"] });
  const html = `\uFEFF<!doctype html><title>{"@type":"Recipe"}</title><script>var a = "<script>";</script>
    <script type="text/plain">{"@type":"Recipe","name":"No"}</script>
    <SCRIPT TYPE='application/ld+json'>{"@type":"WebSite","name":"Halyard"}</SCRIPT>
    <!-- <script type="application/ld+json">{"@type":"Recipe","name":"Nor this"}</script> -->
    <script type="application/ld+json">{"@type":</script>
    <script type="application/ld+json" id=a>${slip}</script><p>50 ml rum`;
  const { text, misread } = imported(html);
  expect(text).toBe(
    'drink Slip </b> & Knot\n  50 ml gin\n\n# not understood, beside the recipes: {"@type":\n# not understood, beside the recipes: {"@type":"WebSite","name":"Halyard"}\n',
  );
  expect(misread.map(({ why }) => why.slice(0, 27))).toEqual(["This does not read as JSON:", "This is no recipe."]);
});

test.each([
  ["<p>50 ml gin", "There is no recipe in this file."],
  ['<script type="application/ld+json">{</script>', "This does not read as JSON"],
  ["{", "This does not read as JSON"],
  ["[]", "There is no recipe in this file."],
  ['{"@type":"Person","name":"A"}', "There is no recipe in this file."],
])("%j is refused with the reason", (text, problem) => {
  const made = importRecipes(text);
  expect("problem" in made && made.problem).toContain(problem);
});

const anyText = fc.oneof(
  fc.constantFrom(
    "50 ml gin",
    "or 5 ml rum",
    "1 (750 ml) bottle gin",
    "a # b",
    "drink B",
    "2 parts a or b",
    "Serve in: coupe.",
    "",
    " ",
    "story: x",
  ),
  fc.string({ unit: "grapheme", maxLength: 12 }),
  fc.array(fc.constantFrom("a", " ", "\n", ";", ":", "#", '"', "5", "(", ")", " or "), { maxLength: 10 }).map((all) => all.join("")),
);
const anyValue = fc.oneof(
  { weight: 4, arbitrary: anyText },
  { weight: 3, arbitrary: fc.array(anyText, { maxLength: 4 }) },
  {
    weight: 1,
    arbitrary: fc.record(
      {
        "@type": fc.constantFrom("HowToStep", "HowToSection"),
        text: anyText,
        name: fc.constantFrom("Method", "x"),
        itemListElement: fc.array(anyText),
      },
      { requiredKeys: [] },
    ),
  },
  { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<unknown> },
);
const properties = [
  "recipeIngredient",
  "recipeInstructions",
  "recipeYield",
  "recipeCategory",
  "author",
  "creditText",
  "keywords",
  "description",
  "image",
  "nutrition",
];

const bare = (text: string) => text.replace(/["“”'#\s.\\]/g, "").toLowerCase();

test("whatever a recipe holds, every text of it is in the spec, and there is one entry", () =>
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.constantFrom(...properties), anyValue)), (all) => {
      const recipe = Object.fromEntries(all);
      const { text } = imported({ "@type": "Recipe", name: "Slip", ...recipe });
      const entries = read(text).entries;
      expect(entries.map(({ kind }) => kind)).toEqual(["drink"]);
      const texts = Object.values(recipe)
        .flatMap((value) => (Array.isArray(value) ? value : [value]))
        .filter((one) => typeof one === "string");
      for (const one of texts) {
        for (const line of one
          .replace(/\([^()]*\)/, "\n")
          .replace(/(\d),(?=\d)/g, "$1.")
          .split(/[\r\n]+| or /)) {
          expect({ one, there: bare(text).includes(bare(line)) }).toEqual({ one, there: true });
        }
      }
    }),
    { numRuns: 300 },
  ));

test("the name of the entry is the one that was exported", () => {
  const house = houseOf('drink "Over # Under"\n  50 ml gin\n');
  expect(entryNamed(houseOf(imported(exported(house).text).text), "Over # Under").kind).toBe("drink");
});
