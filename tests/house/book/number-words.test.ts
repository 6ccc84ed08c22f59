/**
 * Numbers in words. Hyphens and "and": New Hart's Rules 11.1 (British) and The Chicago Manual of Style 9
 * (American), from memory; spellings as in the Concise Oxford Dictionary.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { amountInWords, numberInWords } from "../../../server/house/book/number-words.ts";
import { spelled, wordForms } from "../../../server/house/book/spelling.ts";

test.each([
  [0, "zero"],
  [4, "four"],
  [8, "eight"],
  [12, "twelve"],
  [14, "fourteen"],
  [15, "fifteen"],
  [40, "forty"],
  [90, "ninety"],
  [21, "twenty-one"],
  [99, "ninety-nine"],
  [105, "one hundred and five"],
  [350, "three hundred and fifty"],
  [1001, "one thousand and one"],
  [22.5, "twenty-two and a half"],
  [0.25, "a quarter"],
  [1 / 3, "a third"],
  [17.3, "seventeen point three"],
  [0.05, "zero point zero five"],
  [1e-9, "zero"],
  [123456.789, "one hundred and twenty-three thousand four hundred and fifty-six point seven eight nine"],
  [-5, "minus five"],
])("%d is %s", (value, words) => {
  expect(numberInWords(value, "British")).toBe(words);
});

test("Americans leave out the and", () => {
  expect([105, 1250].map((value) => numberInWords(value, "American"))).toEqual(["one hundred five", "one thousand two hundred fifty"]);
});

test.each([
  [0.5, "half an ounce"],
  [0.75, "three quarters of an ounce"],
  [1, "one ounce"],
  [1.25, "one and a quarter ounces"],
  [2 / 3, "two thirds of an ounce"],
  [2, "two ounces"],
])("%d ounces are %s", (value, words) => {
  expect(amountInWords(value, { one: "ounce", many: "ounces" }, "British")).toBe(words);
});

test("any number is said, in letters alone, and no two whole ones alike", () => {
  fc.assert(fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (value) => /^[a-z -]+$/.test(numberInWords(value, "British"))));
  fc.assert(
    fc.property(fc.nat(99999), fc.nat(99999), (one, other) => {
      return one === other || numberInWords(one, "British") !== numberInWords(other, "British");
    }),
  );
});

test("a text is spelled as the book says, capitals and endings kept, and twice is once", () => {
  const text = "Contains sulphites. Colour: grey, 2 litres, pasteurised, 5 per cent";
  const american = spelled(text, "American");
  expect(american).toBe("Contains sulfites. Color: gray, 2 liters, pasteurized, 5 percent");
  expect(spelled(american, "American")).toBe(american);
  expect(spelled(text, "British")).toBe(text);
});

// From memory of Merriam-Webster's Collegiate and the Concise Oxford, as the table is.
test.each([
  "litres liters",
  "centre center",
  "centres centers",
  "Centred Centered",
  "centring centering",
  "fibres fibers",
  "colours colors",
  "coloured colored",
  "COLOURING COLORING",
  "colourings colorings",
  "flavoured flavored",
  "savouries savories",
  "odours odors",
  "vapours vapors",
  "greyed grayed",
  "greying graying",
  "moulded molded",
  "moulding molding",
  "draughts drafts",
  "pasteurises pasteurizes",
  "pasteurised pasteurized",
  "pasteurising pasteurizing",
  "unpasteurised unpasteurized",
  "caramelised caramelized",
  "caramelising caramelizing",
  "atomisers atomizers",
  "molluscs mollusks",
  "sulphites sulfites",
  "yoghurts yogurts",
])("the forms of a word go with it: %s", (words) => {
  const [british, american] = words.split(" ");
  expect(spelled(british!, "American")).toBe(american);
});

test("no form of a word is the same on both sides, and none is another word of the other side", () => {
  const american = new Set(wordForms.map((row) => row.American));
  for (const { British, American } of wordForms) {
    expect(British).not.toBe(American);
    expect(American).not.toMatch(/erd$|ei/);
    expect(american).not.toContain(British);
    expect(spelled(British, "American")).toBe(American);
  }
});

test("a word that only starts like one of the table stays as it is", () =>
  expect(spelled("The greyhound, colourless, in a centrepiece of draughtsmen.", "American")).toBe(
    "The greyhound, colourless, in a centrepiece of draughtsmen.",
  ));
