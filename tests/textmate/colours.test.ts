import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, expect, test } from "vitest";
import type { IGrammar } from "vscode-textmate";
import { entryKinds, fields } from "../../grammar/fields.ts";
import { units } from "../../grammar/units.ts";
import { modifiers } from "../../server/house/modifiers.ts";
import { loadGrammar, tokenize } from "./engine.ts";

let grammar: IGrammar;
beforeAll(async () => {
  grammar = await loadGrammar();
});

/** `50 number | ml unit`: the last word of a scope is enough to know it here; the themes' table below holds the rest. */
const shown = (line: string) => shownAll(line)[0];
const shownAll = (text: string) =>
  tokenize(grammar, text).map((tokens) => tokens.map(({ text, scope }) => `${text} ‹${scope.split(".").at(-1)}›`).join(" "));

test.each([
  // entries
  ["drink Lantern Sour", "drink ‹entry› Lantern Sour ‹declared›"],
  ["drink Lantern Sour, Low Tide # the riff", "drink ‹entry› Lantern Sour, Low Tide ‹declared› # ‹comment› the riff ‹number-sign›"],
  ['stock "rinse, house"', 'stock ‹entry› "rinse, house" ‹name›'],
  ["drink Blend #4", "drink ‹entry› Blend #4 ‹declared›"],
  ["drink 🍋 Crème de Cassis", "drink ‹entry› 🍋 Crème de Cassis ‹declared›"],
  ["drink", "drink ‹entry›"],
  ["dri", "dri ‹›"],
  ["cocktail Lantern # later", "cocktail Lantern ‹› # ‹comment› later ‹number-sign›"],
  // fields
  ["  glass: coupe, chilled", "glass ‹field› : ‹key-value› coupe ‹value› , ‹separator› chilled ‹modifier›"],
  ["glass: coupe", "glass ‹field› : ‹key-value› coupe ‹value›"],
  ["  glass: none", "glass ‹field› : ‹key-value› none ‹none›"],
  ["  Parts By: weight", "Parts By ‹field› : ‹key-value› weight ‹value›"],
  ["  family: egg sour # for now", "family ‹field› : ‹key-value› egg sour ‹reference› # ‹comment› for now ‹number-sign›"],
  ["  abv: 43 %", "abv ‹field› : ‹key-value› 43 ‹quantity› % ‹unit›"],
  ["  ratio: 4 to 13", "ratio ‹field› : ‹key-value› 4 to 13 ‹quantity›"],
  ["  freezer: −18 C", "freezer ‹field› : ‹key-value› −18 ‹quantity› C ‹unit›"],
  ["  acid: 6 g/100 ml as citric", "acid ‹field› : ‹key-value› 6 ‹quantity› g/100 ml ‹unit› as ‹other› citric ‹value›"],
  ["  price: 26.50 per 700 ml", "price ‹field› : ‹key-value› 26.50 ‹quantity› per ‹other› 700 ‹quantity› ml ‹unit›"],
  ["  valid from: 2026-11-01", "valid from ‹field› : ‹key-value› 2026-11-01 ‹date›"],
  [
    "  each: leaf 0.1 g; sprig 2 g",
    "each ‹field› : ‹key-value› leaf ‹value› 0.1 ‹quantity› g ‹unit› ; ‹separator› sprig ‹value› 2 ‹quantity› g ‹unit›",
  ],
  ["  garnsh: none", "garnsh ‹unknown› : ‹key-value› none ‹›"],
  // method
  [
    "  method: dry shake 10 s; shake 12 s with cracked ice; fine strain",
    "method ‹field› : ‹key-value› dry shake ‹technique› 10 ‹quantity› s ‹unit› ; ‹separator› shake ‹technique› 12 ‹quantity› s ‹unit› with ‹other› cracked ice ‹value› ; ‹separator› fine strain ‹technique›",
  ],
  [
    "  method: pre-dilute 25 %; hold at -5 C; strain over large cube",
    "method ‹field› : ‹key-value› pre-dilute ‹technique› 25 ‹quantity› % ‹unit› ; ‹separator› hold ‹technique› at ‹other› -5 ‹quantity› C ‹unit› ; ‹separator› strain ‹technique› over ‹other› large cube ‹value›",
  ],
  // quantities
  ["  50 ml aged rum", "50 ‹quantity› ml ‹unit› aged rum ‹ingredient›"],
  ["  50ml aged rum", "50 ‹quantity› ml ‹unit› aged rum ‹ingredient›"],
  ["  50\u00a0ml aged rum", "50 ‹quantity› ml ‹unit› aged rum ‹ingredient›"],
  ["50 ml aged rum", "50 ‹quantity› ml ‹unit› aged rum ‹ingredient›"],
  ["  .5 oz. gin", ".5 ‹quantity› oz. ‹unit› gin ‹ingredient›"],
  ["  1 1/2 oz gin", "1 1/2 ‹quantity› oz ‹unit› gin ‹ingredient›"],
  ["  1-1/2 oz gin", "1-1/2 ‹quantity› oz ‹unit› gin ‹ingredient›"],
  ["  1½ oz gin", "1½ ‹quantity› oz ‹unit› gin ‹ingredient›"],
  ["  1 ½ oz gin", "1 ½ ‹quantity› oz ‹unit› gin ‹ingredient›"],
  ["  1⁄2 oz gin", "1⁄2 ‹quantity› oz ‹unit› gin ‹ingredient›"],
  ["  2,5 cl gin", "2,5 ‹quantity› cl ‹unit› gin ‹ingredient›"],
  ["  10–15 ml gin", "10–15 ‹quantity› ml ‹unit› gin ‹ingredient›"],
  ["  10 to 15 ml gin", "10 to 15 ‹quantity› ml ‹unit› gin ‹ingredient›"],
  ["  6-8 mint leaves", "6-8 ‹quantity› mint leaves ‹ingredient›"],
  ["  about 3 g salt", "about ‹other› 3 ‹quantity› g ‹unit› salt ‹ingredient›"],
  ["  1 egg white", "1 ‹quantity› egg white ‹ingredient›"],
  ["  1 lime", "1 ‹quantity› lime ‹ingredient›"],
  ["  2 oz wt sugar", "2 ‹quantity› oz wt ‹unit› sugar ‹ingredient›"],
  ["  30 ml 12 year rye", "30 ‹quantity› ml ‹unit› 12 year rye ‹ingredient›"],
  ["  2 dashes of clove bitters", "2 ‹quantity› dashes ‹unit› of ‹other› clove bitters ‹ingredient›"],
  ["  top soda water", "top ‹other› soda water ‹ingredient›"],
  ["  top to 180 ml soda water", "top to ‹other› 180 ‹quantity› ml ‹unit› soda water ‹ingredient›"],
  ["  to 100 g water", "to ‹other› 100 ‹quantity› g ‹unit› water ‹ingredient›"],
  ["  rinse 5 ml absinthe, discarded", "rinse ‹other› 5 ‹quantity› ml ‹unit› absinthe ‹ingredient› , ‹separator› discarded ‹modifier›"],
  ["  some mint", "some ‹other› mint ‹ingredient›"],
  ["  hot sauce, to taste", "hot sauce ‹ingredient› , ‹separator› to taste ‹modifier›"],
  ["  gin 50 ml", "gin ‹ingredient› 50 ‹quantity› ml ‹unit›"],
  ["  Lemon juice: 25 ml", "Lemon juice ‹unknown› : ‹key-value› 25 ‹quantity› ml ‹unit›"],
  // after the comma
  ["  50 ml rum, frozen # cold", "50 ‹quantity› ml ‹unit› rum ‹ingredient› , ‹separator› frozen ‹modifier› # ‹comment› cold ‹number-sign›"],
  [
    "  50 ml rum, at -18 C, from the well",
    "50 ‹quantity› ml ‹unit› rum ‹ingredient› , ‹separator› at ‹modifier› -18 ‹quantity› C ‹unit› , ‹separator› from the well ‹note›",
  ],
  ["  2 g salt, to rim, half", "2 ‹quantity› g ‹unit› salt ‹ingredient› , ‹separator› to rim ‹modifier› , ‹separator› half ‹note›"],
  ["  50 ml “rum, dark”, frozen", "50 ‹quantity› ml ‹unit› “rum, dark” ‹name› , ‹separator› frozen ‹modifier›"],
  // riffs
  ["    or 25 ml lime juice", "or ‹control› 25 ‹quantity› ml ‹unit› lime juice ‹ingredient›"],
  ["  25 ml orange juice", "25 ‹quantity› ml ‹unit› orange juice ‹ingredient›"],
  [
    "  swap aged rum for 60 ml oloroso sherry",
    "swap ‹control› aged rum ‹ingredient› for ‹control› 60 ‹quantity› ml ‹unit› oloroso sherry ‹ingredient›",
  ],
  ["  without egg white", "without ‹control› egg white ‹ingredient›"],
  ["  without all gin", "without all ‹control› gin ‹ingredient›"],
  // menus
  ["  section Before the boat", "section ‹control› Before the boat ‹section›"],
  ["  - Lantern Sour, Low Tide 11.00", "- ‹begin› Lantern Sour, Low Tide ‹reference› 11.00 ‹price›"],
  ["  - Lantern No 4", "- ‹begin› Lantern No ‹reference› 4 ‹price›"], // the house decides: here it is a guess
  ["  - Lantern No 4 £12", "- ‹begin› Lantern No 4 ‹reference› £ ‹unit› 12 ‹price›"],
  ["  - Port 12.50 / 45.00 carafe", "- ‹begin› Port ‹reference› 12.50 ‹price› / ‹separator› 45.00 ‹price› carafe ‹text›"],
  // comments
  ["# a house", "# ‹comment› a house ‹number-sign›"],
  ["  #no space", "# ‹comment› no space ‹number-sign›"],
  ["  # allow no-glass: poured at the table", "# ‹comment› allow ‹allow› no-glass ‹rule› : poured at the table ‹number-sign›"],
])("%j", (line, expected) => expect(shown(line)).toBe(expected));

