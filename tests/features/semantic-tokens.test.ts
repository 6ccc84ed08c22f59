import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { edit } from "../../grammar/edit.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import { semanticTokens, tokenEdits, tokenModifiers, tokenTypes } from "../../server/features/semantic-tokens.ts";
import type { SpecDocument } from "../../server/house/document.ts";
import { anyChange, anyText } from "../grammar/texts.ts";
import { houseIn, houseOf, root } from "../house/make.ts";

interface Token {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly looks: string;
}

/** The packed numbers as the protocol (LSP 3.17, "Semantic Tokens") says that they are read. */
function unpacked(data: readonly number[]): Token[] {
  const tokens: Token[] = [];
  let [line, start] = [0, 0];
  for (let at = 0; at < data.length; at += 5) {
    const [lines, characters, length, type, bits] = data.slice(at, at + 5) as [number, number, number, number, number];
    start = lines === 0 ? start + characters : characters;
    line += lines;
    const modifiers = tokenModifiers.filter((_, index) => bits & (1 << index));
    tokens.push({ line, start, end: start + length, looks: [tokenTypes[type], ...modifiers].join(".") });
  }
  return tokens;
}

/** Each token of the text as `name ‹look›`, line by line. */
function shown(text: string, syntax = false): string[] {
  const house = houseOf(text);
  const document = house.document(`${root}/spec.drink`)!;
  const lines = print(document.tree).split("\n");
  return unpacked(semanticTokens(house, document, undefined, syntax)).map(
    ({ line, start, end, looks }) => `${lines[line]!.slice(start, end)} ‹${looks}›`,
  );
}

/** What is declared elsewhere: some bought, some made here, a drink. */
const shelf = `
=== shelf.drink
stock aged rum
  kind: spirit
  abv: 43 %
prep maple syrup, smoked
  1 part maple syrup
drink Tide
  50 ml aged rum
`;
const pourOf = (line: string) => shown(`drink Lantern\n  ${line}${shelf}`).slice(1);

describe("names look like what they mean", () => {
  test.each([
    ["50 ml aged rum", ["aged rum ‹variable›"]], // bought
    ["50 ml lemon juice, chilled", ["lemon juice ‹variable.defaultLibrary›"]], // nobody's but the larder's
    ["20 ml maple syrup, smoked, hot", ["maple syrup, smoked ‹function›"]], // made here
    ["50 ml Tide", ["Tide ‹class›"]], // a drink poured in a drink
    ["50 ml liquid moonlight, frozen", ["liquid moonlight ‹string›"]], // nobody knows it
    ['50 ml "aged rum", frozen', ['"aged rum" ‹variable›']],
    ["1½ oz crème 🍋 # e\u0301", ["crème 🍋 ‹string›"]],
    ["or 40 ml tidewater", ["tidewater ‹string›"]],
    ["swap aged rum for 60 ml tidewater", ["aged rum ‹variable›", "tidewater ‹string›"]],
    ["without all Tide", ["Tide ‹class›"]],
    ["from: Tide", ["Tide ‹class›"]],
    ["from: Neap, Low", ["Neap, Low ‹string›"]],
    ["family: sour", ["sour ‹interface.defaultLibrary›"]],
    ["family: sower", ["sower ‹string›"]],
    ["family: none", []],
    ["glass: coupe, chilled", ["coupe ‹struct.defaultLibrary›"]],
    ["glass: bucket, chilled", ["bucket ‹string›"]],
    ["method: shake 12 s with cracked ice", ["cracked ice ‹struct.defaultLibrary›"]],
    ["garnish: lemon juice; a paper boat", ["lemon juice ‹variable.defaultLibrary›"]],
    ["story: aged rum", []],
    ["50 ml", []],
  ])("%s", (line, expected) => expect(pourOf(line)).toEqual(expected));

  test("where they are declared, too", () =>
    expect(shown("stock gin\n  aka: dry gin; Été\nprep brine\nglass pot\nfamily fizz\nmenu Card\n  - Nothing 9\n")).toEqual([
      "gin ‹variable.declaration›",
      "dry gin ‹variable.declaration›",
      "Été ‹variable.declaration›",
      "brine ‹function.declaration›",
      "pot ‹struct.declaration›",
      "fizz ‹interface.declaration›",
      "Card ‹namespace.declaration›",
      "Nothing ‹string›",
    ]));

  test("a menu's drinks, known or not, without their prices", () =>
    expect(shown(`menu Card\n  section Early\n  - Tide 12.50\n  - Tidings £9\n${shelf}`).slice(1)).toEqual([
      "Tide ‹class›",
      "Tidings ‹string›",
    ]));

  test("what is computed nowhere has no unknown names", () =>
    expect(shown(`cocktail Lantern\n  50 ml aged rum\n  50 ml moonlight\n${shelf}`)).toEqual(["aged rum ‹variable›"]));
});

