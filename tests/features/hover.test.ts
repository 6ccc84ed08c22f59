import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hover } from "../../server/features/hover.ts";
import { houseOf, root } from "../house/make.ts";
import { fixtureOf, hoverAt, hoveredText } from "./cursor.ts";

/** Each label must stand in the hover; a label that starts with `no ` must not. */
function checkHover(text: string, ...labels: (string | RegExp)[]): void {
  const shown = hoverAt(text);
  for (const label of labels) {
    if (typeof label === "string" && label.startsWith("no ")) expect(shown).not.toContain(label.slice(3));
    else if (typeof label === "string") expect(shown).toContain(label);
    else expect(shown).toMatch(label);
  }
}

const bar =
  "=== bar.drink\nhouse Bar\n  freezer: -18 C\n\nglass stem\n  holds: 200 ml\n\nstock white rum\n  kind: spirit\n  abv: 40 %\n\n=== spec.drink\n";
const sour = (head = "drink Bell Bu<>oy", rum = "60 ml white rum") =>
  `${bar}${head}\n  family: sour\n  glass: stem\n  method: shake 12 s; fine strain\n\n  ${rum}\n  22.5 ml lime juice\n  22.5 ml simple syrup\n`;

describe("a drink", () => {
  test("is read at a glance: every figure, its window in words, the glass", () =>
    checkHover(
      sour(),
      "**Bell Buoy** · stem",
      "| in the glass | sour |",
      // 60 ml of 40 % in 105 ml, before any water: 22.9 %, by arithmetic on volumes within 0.2.
      /strength \| 1\d\.\d ± 0\.\d % vol, 2[23](\.\d)? before \| inside 13 to 21 \|/,
      /dilution \| \d\d ± \d ml water, \d\d %/,
      /volume \| 1\d\d ± \d ml at −\d(\.\d)? (± \d\.\d )?°C, \d\d % of 200 ml/,
      /sugar \| .* g\/100 ml.* \| inside 4 to 10\.5 \|/,
      /acid \| .* g\/100 ml \| inside 0\.65 to 1\.25 \|/,
      /ratio \| .* \| inside 4 to 13 \|/,
      "Assumed from the larder: ",
    ));

  test("is fifteen lines at most, allergens and cautions included", () => {
    const text = sour().replace(
      "simple syrup\n",
      "simple syrup\n  30 ml egg white\n  30 ml espresso\n  5 ml nobody's tonic\n  3 g sea salt\n",
    );
    const lines = hoverAt(text)
      .split("\n")
      .filter((line) => line && !line.startsWith("| :--"));
    expect(lines.length).toBeLessThanOrEqual(15);
    expect(hoverAt(text)).toContain("⚠ Raw egg");
  });

  test("outside its window it stands out", () =>
    checkHover(sour().replace("22.5 ml simple syrup", "67.5 ml simple syrup"), "**above 4 to 13**"));

  test("what is unknown says why", () =>
    checkHover(
      sour().replace("22.5 ml lime juice", "22.5 ml nobody's juice"),
      "strength | unknown",
      "nobody's juice is in neither the house nor the larder",
    ));

  test("what can hurt somebody comes first: allergens, and what nobody states them of", () => {
    checkHover(
      sour().replace("simple syrup\n", "simple syrup\n  1 egg white\n  10 ml white wine\n  5 ml nobody's tonic\n"),
      /\*\*Bell Buoy\*\* · stem {2}\n\*\*Assumed to contain egg and sulphites\.\*\* Not stated for white wine and nobody's tonic\. {2}\n⚠/,
    );
    checkHover(sour(), "No allergens, by all that is stated or assumed.");
    checkHover(sour().replace("60 ml white rum", "60 ml aged rum"), / {2}\nAllergens not stated for aged rum\.\n/, "no Contains");
  });

  test("in the United States by their names there, the nine that count there first", () => {
    const us = sour()
      .replace("house Bar\n", "house Bar\n  country: US\n")
      .replace("simple syrup\n", "almond syrup\n  10 ml white wine\n  10 ml beer\n");
    checkHover(us, "Assumed to contain wheat or other gluten, tree nuts and sulphites.", "US standard drinks");
  });

  test("what one serve brings: 60 ml of 40 % are 18.9 g of alcohol, 2.4 units of 10 ml, and 29 kJ for each gram and 17 for each of sugar", () => {
    const uk = sour().replace("house Bar\n", "house Bar\n  country: GB\n");
    const shown = /\n18\.9 ± 0\.\d g alcohol · 2\.4 UK units · (\d+) ± \d+ kJ \/ (\d+) ± \d+ kcal {2}\n/.exec(hoverAt(uk))!;
    // 18.94 g × 29, and about 14.3 g of sugar (22.5 ml of 50 °Bx and the juice's own) × 17, and 1.35 g of acid × 13: the regulation's factors.
    expect(Number(shown[1])).toBeCloseTo(18.94 * 29 + 14.3 * 17 + 1.35 * 13, -2);
    expect(Number(shown[2])).toBeCloseTo(18.94 * 7 + 14.3 * 4 + 1.35 * 3, -1);
    checkHover(sour(), "1.9 WHO standard drinks", "no caffeine");
    const four = uk.replace("  family", "  serves: 4\n  family").replace("60 ml", "240 ml").replaceAll("22.5 ml", "90 ml");
    checkHover(four, "g alcohol · 2.4 UK units");
  });

  test("caffeine with EFSA's yardstick where it is half of it or more, and unknown where nobody knows it", () => {
    checkHover(sour().replace("22.5 ml lime juice", "30 ml espresso"), /· \d+ ± \d+ mg caffeine {2}/, "no yardstick");
    checkHover(
      sour().replace("22.5 ml lime juice", "120 ml espresso"),
      "mg caffeine (200 mg at once is the yardstick for adults, EFSA 2015)",
    );
    const steeped = "prep smoked rum\n  700 ml white rum\n  12 g tea leaf, strained out\n\n";
    checkHover(sour().replace("drink Bell", `${steeped}drink Bell`).replace("60 ml white rum", "60 ml smoked rum"), "caffeine unknown");
  });

  test("diets that are decided, and the shortest stated keeping", () => {
    const text = sour()
      .replace("simple syrup\n", "simple syrup\n  1 egg white\n")
      .replace("glass stem", "stock lime juice\n  keeps: 1 day chilled\n\nglass stem");
    checkHover(text, "Not vegan (egg white) · keeps 1 day chilled (lime juice)");
    checkHover(sour(), "no keeps");
  });

  test("cautions stand only where they apply", () => {
    checkHover(sour(), "no ⚠");
    checkHover(sour().replace("simple syrup\n", "simple syrup\n  1 egg white\n"), "⚠ Raw egg");
    checkHover(sour().replace("simple syrup\n", "simple syrup\n  1 pasteurised egg white\n"), "no Raw egg");
    checkHover(sour().replace("22.5 ml lime juice", "30 ml espresso"), "⚠ Alcohol with caffeine", "local code");
  });

  test("stand above the figures, the gravest in full and the others by name", () => {
    const text = sour().replace("simple syrup\n", "simple syrup\n  1 egg white\n  40 ml espresso\n  garnish: orange zest, flamed\n");
    checkHover(text, /egg.* {2}\n⚠ Raw egg: .*\. Also: alcohol with caffeine and open flame\.\n\n\|/);
  });

  test("in parts without a size it says that only shares are known", () => {
    const text = "drink Bell Bu<>oy\n  method: stir 30 s\n  2 parts dry gin\n  1 part sweet vermouth\n";
    checkHover(text, "only shares are known", "no volume |", /dilution \| \d+ ± \d+ %/);
    checkHover(text.replace("  2 parts", "  total: 90 ml\n  2 parts"), "volume |", "no only shares");
  });

  test("for several it tells what one gets", () => {
    const one = /volume \| ([\d.]+)/.exec(hoverAt(sour()))![1];
    const four = sour().replace("  family", "  serves: 4\n  family").replace("60 ml", "240 ml").replaceAll("22.5 ml", "90 ml");
    checkHover(four, "for 4, figures for one");
    expect(Number(/volume \| ([\d.]+)/.exec(hoverAt(four))![1])).toBeCloseTo(Number(one), -1);
  });

  test("a riff names its parent", () =>
    checkHover(
      `${sour("drink Bell Buoy")}\ndrink Fo<>g\n  from: Bell Buoy\n  without lime juice\n`,
      "riff of Bell Buoy",
      "**below 0.65 to 1.25**",
    ));

  test.each(["drink Fo<>g", "drink Mist\n  from: Fo<>g\n  without sugar syrup\ndrink Fog", "menu Card\n  - Fo<>g 9\ndrink Fog"])(
    "a riff says what it makes different, wherever it is named (%j)",
    (head) =>
      checkHover(
        `${sour("drink Bell Buoy")}\n${head}\n  from: Bell Buoy\n  method: stir 30 s\n  swap white rum for 45 ml dry gin\n  without lime juice\n`,
        "From Bell Buoy: 45 ml dry gin for 60 ml white rum; without lime juice; another method.",
        "| Bell Buoy (the change) |",
        /strength \| .* \| [\d.]+ \([−+][\d.]+ ± [\d.]+\) \|/,
        /acid \| .* \| [\d.]+ \(−[\d.]+ ± [\d.]+\) \|/,
      ),
  );

  test("one with a pre-mixed bottle says how it is poured from it", () => {
    checkHover(sour(undefined, "60 ml white rum, batched"), "For service: 60 ml batch + 22.5 ml lime juice + 22.5 ml simple syrup.");
    checkHover(sour(), "no For service");
  });

  test("one that changes nothing says so", () =>
    checkHover(`${sour("drink Bell Buoy")}\ndrink Fo<>g\n  from: Bell Buoy\n`, "From Bell Buoy: nothing is changed.", "(the same)"));

  test.each([
    ["drink Fog\n  from: Bell Bu<>oy\n", "from"],
    ["menu Winter\n  - Bell Bu<>oy 12.50\n", "a menu line"],
    ["menu Winter\n  - Bell Buoy 12.<>50\n", "a price"],
  ])("shows where it is named: %j", (text) => checkHover(`${sour("drink Bell Buoy")}\n${text}`, "**Bell Buoy** · stem"));

  test("without ice takes up no water", () => checkHover("drink Di<>p\n  method: fine strain\n  50 ml dry gin\n", "dilution | none"));

  test("amounts stand in the house's unit, or in the editor's", () => {
    const oz = sour().replace("  freezer: -18 C", "  freezer: -18 C\n  units: oz\n  ounce: 30 ml");
    checkHover(oz, /volume \| [\d.]+ ± [\d.]+ oz at .*, \d+ % of 6/);
    const { house, document, position } = fixtureOf(oz);
    const asked = hover(house, document, position, "cl")!.contents as { value: string };
    expect(asked.value).toMatch(/volume \| [\d.]+ ± [\d.]+ cl/);
  });
});