test("prose goes on over deeper lines and blank ones, raw, and ends where the indent does", () =>
  expect(shownAll("  story: Named # for the lamp,\n    50 ml of light.\n\n      glass: none\n  50 ml gin\n")).toEqual([
    "story ‹field› : ‹key-value› Named # for the lamp, ‹prose›",
    "50 ml of light. ‹prose›",
    "",
    "glass: none ‹prose›",
    "50 ‹quantity› ml ‹unit› gin ‹ingredient›",
    "",
  ]));

test("prose written at the margin ends at the margin", () =>
  expect(shownAll("story: Once\n  upon a tide\ndrink Lantern").slice(1)).toEqual([
    "upon a tide ‹prose›",
    "drink ‹entry› Lantern ‹declared›",
  ]));

test("a combining mark or an emoji moves nothing after it", () =>
  expect(tokenize(grammar, "  50 ml cafe\u0301 🥃 rum, frozen")[0]?.map((token) => token.text)).toEqual([
    "50",
    "ml",
    "cafe\u0301 🥃 rum",
    ",",
    "frozen",
  ]));

test("every entry word of the table opens an entry", () => {
  for (const kind of entryKinds) expect(shown(`${kind} Lantern`)).toBe(`${kind} ‹entry› Lantern ‹declared›`);
});

