/** Amounts in running prose: what is read, and what is left alone. No source but the language's own numerals: how people write. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { amountInWords } from "../../../server/house/book/number-words.ts";
import { amountsIn } from "../../../server/house/book/prose-amounts.ts";

const read = (prose: string) =>
  amountsIn(prose).map(({ start, end, value, unit, form }) => [prose.slice(start, end), value, unit.id, form]);

test.each([
  ["Give it 25 ml of lemon juice.", "25 ml", 25, "ml", "figures"],
  ["Give it 25ml lemon juice.", "25ml", 25, "ml", "figures"],
  ["Give it 22.5 ml of it.", "22.5 ml", 22.5, "ml", "figures"],
  ["¾ oz lemon juice", "¾ oz", 0.75, "oz", "figures"],
  ["1½ ounces of gin", "1½ ounces", 1.5, "oz", "figures"],
  ["1 1/2 fl oz of gin", "1 1/2 fl oz", 1.5, "oz", "figures"],
  ["twenty-five millilitres of lemon juice", "twenty-five millilitres", 25, "ml", "words"],
  ["Twenty two and a half milliliters", "Twenty two and a half milliliters", 22.5, "ml", "words"],
  ["one hundred and five grams", "one hundred and five grams", 105, "g", "words"],
  ["one hundred and three-eighths ounces", "one hundred and three-eighths ounces", 100.375, "oz", "words"],
  ["half an ounce of lemon juice", "half an ounce", 0.5, "oz", "words"],
  ["three quarters of an ounce", "three quarters of an ounce", 0.75, "oz", "words"],
  ["one and three-quarter ounces", "one and three-quarter ounces", 1.75, "oz", "words"],
  ["a quarter ounce of syrup", "a quarter ounce", 0.25, "oz", "words"],
  ["No: half an ounce", "half an ounce", 0.5, "oz", "words"],
  ["two dashes of clove bitters", "two dashes", 2, "dash", "words"],
  ["é 🍋 25 ml of lemon juice", "25 ml", 25, "ml", "figures"],
])("%s", (prose, text, value, unit, form) => expect(read(prose)).toEqual([[text, value, unit, form]]));

test.each([
  "20 to 25 ml of lemon juice",
  "20–25 ml of lemon juice",
  "20 - 25 ml of lemon juice",
  "twenty to twenty-five millilitres",
  "about 25 ml of lemon juice",
  "another 25 ml of lemon juice",
  "not 25 ml",
  "more than an ounce",
  "an ounce of prevention",
  "1,000 ml of water",
  "2,5 cl of gin",
  "25 minutes of rain",
  "25 lemons",
  "at forty per cent",
  "the twenty-five of us",
  "room 25, ml of nothing",
  "three lines and a half",
])("left alone: %s", (prose) => expect(read(prose)).toEqual([]));

test("whatever the book writes in words is read back", () =>
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 8 * 400 }), fc.constantFrom("British" as const, "American" as const), (eighths, spelling) => {
      const value = eighths / 8;
      const text = amountInWords(value, { one: "ounce", many: "ounces" }, spelling);
      const [found] = amountsIn(text);
      expect([text, found?.value]).toEqual([text, value]);
    }),
  ));

test("any text is read, and what is found stands in it", () =>
  fc.assert(
    fc.property(
      fc.array(fc.oneof(fc.constantFrom("25", " ", "ml", "half", "an", "ounce", "and", "a", "of", "twenty", "-", "½", "1/2"), fc.string())),
      (parts) => {
        const text = parts.join("");
        for (const { start, end, value } of amountsIn(text)) {
          expect(start).toBeLessThan(end);
          expect(end).toBeLessThanOrEqual(text.length);
          expect(Number.isFinite(value)).toBe(true);
        }
      },
    ),
  ));