describe("a pour", () => {
  test("tells what it brings: 60 ml of 40 % hold 60 × 0.40 × 0.78924 = 18.9 g of ethanol (OIML R 22 density)", () =>
    checkHover(
      sour("drink Bell Buoy", "60 ml white r<>um"),
      "**60 ml white rum**",
      "57 % of what is poured",
      "Brings 18.9 g alcohol · ",
      "in with the ice",
      "Stated: strength 40 %",
    ));

  test("and the same amount in the other units: 29.5735 ml US, 28.4131 ml imperial", () =>
    checkHover(sour("drink Bell Buoy", "60 ml white r<>um"), "= 6 cl · 2.03 oz US · 2.11 oz imperial · 56.9 g"));

  test("frozen, it says by how much less water the drink takes up, and that is the difference of the two drinks", () => {
    const frozen = hoverAt(sour("drink Bell Buoy", "60 ml white r<>um, frozen"));
    const [, less, water, warm] = /takes up \*\*([\d.]+) ml less water\*\* than with it at 20 °C, ([\d.]+) ml instead of ([\d.]+) ml/.exec(
      frozen,
    )!;
    expect(Number(less)).toBeGreaterThan(5);
    expect(Number(warm) - Number(water)).toBeCloseTo(Number(less), 0);
    expect(frozen).toContain("At −18 °C, the house's freezer");
    const plain = /dilution \| (\d+)/.exec(hoverAt(sour()))![1]!;
    expect(Math.abs(Number(plain) - Number(warm))).toBeLessThan(0.6);
  });

  test("hot, it says by how much more", () =>
    checkHover(
      "drink Night\n  method: shake 12 s\n  50 ml dry gin\n  30 ml espres<>so, hot\n",
      /takes up \*\*[\d.]+ ml more water\*\*/,
      "At 85 °C",
    ));

  test("after the ice it melts nothing", () =>
    checkHover(
      "drink Flag\n  method: shake 8 s\n  25 ml dry gin\n  75 ml soda wa<>ter, chilled, after\n",
      "after the ice",
      "At 4 °C",
      "no takes up",
    ));

  test.each([
    ["  1 sprig mi<>nt\n", "brings no liquid"],
    ["  5 ml simple sy<>rup, optional\n", "figures are without it"],
    ["  1 pinch sea sa<>lt, to rim\n", "On the rim"],
    ["  some nobody's ju<>ice\n", "unknown"],
    ["  top soda wa<>ter\n", "unknown: how full the glass is by then is not known"],
  ])("%j says so", (line, label) => checkHover(`drink Slip\n  method: stir 30 s\n  50 ml dry gin\n${line}`, label));

  test("an alternative, and what a swap puts in and takes out", () => {
    checkHover(`${sour("drink Bell Buoy")}    or 20 ml honey syr<>up\n`, "instead of the pour above");
    const riff = `${sour("drink Bell Buoy")}\ndrink Fog\n  from: Bell Buoy\n  swap white rum for 45 ml dry gin\n`;
    checkHover(riff.replace("dry gin", "dry g<>in"), "**45 ml dry gin**", "of what is poured");
    checkHover(riff.replace("swap white rum", "swap white r<>um"), "In Bell Buoy, until this takes it out", "**60 ml white rum**");
    checkHover(riff.replace("swap white rum for 45 ml dry gin", "without white r<>um"), "In Bell Buoy", "**60 ml white rum**");
  });

  test("in a prep it tells its share of the whole", () => {
    checkHover("prep brine\n  20 g sea sa<>lt\n  80 g water\n", "**20 g sea salt** · 20 % of what goes in by weight");
    checkHover("prep brine\n  20 g sea salt\n  to 100 g wat<>er\n", "80 % of what goes in by weight", "Brings 80 g water.");
    checkHover("prep syrup\n  parts by: weight\n  2 parts white sug<>ar\n  1 part water\n", "67 % of what goes in by weight");
    checkHover("prep rum\n  700 ml aged rum\n  8 bay lea<>ves, strained out\n", "strained out", "brings no weight");
  });

  test("the word behind it that means something", () =>
    checkHover(
      sour("drink Bell Buoy", "60 ml white rum, fro<>zen"),
      "**frozen**",
      "At −18 °C, the house's freezer: the drink takes up",
      "no Here:",
    ));
});