test("every field of the table is coloured as one", () => {
  for (const { name } of fields) expect(shown(`  ${name}: x`)).toMatch(`${name} ‹field› : ‹key-value›`);
});

test("every unit and every spelling of it is coloured as one", () => {
  for (const { id, also } of units)
    for (const word of [id, ...also]) expect(shown(`  3 ${word} gin`)).toBe(`3 ‹quantity› ${word} ‹unit› gin ‹ingredient›`);
});

test("every modifier of the house's table is coloured as one, another word is a note", () => {
  for (const { word } of modifiers) expect(shown(`  3 ml gin, ${word}`)).toMatch(new RegExp(`, ‹separator› ${word} ‹modifier›$`));
  expect(shown("  3 ml gin, frozenish")).toMatch(/frozenish ‹note›$/);
});

test("a word that only starts like a unit is none", () =>
  expect(shown("  3 glorious gins")).toBe("3 ‹quantity› glorious gins ‹ingredient›"));

test("themes know the first words of every scope", () => {
  const known =
    /^(comment\.line|constant\.(numeric|language)|entity\.name\.(type|tag)|keyword\.(control|other)|markup\.heading|meta|punctuation|storage\.modifier|string\.(un)?quoted|support\.function|variable\.other)\b/;
  const file = readFileSync(new URL("../../grammar/mutchkin.tmLanguage.json", import.meta.url), "utf8");
  const scopes = [...file.matchAll(/"(?:name|contentName)": "(.*?\.mutchkin)"/g)].flatMap(([, names]) => names?.split(" ") ?? []);
  expect(scopes.length).toBeGreaterThan(30);
  expect(scopes.filter((scope) => !known.test(scope))).toEqual([]);
});

test("every line of every sample says something", () => {
  const folder = new URL("../../samples/", import.meta.url);
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".drink"));
  for (const file of files) {
    const text = readFileSync(new URL(file, folder), "utf8").replace(/^\uFEFF/, "");
    const lines = text.split(/\r\n|\r|\n/);
    for (const [index, tokens] of tokenize(grammar, text).entries()) {
      // An unknown field's value is left plain, like everything that is not understood.
      const understood = /^\s/.test(lines[index] ?? "") && tokens[0]?.scope !== "meta.field.unknown";
      if (understood)
        expect
          .soft(
            tokens.filter(({ scope }) => scope === ""),
            `${file}:${index + 1}`,
          )
          .toEqual([]);
    }
  }
});

// A line of each is read in milliseconds; a pattern that backtracks would take hours.
test.each(["1", "1/", "1 ", "1.", "a ", "a,", "1,", "top to ", "- 1 / ", "for ", "# allow ", '"', ", at ", ";", "½", "to 1 "])(
  "a line of five thousand characters (%j) is read in no time",
  (piece) => {
    for (const start of ["  ", "  swap ", "  method: ", "  price: ", "  - ", "drink ", "  glass: "]) {
      tokenize(grammar, start + piece.repeat(5000 / piece.length));
    }
  },
);
