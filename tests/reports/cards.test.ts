/** Service cards as data and as a page: what stands on them, in both systems of units, and that nothing of a drink is lost. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Face, facesOf } from "../../server/reports/card-fit.ts";
import { type Card, cardSchema } from "../../server/reports/card-schema.ts";
import { cardReport } from "../../server/reports/cards.ts";
import { cardsHtml } from "../../server/reports/cards-html.ts";
import { fillPicture } from "../../server/reports/fill-picture.ts";
import { anyText } from "../grammar/texts.ts";
import { entryNamed, houseOf } from "../house/make.ts";

const bar = (settings: string) => `house Test Room
  jigger: 2.5 ml
${settings}
stock plain spirit
  kind: spirit
  abv: 40 %
  allergens: none

stock plain syrup
  kind: syrup
  sugar: 60 g/100 ml
  abv: 0 %
  allergens: none

stock strange cordial
  kind: syrup
  sugar: 60 g/100 ml
  abv: 0 %

glass small coupe
  holds: 200 ml
  washline: 90 %

`;

function cardOf(lines: string, settings = "  country: GB"): Card {
  const house = houseOf(`${bar(settings)}drink Slip\n${lines}`);
  return cardReport(house, [entryNamed(house, "Slip")], () => "bar.drink").cards[0]!;
}
const amounts = ({ pours }: Card) => pours.map(({ amount, other, name }) => [amount, other, name]);

describe("the amounts", () => {
  // US fluid ounces: NIST Handbook 44, Appendix C: 29.57353 ml. Rounded to eighths of them, to teaspoons of a sixth, and
  // to 2.5 ml: practice, no source.
  test.each([
    ["30 ml plain spirit", "30 ml", "≈ 1 oz"],
    ["25 ml plain spirit", "25 ml", "≈ 7/8 oz"],
    ["6 cl plain spirit", "6 cl", "≈ 2 oz"],
    ["1 1/2 oz plain spirit", "1 1/2 oz", "≈ 45 ml"],
    ["10-15 ml plain spirit", "10-15 ml", "≈ 2 tsp to 1/2 oz"],
    ["about 29.57353 ml plain spirit", "about 29.57353 ml", "≈ 1 oz"],
    ["29.5735295625 ml plain spirit", "29.5735295625 ml", "1 oz"],
    ["1/2 pint plain syrup", "1/2 pint", "≈ 235 ml"],
    ["top to 180 ml soda water", "top to 180 ml", "≈ 6 1/8 oz"],
    ["2 dashes orange bitters", "2 dashes", null],
    ["1 egg white", "1", null],
    ["15 g plain syrup", "15 g", null],
    ["plain syrup, to taste", "", null],
    ["rinse absinthe", "rinse", null],
  ])("of %j", (line, amount, other) => {
    expect(amounts(cardOf(`  ${line}\n`))[0]!.slice(0, 2)).toEqual([amount, other]);
  });

  test("a pouring ounce keeps the ratio, and the page says how large it is", () => {
    const card = cardOf("  45 ml plain spirit\n  22.5 ml plain syrup\n", "  ounce: 30 ml");
    expect(amounts(card).map(([, other]) => other)).toEqual(["1 1/2 oz", "3/4 oz"]);
    expect(cardsHtml({ country: null, cards: [card], unknown: [] }, { paper: "a4", ink: "light" })).toContain("1 oz is 30 ml;");
  });

  test("no amount is finer than a jigger, however large its ounce is", () => {
    const ml = fc.integer({ min: 1, max: 80 }).map((steps) => steps * 2.5);
    fc.assert(
      fc.property(ml, fc.constantFrom("", "  ounce: 30 ml", "  ounce: imperial", "  ounce: 25 ml"), (amount, ounce) => {
        const [[, other]] = amounts(cardOf(`  ${amount} ml plain spirit\n`, ounce)) as [[string, string]];
        // Thirds too are poured where they come out: a jigger of 20 ml is two thirds of an ounce of 30.
        expect(other).toMatch(/^(?:≈ )?(?:\d+ )?(?:\d+|[1357]\/8|[13]\/4|1\/2|[12]\/3) (?:oz|tsp)$/);
      }),
      { numRuns: 60 },
    );
  });

  test("parts of known size are told as what is poured, others as parts", () => {
    const sized = cardOf("  total: 90 ml\n  2 parts plain spirit\n  1 part plain syrup\n", "  ounce: 30 ml");
    expect(sized.pours.map(({ amount, other, notes }) => [amount, other, notes])).toEqual([
      ["60 ml", "2 oz", ["2 parts"]],
      ["30 ml", "1 oz", ["1 part"]],
    ]);
    const unsized = cardOf("  2 parts plain spirit\n  1 part plain syrup\n");
    expect(amounts(unsized).map((row) => row.slice(0, 2))).toEqual([
      ["2 parts", null],
      ["1 part", null],
    ]);
    expect(unsized.fill.volumeMl.value).toBeNull();
  });

  test("what may stand in for a pour, with its own amount where it has one", () => {
    const card = cardOf("  60 ml plain spirit, frozen\n    or 45 ml plain syrup\n    or strange cordial\n", "  ounce: 30 ml");
    expect(card.pours[0]).toMatchObject({ notes: ["frozen"], or: ["45 ml plain syrup (1 1/2 oz)", "strange cordial"] });
  });
});

test("a batched drink has its service beside the full spec, of one serve", () => {
  const lines = "  serves: 2\n  100 ml plain spirit, batched\n  20 ml plain spirit, batched\n  50 ml lemon juice\n";
  const { service, pours } = cardOf(lines, "  ounce: 30 ml");
  // The same spirit twice: what is mixed has the volume of its parts, so that no volume of mixing has to be known.
  expect(service?.map(({ amount, other, name }) => [amount, other, name])).toEqual([
    ["60 ml", "2 oz", "batch"],
    ["25 ml", "≈ 7/8 oz", "lemon juice"],
  ]);
  expect(pours).toHaveLength(3);
  expect(cardOf("  50 ml plain spirit\n").service).toBeNull();
});

describe("allergens", () => {
  test("silence is never none, and is told first on the card", () => {
    const { allergens } = cardOf("  50 ml plain spirit\n  20 ml strange cordial\n");
    expect(allergens).toEqual({ contains: "", notStated: "Allergens not stated for strange cordial." });
    const html = pageOf("  50 ml plain spirit\n  20 ml strange cordial\n");
    expect(html).toContain("<dt>Allergens</dt> <dd>Not stated for strange cordial.</dd>");
    expect(html.indexOf("Not stated for")).toBeLessThan(html.indexOf("<table"));
  });

  test("what is answered for", () => {
    expect(cardOf("  50 ml plain spirit\n").allergens.contains).toBe("No allergens, by all that is stated or assumed.");
    expect(cardOf("  50 ml plain spirit\n  1 egg white\n")).toMatchObject({
      allergens: { contains: expect.stringMatching(/egg/) },
      cautions: [{ title: "Raw egg" }],
    });
  });

  test("a house that switches a caution off has none of it on the card", () => {
    expect(cardOf("  50 ml plain spirit\n  1 egg white\n", "  severity: raw-egg off").cautions).toEqual([]);
  });
});

describe("the strength", () => {
  test.each([
    // UK units are ml × % vol ÷ 1000: 50 ml of 40 % vol is 2.
    ["  50 ml plain spirit\n", "40 % vol, 2 UK units"],
    ["  50 ml plain syrup\n", "no alcohol"],
    ["  50 ml unheard of\n", "strength unknown"],
    ["  2 parts plain spirit\n", "40 % vol, alcohol in one serve unknown"],
  ])("of %j", (lines, words) => expect(cardOf(lines).strength).toBe(words));
});

describe("the picture", () => {
  const levelOf = (svg: string) => Number(/class="level" d="M[\d.]+ ([\d.]+)H/.exec(svg)?.[1]);

  test("its level is the drink's share of the bowl, and says how much that is", () => {
    const { glass, fill } = cardOf("  glass: small coupe\n  100 ml plain spirit\n");
    const svg = fillPicture({ glass, fill }, "one");
    // 100 ml of 200 ml, at the ambient temperature as they are poured: half of a bowl that is 17 mm high and begins at 2 mm.
    expect(levelOf(svg)).toBeCloseTo(2 + 17 / 2, 1);
    expect(svg).toContain(">100 ml</text>");
    expect(svg).toMatch(
      /<title id="one">The glass, 100 ml in the 200 ml that it holds: filled to 50 % with its ice, below its washline\.<\/title>/,
    );
    expect(svg).toMatch(/class="wash" d="M3\.5 3\.7H/);
  });

  test("too much is at the brim, and said", () => {
    const card = cardOf("  glass: small coupe\n  300 ml plain spirit\n");
    expect(levelOf(fillPicture(card, "one"))).toBe(2);
    expect(pageOf("  glass: small coupe\n  300 ml plain spirit\n")).toContain("more than the glass holds");
  });

  test.each([
    ["  50 ml plain spirit\n", "no glass is named"],
    ["  glass: hollow gourd\n  50 ml plain spirit\n", "nothing says how much “hollow gourd” holds"],
    ["  glass: small coupe\n  some unheard of\n", "unheard of"],
  ])("an unknown level is a question mark and a reason: %j", (lines, reason) => {
    const card = cardOf(lines);
    const svg = fillPicture(card, "one");
    expect(svg).toContain(">?</text>");
    expect(svg).toContain(`is unknown: `);
    expect(svg).toContain(reason);
    expect(levelOf(svg)).toBeNaN();
  });
});

describe("which cards", () => {
  const text = `${bar("  country: US")}drink Slip\n  50 ml plain spirit\ndrink Quay\n  from: Slip\nmenu Card\n  - Quay 9.00\n  - Slip 8.00\n  - Quay 9.00\n  - Ghost 7.00\n`;
  const lineOf = (line: string) => text.split("\n").indexOf(line) + 1;

  test("a menu's in its order, each once, and what nobody declares is told", () => {
    const house = houseOf(text);
    const report = cardReport(house, [entryNamed(house, "Card"), entryNamed(house, "Slip")], () => "bar.drink");
    expect(report.cards.map(({ name, line }) => [name, line])).toEqual([
      ["Quay", lineOf("drink Quay")],
      ["Slip", lineOf("drink Slip")],
    ]);
    expect(report).toMatchObject({ country: "US", unknown: ["Ghost"] });
  });
});

function pageOf(lines: string): string {
  return cardsHtml({ country: null, cards: [cardOf(lines)], unknown: [] }, { paper: "a4", ink: "light" });
}

test("the page is the same for the same drinks, and fetches nothing", () => {
  const html = pageOf("  50 ml plain spirit\n  1 <script>alert(1)</script>\n");
  expect(pageOf("  50 ml plain spirit\n  1 <script>alert(1)</script>\n")).toBe(html);
  expect(html).not.toMatch(/https?:|<script|<link|<img|url\(/);
});

/** All letters of a drink that a card is to tell. */
function told({ names, warnings, service, pours, facts, beside }: Face): string {
  const pour = (those: Face["pours"]) =>
    those.map(({ amount, other, name, notes, or }) => [amount, other, name, ...notes, ...or].join(" "));
  const fact = (those: Face["facts"]) => those.map(({ text }) => text);
  return [...fact(names), ...fact(warnings), ...pour(service), ...pour(pours), ...fact(facts), ...fact(beside)]
    .join(" ")
    .replaceAll(/\s/g, "");
}