describe("preps, stock and the rest of the house", () => {
  test("a prep: 2 : 1 by weight is 66.7 °Bx of sugar of 99.8 % and weighs what it weighs", () =>
    checkHover(
      "prep rich sy<>rup\n  200 g white sugar\n  100 g water\n",
      "**rich syrup** · made here",
      ", 300 g",
      /sugar \| 66\.\d ?(± [\d.]+ )?°Bx/,
      /: 1 by weight/,
      /density \| 1\.3\d g\/ml/,
    ));

  test("a prep, a stock and a pour of it say what they contain", () => {
    checkHover("drink Slip\n  20 ml crea<>m\n", "**Assumed to contain milk.**");
    checkHover(
      "prep mi<>x\n  100 ml aged rum\n  5 ml worcester sauce\n",
      "**Assumed to contain gluten and fish.** Not stated for aged rum.",
    );
    checkHover("stock house ora<>nge wine\n  kind: wine\n", "**Assumed to contain sulphites.** Not stated for house orange wine.");
    checkHover("stock house ora<>nge wine\n  kind: wine\n  allergens: sulphites\n", "**Contains sulphites.**", "no stated for");
  });

  test("a stock: each figure with where it stands", () =>
    checkHover(
      `${bar.replace("white rum", "lime juice").replace("spirit", "juice").replace("  abv: 40 %", "  acid: 6 g/100 ml as citric  # titrated here")}`.replace(
        "stock lime",
        "stock li<>me",
      ),
      "**lime juice** · juice",
      "| acid | 6 g/100 ml as citric | stated here: titrated here |",
      "the larder's lime juice: USDA SR28 09160",
    ));

  test("a stock of which nothing is known says what is missing", () =>
    checkHover("stock mystery bot<>tle\n", "Nobody states its strength or sugar or acid"));

  test.each([
    ["drink Slip\n  50 <>ml dry gin\n", "**ml**"],
    ["drink Slip\n  2 dash<>es orange bitters\n", "Here: 0.8"],
    ["house Bar\n  ounce: 30 ml\n\ndrink Slip\n  2 o<>z dry gin\n", "Here: 30 ml"],
    ["drink Slip\n  total: 90 m<>l\n", "**ml**"],
    ["drink Slip\n  gla<>ss: coupe\n", "Example: `glass: coupe, chilled`"],
    ["stock gin\n  kind: spi<>rit\n", "One of: `spirit`, `liqueur`"],
    ["drink Slip\n  glass: cou<>pe, chilled\n", "to the brim"],
    ["drink Slip\n  family: egg so<>ur\n", "| ratio | 6 to 13 |"],
    ["drink Slip\n  family: egg so<>ur\n", "Common practice, from memory, no source"],
    ["drink Slip\n  ice: crushed i<>ce\n", "3 times the water clings to it"],
    ["drink Slip\n  garnish: 1 wed<>ge of lime; none\n", "**wedge**"],
    ["drink Slip\n  garnish: nobody's zest<>\n", "Example: `garnish: "],
    ["drink Slip\n  rim: sea sa<>lt, half\n", "99 to 100 g/100 g"],
    ["family long so<>ur\n  ratio: none\n", "not weighed"],
    ["glass st<>em\n  holds: 200 ml\n", "poured to 90 %, as is usual: 180 ml"],
    ["glass st<>em\n", "is not stated"],
    ["glass st<>em\n  stored: freezer\n", "Poured into at −18 ± 2 °C"],
    ["drink Slip\n  method: shake with freezer i<>ce\n  50 ml dry gin\n", "÷ 370 J/g"],
    ["drink Slip\n  ice: freezer i<>ce\n", "A gram takes 370 J to melt, 334 of them at 0 °C"],
    [
      "drink Sl<>ip\n  method: build over 120 g cubed ice\n  50 ml dry gin\n",
      /On its ice it takes up \d+ to \d+ ml more water in 5 minutes, \d+ to \d+ ml in 15 \(practice, no source\)/,
    ],
    ["ice chipped i<>ce\n  kind: crushed\n  temperature: -1 C\n", "−1 °C"],
    ["menu Win<>ter\n  - Slip 12\n", "1 drinks"],
    ["house B<>ar\n  ounce: imperial\n", "28.4 ml"],
    ["dri<>nk Slip\n", "A spec"],
    ["prep syrup\n  100 g white sugar\n  100 g water, ho<>t\n", "Here: 85 °C"],
    ["pre<>p syrup\n", "Something made here"],
  ])("%j", (text, label) => checkHover(text, label));

  test("a step tells what it does to water and temperature, and what is in the vessel then", () => {
    checkHover(
      sour("drink Bell Buoy").replace("shake 12 s", "sha<>ke 12 s"),
      /Adds \d+ ± \d+ ml water, takes it from 2\d(?:\.\d)? °C to −\d/,
      "it starts to freeze at −",
      "In the vessel: white rum, lime juice and simple syrup",
    );
    checkHover(sour("drink Bell Buoy").replace("fine strain", "fine str<>ain"), /: no change/);
    checkHover("drink Flag\n  method: sha<>ke 8 s\n  25 ml dry gin\n  75 ml soda water, after\n", "Poured after it: soda water");
    checkHover("drink Flag\n  method: sing to i<>t\n  25 ml dry gin\n", "changes no number");
  });
});