test("for an editor without a grammar the rest of the text, too", () =>
  expect(
    shown(
      "drink One # first\n  from: Two\n  story: Once\n    upon\n  method: shake 12 s\n  about 50 ml aged rum, frozen\n  30 ml 12 year rye\n  swap gin for top soda water\nmenu Card\n  section Early\n  - Two 12.50\n",
      true,
    ).map((token) => token.replace(/\.\w+›/, "›")),
  ).toEqual([
    ...["drink ‹keyword›", "One ‹class›", "# first ‹comment›", "from ‹property›", "Two ‹string›"],
    ...["story ‹property›", "Once ‹string›", "upon ‹string›", "method ‹property›", "12 ‹number›", "s ‹keyword›"],
    ...["about ‹keyword›", "50 ‹number›", "ml ‹keyword›", "aged rum ‹variable›"],
    ...["30 ‹number›", "ml ‹keyword›", "12 year rye ‹string›"],
    ...["swap ‹keyword›", "gin ‹variable›", "top ‹keyword›", "soda water ‹variable›"],
    ...["menu ‹keyword›", "Card ‹namespace›", "section ‹keyword›", "Early ‹string›", "Two ‹string›", "12.50 ‹number›"],
  ]));

test("in a Markdown file they stand where the file has them", () => {
  const text = "# Slack Water\n\n- One:\n\n  ```drink\n  drink One\n    1 ml gin\n  ```\n";
  const house = houseOf(`=== chapter.md\n${text}`);
  const document = house.document(`${root}/chapter.md`)!;
  const lines = text.split("\n");
  const names = unpacked(semanticTokens(house, document)).map(({ line, start, end }) => lines[line]!.slice(start, end));
  // The head too: the grammar knows none behind a margin.
  expect(names).toEqual(["drink", "One", "gin"]);
});

test("a range answers for the entries that it touches", () => {
  const text = "drink One\n  1 ml gin\ndrink Two\n  1 ml gin\ndrink Three\n  1 ml gin\n";
  const house = houseOf(text);
  const document = house.document(`${root}/spec.drink`)!;
  const at = (line: number) => ({ line, character: 0 });
  const all = unpacked(semanticTokens(house, document));
  expect(unpacked(semanticTokens(house, document, { start: at(2), end: at(3) }))).toEqual(
    all.filter(({ line }) => line === 2 || line === 3),
  );
});

test("only the entry that changed is computed again", () => {
  const house = houseOf("drink One\n  1 ml gin\ndrink Two\n  1 ml gin\ndrink Three\n  1 ml gin\n");
  const document = house.document(`${root}/spec.drink`)!;
  semanticTokens(house, document);
  const range = { start: { line: 3, character: 7 }, end: { line: 3, character: 10 } };
  const tree = edit(document.tree, [{ range, text: "rum" }]);
  house.setDocument({ ...document, tree });
  const before = house.memo.computed;
  semanticTokens(house, house.document(document.uri)!);
  expect(house.memo.computed - before).toBe(2); // its tokens, its mentions
});

/** In order, none over another, each within its line. */
function checkPlaces(document: SpecDocument, tokens: readonly Token[]) {
  const lines = document.tree.entries.flatMap((entry) => entry.lines.map(({ text }) => text));
  let last: Token | undefined;
  for (const token of tokens) {
    expect(token.end).toBeGreaterThan(token.start);
    expect(token.end).toBeLessThanOrEqual(lines[token.line]!.length);
    if (last?.line === token.line) expect(token.start).toBeGreaterThanOrEqual(last.end);
    else expect(token.line).toBeGreaterThan(last?.line ?? -1);
    last = token;
  }
}

describe("of any text", () => {
  const slow = 60_000;
  const declared = `=== shelf.drink\nstock aged rum\n  kind: spirit\nprep for\n  1 g salt\ndrink 12 year rye\n`;
  const setUp = (text: string) => {
    const house = houseOf(declared);
    house.setDocument({ uri: `${root}/spec.drink`, version: 1, tree: read(text) });
    return { house, document: house.document(`${root}/spec.drink`)! };
  };

  test(
    "tokens are in order, do not overlap and lie within lines",
    () => {
      fc.assert(
        fc.property(anyText, (text) => {
          const { house, document } = setUp(text);
          checkPlaces(document, unpacked(semanticTokens(house, document)));
        }),
      );
    },
    slow,
  );

  test(
    "the edits make the new tokens of the old ones",
    () => {
      fc.assert(
        fc.property(anyText, fc.array(anyChange, { minLength: 1, maxLength: 3 }), (text, changes) => {
          const { house, document } = setUp(text);
          const before = semanticTokens(house, document);
          house.setDocument({ ...document, tree: edit(document.tree, changes) });
          const after = semanticTokens(house, house.document(document.uri)!);
          const edited = [...before];
          for (const { start, deleteCount, data } of tokenEdits(before, after)) edited.splice(start, deleteCount, ...(data ?? []));
          expect(edited).toEqual(after);
          expect(tokenEdits(after, after)).toEqual([]);
        }),
      );
    },
    slow,
  );
});

test("every sample has its tokens in place, and hardly an unknown name", () => {
  const house = houseIn("samples/halyard-room");
  expect(readdirSync("samples/halyard-room")).toHaveLength([...house.documents()].length);
  for (const document of house.documents()) {
    const tokens = unpacked(semanticTokens(house, document));
    checkPlaces(document, tokens);
    const lines = readFileSync(document.uri.slice("file:///".length), "utf8").split("\n");
    const unknown = tokens.filter(({ looks }) => looks === "string").map(({ line, start, end }) => lines[line]!.slice(start, end));
    expect(unknown, document.uri).toEqual([]);
  }
});