test("however long a drink is, its cards hold all of it, one after the other, and one has the picture", () => {
  const words = fc
    .array(fc.string({ minLength: 1, maxLength: 40, unit: fc.constantFrom(..."abcW é") }), { minLength: 1, maxLength: 8 })
    .map((all) => `x${all.join(" ").trim().replaceAll(/\s+/g, " ")}`);
  const lines = fc.array(words, { minLength: 1, maxLength: 20 });
  const base = cardOf("  glass: small coupe\n  50 ml plain spirit\n");
  fc.assert(
    fc.property(lines, words, words, fc.constantFrom("a4" as const, "letter" as const), (names, method, name, paper) => {
      const pours = names.map((one) => ({ amount: "50 ml", other: "≈ 1 3/4 oz", name: one, notes: ["frozen"], or: [] }));
      const faces = facesOf({ ...base, name, pours, method: [method] }, paper);
      const all = faces.map(told).join("");
      const wanted = [...names, method, ...(faces[0]!.title === name ? [] : [name])].map((text) => text.replaceAll(/\s/g, ""));
      for (const text of wanted) expect(all).toContain(text);
      expect(faces.map(({ number, of }) => [number, of])).toEqual(faces.map((_, index) => [index + 1, faces.length]));
      expect(faces.filter(({ picture }) => picture)).toHaveLength(1);
    }),
    { numRuns: 40 },
  );
});