describe("a step's sum", () => {
  const step = (method: string) => sour("drink Bell Buoy").replace("shake 12 s; fine strain", method);

  test("of heat comes out even: what drink, vessel and ice give is what melts it, at 334 J/g", () => {
    const said = hoverAt(step("sha<>ke 12 s"));
    const sum =
      /\*Heat:\* ([\d.]+) kJ from the drink \+ ([\d.]+) kJ from the vessel \+ ([\d.]+) kJ from the rest of the ice = ([\d.]+) kJ; ÷ (\d+) J\/g = ([\d.]+) g/;
    const [drink, vessel, ice, whole, perGram, melted] = sum.exec(said)!.slice(1).map(Number);
    expect(Math.abs(drink! + vessel! + ice! - whole!)).toBeLessThan(0.21); // each is rounded to a tenth
    expect(Math.abs((1000 * whole!) / perGram! - melted!)).toBeLessThan(0.3);
    expect(perGram).toBe(334); // CRC Handbook: 333.55, from memory
  });

  test.each([
    ["shake 12 s with freezer i<>ce", ["kJ into the rest of the ice"]],
    ["stir 30 s; sha<>ke 6 s", ["in 6 s 82 % of ice and vessel take part"]],
    ["sti<>r 30 s", ["49 % of the way from 0 °C"]],
    ["shake with 20 g crushed i<>ce", ["all the ice melts before it is so cold"]],
    ["blend without i<>ce", ["No ice: nothing melts.", "no Adds"]],
    ["hold at -5<> C", ["Takes it from", "to −5.0 ± 1.0 °C", "it stays liquid"]],
    ["fre<>eze", ["part of it is ice"]],
    ["pre-dil<>ute 25 %", [/Adds 26\.\d ± 0\.\d ml water/]],
    ["pre-dil<>ute", ["unknown: how much water “pre-dilute” adds is not stated"]],
    // 3 × 44.01 g ÷ 22.414 l, from memory.
    ["carbon<>ate to 3 vol", ["5.89 g of carbon dioxide in a litre"]],
    ["warm the gl<>ass", ["The glass is then at 50 ± 8 °C"]],
  ] as const)("%s", (method, labels) => checkHover(step(method), ...labels));
});

