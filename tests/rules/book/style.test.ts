/** The house style of a book: words, spellings, units, what each recipe has, and what the reader is told to have. */
import { describe, expect, test } from "vitest";
import { houseOf, root, textOf } from "../../house/make.ts";
import { apply, checkFindings, findIn, findOne } from "../check.ts";

const drink = (name: string, fields: readonly string[] = [], ...pours: string[]) =>
  `drink ${name}\n${["glass: coupe", "method: shake 12 s; fine strain", "garnish: none", ...fields, ...pours].map((line) => `  ${line}\n`).join("")}`;
const sour = (...fields: string[]) => drink("Slip Sour", fields, "50 ml gin", "22.5 ml lemon juice", "15 ml sugar syrup");
const fenced = (spec: string) => `\`\`\`drink\n${spec}\`\`\`\n`;
const book = (chapter: string, ...fields: string[]) =>
  `=== book.drink\nbook Slack Water\n${fields.map((field) => `  ${field}\n`).join("")}=== one.md\n${chapter}`;
const found = (text: string, code: string) =>
  findIn(houseOf(text)).flatMap(({ uri, line, finding }) =>
    finding.code === code ? [`${uri.slice(root.length + 1)}:${line + 1} ${finding.what}`] : [],
  );

describe("words", () => {
  test("to avoid are whole words in prose, in a headnote and in steps", () =>
    checkFindings(
      book(
        `# Craft
  ^^^^^ avoided-word
A craftsman's CRAFT, \`craft\`, [the page](craft.md), <https://craft.example>, :see[Craft Sour].
              ^^^^^ avoided-word
It is *hand
made* é 🍋 hand made.
           ^^^^^^^^^ avoided-word

\`\`\`drink
drink Craft Sour
  glass: coupe
  method: shake 12 s
  garnish: none
  headnote: A craft, and
              ^^^^^ avoided-word
    a craft again.
      ^^^^^ avoided-word
  notes: Nobody prints craft.
  50 ml gin
\`\`\`
`,
        "avoid: craft; hand made; c+",
      ),
    ));

  test.each([
    [
      "British",
      "The color and the flavors of 2 milliliters of gray vapor. Color.",
      "The colour and the flavours of 2 millilitres of grey vapour. Colour.",
    ],
    ["American", "The colour, per cent by per cent, at the centre.", "The color, percent by percent, at the center."],
    ["British", "At Gray Quay the first draft was bare; COLOR.", "At Gray Quay the first draft was bare; COLOUR."],
    ["American", "It is centred on the harbour, and centring.", "It is centered on the harbour, and centering."],
    ["British", "A graying, molded fiber; drafted and pasteurizing.", "A greying, moulded fibre; drafted and pasteurising."],
  ])("in the other spelling are put right: %s, %s", (spelling, wrong, right) => {
    const house = houseOf(book(`${wrong} \`color colour\`\n\n${fenced(sour())}`, `spelling: ${spelling}`));
    for (let count = 0; count < 20; count++) {
      const [first] = findIn(house);
      if (!first) break;
      expect(first.finding.code).toBe("other-spelling");
      apply(house, first.finding.fixes!()[0]!);
    }
    expect(textOf(house.document(`${root}/one.md`)!).split(" `")[0]).toBe(right);
  });
});

test("units are strange only where the book shows one system, and spoons never", () => {
  const prose = "Two ounces, 25 ml, a teaspoon, two dashes, 30 g, :see[x].\n";
  expect(found(book(prose), "strange-units")).toEqual([]);
  expect(found(book(prose, "units shown: metric"), "strange-units")).toEqual([
    "one.md:1 This is measured in US units, and the book shows metric ones alone.",
  ]);
  expect(found(book(prose, "units shown: US"), "strange-units")).toEqual([
    "one.md:1 This is measured in metric units, and the book shows US ones alone.",
  ]);
  expect(found(`=== notes.md\n${prose}`, "strange-units")).toEqual([]);
});

describe("each recipe of the book", () => {
  const demands = "recipes have: headnote, glass, garnish, yield, credit, family, method";

  test("has what is demanded, by itself or by what it is a riff of", () => {
    const whole = sour("headnote: A sour.", "credit: the purser", "family: sour");
    const riff = "drink Slip Sour, Low\n  from: Slip Sour\n  headnote: Low.\n  credit: the mate\n  without gin\n";
    expect(found(book(fenced(`${whole}\n${riff}`), demands), "recipe-lacks")).toEqual([]);
    expect(found(book(fenced(sour()), demands), "recipe-lacks")).toEqual([
      "one.md:2 Slip Sour has no headnote, credit and family, which every recipe of the book is to have.",
    ]);
  });

  test("a prep is asked for its headnote, yield, credit and method", () => {
    const syrup = "prep pier syrup\n  parts by: weight\n  1 part white sugar\n  1 part water\n";
    expect(found(book(fenced(syrup), demands), "recipe-lacks")).toEqual([
      "one.md:2 pier syrup has no headnote, yield, credit and method, which every recipe of the book is to have.",
    ]);
  });

  test("that stands elsewhere is found where the chapter prints it, and not where no chapter does", () => {
    const elsewhere = `=== bar.drink\n${sour()}`;
    expect(found(book(`# Sours\n\n::spec[Slip Sour]\n${elsewhere}`, demands), "recipe-lacks")).toEqual([
      "one.md:3 Slip Sour has no headnote, credit and family, which every recipe of the book is to have.",
    ]);
    expect(found(book(`# Sours\n${elsewhere}`, demands), "recipe-lacks")).toEqual([]);
  });

  test("a missing garnish can be answered with none", () => {
    const bare = sour().replace("  garnish: none\n", "");
    const { house, located } = findOne(book(fenced(bare), "recipes have: garnish"), "recipe-lacks");
    apply(house, located.finding.fixes!()[0]!);
    expect(found(textOf(house.document(`${root}/one.md`)!), "recipe-lacks")).toEqual([]);
  });

  test("is made with what the reader was told to have: a sort of it will do", () => {
    const spec = fenced(drink("Slip Sour", [], "50 ml gin"));
    const missing = (...fields: string[]) => found(book(spec, ...fields), "unlisted-equipment").length;
    expect(missing()).toBe(0);
    expect(missing("tools: Boston shakers; fine strainer")).toBe(0);
    expect(missing("tools: muddler")).toBe(2);
    expect(missing("glassware: highball")).toBe(1);
    expect(missing("glassware: coupes; highball", "tools: shaker; fine strainer")).toBe(0);
  });

  test("pours nothing that no chapter prints, not by an alternative either", () => {
    const preps = "=== preps.drink\nprep pier syrup\n  100 g white sugar\n  100 g water\n";
    const spec = drink("Slip Sour", [], "50 ml gin", "20 ml lemon juice", "15 ml sugar syrup", "  or 15 ml pier syrup");
    expect(found(book(`${fenced(spec)}${preps}`), "unprinted-recipe")).toEqual([
      "one.md:9 This pours “pier syrup”, which no chapter prints: its recipe ends up behind the last one.",
    ]);
    expect(found(book(`::spec[pier syrups]\n\n${fenced(spec)}${preps}`), "unprinted-recipe")).toEqual([]);
  });
});