describe("a long name", () => {
  const titleOf = (name: string) => {
    const [{ title, names }] = facesOf({ ...cardOf("  50 ml plain spirit\n"), name }, "a4") as [Face];
    return { title, names };
  };

  test("of sixty letters stands whole in the title", () => {
    const name = "The Long Watch of the Harbour Master and His Seven Sisters a";
    expect(name).toHaveLength(60);
    expect(titleOf(name)).toEqual({ title: name, names: [] });
  });

  test("is never cut inside what a reader takes for one letter", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom("🍋", "👩🏽‍🍳", "é", "x"), { minLength: 60, maxLength: 90 }), (letters) => {
        const { title } = titleOf(letters.join(""));
        expect(title).not.toMatch(/\p{Cs}/u);
        const kept = [...new Intl.Segmenter("en").segment(title.replace("…", ""))].map(({ segment }) => segment);
        expect(kept.slice(0, -1)).toEqual(letters.slice(0, kept.length - 1));
      }),
      { numRuns: 30 },
    );
  });
});

test("no text throws, and the data has its published shape", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const house = houseOf(text.replace(/^=== /gm, ""));
      const entries = [...house.documents()].flatMap(({ tree }) => tree.entries).filter(({ kind }) => kind === "drink" || kind === "menu");
      const report = cardReport(house, entries, () => "bar.drink");
      cardSchema.parse(report);
      cardsHtml(report, { paper: "letter", ink: "saving" });
    }),
    { numRuns: 60 },
  );
}, 60_000);