describe("places", () => {
  test("an accent, a fraction and an emoji before the cursor", () => {
    const text =
      "stock crème 🍋 de cacao\n  kind: liqueur\n  abv: 25 %\n  sugar: 30 g/100 ml\n\ndrink Slip\n  ½ oz crème 🍋 de cac<>ao, frozen\n";
    expect(hoveredText(text)).toBe("½ oz crème 🍋 de cacao, frozen");
    checkHover(text, "crème 🍋 de cacao**");
    expect(hoveredText(text.replace("cac<>ao", "cacao").replace("frozen", "fro<>zen"))).toBe("frozen");
    expect(hoveredText(text.replace("cac<>ao", "cacao").replace("½ oz", "½ o<>z"))).toBe("oz");
  });

  test.each([
    "drink Slip\n  50 ml gin # a com<>ment\n",
    "drink Slip\n  story: Named for the lamp.\n    Long a<>go.\n",
    "\n<>\n",
    "cocktail Slip\n  gl<>ass: coupe\n",
    "menu Winter\n  - nobody's drink<> 12.50\n",
  ])("%j says nothing", (text) => expect(hoverAt(text)).toBe(""));

  test("what people typed is never markup", () => checkHover("drink *Slip* | <b>lo<>w</b>\n", "\\*Slip\\* \\| \\<b\\>low"));
});

describe("any text", () => {
  const word = fc.constantFrom(
    "drink",
    "prep",
    "stock",
    "menu",
    "from:",
    "swap",
    "without",
    "or",
    "50 ml",
    "2 parts",
    "to 100 g",
    "gin",
    "lime juice",
    "½ oz",
    "for",
    "-",
    "method:",
    "shake 12 s",
    ";",
    ",",
    "#",
    "family: sour",
    "🍋",
    "é",
    '"',
    "total: 90 ml",
    "Slip",
    "12.50",
  );
  const line = fc
    .tuple(fc.constantFrom("", "  ", "    "), fc.array(word, { maxLength: 5 }))
    .map(([indent, words]) => indent + words.join(" "));
  const any = fc.oneof(
    fc.array(line, { maxLength: 12 }).map((lines) => lines.join("\n")),
    fc.string({ unit: "grapheme", maxLength: 60 }),
  );

  test(
    "and any position answers or stays silent, and never throws",
    () =>
      fc.assert(
        fc.property(any, fc.nat(14), fc.nat(40), (text, row, character) => {
          const house = houseOf(`${text}\n`);
          const document = house.document(`${root}/spec.drink`)!;
          const found = hover(house, document, { line: row, character });
          if (found) expect((found.contents as { value: string }).value).not.toBe("");
        }),
        { numRuns: 150 },
      ),
    30_000,
  );
});
