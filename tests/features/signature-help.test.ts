/** How something is written, shown where it is written; the forms are the project's own, so these tests have no outside source. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SignatureInformation } from "vscode-languageserver-types";
import { fields } from "../../grammar/fields.ts";
import { read } from "../../grammar/read.ts";
import { signatureHelp } from "../../server/features/signature-help.ts";
import { fixtureOf } from "./cursor.ts";

function signatureAt(text: string): SignatureInformation | undefined {
  const { document, position } = fixtureOf(text);
  return signatureHelp(document, position)?.signatures[0];
}

/** `swap OLD for [QUANTITY] …`: the form with the marked part in brackets; empty where nothing is told. */
function marked(line: string, head = "drink Slip"): string {
  const signature = signatureAt(`${head}\n  ${line}\n`);
  if (!signature) return "";
  const { label } = signature.parameters![signature.activeParameter!]!;
  return signature.label.replace(label as string, `[${label}]`);
}

describe("fields", () => {
  test("a price has an amount and what that buys", () => {
    for (const line of ["price: <>", "price:<>", "price: 26.<>", "price: £26.50<> per 700 ml", "price: 26.50 GBP<>"])
      expect(marked(line, "stock gin"), line).toBe("price: [AMOUNT] per QUANTITY");
    for (const line of ["price: 26.50 <>", "price: 26.50 per <>", "price: 26.50 per 700<> ml", "price: 18 / 70 cl<>", "price: 9 / <>"])
      expect(marked(line, "stock gin"), line).toBe("price: AMOUNT per [QUANTITY]");
    expect(marked("price: 12<>", "drink Slip")).toBe("");
  });

  test("a window, a temperature, a date, a severity", () => {
    expect(marked("strength: 13<>", "family sour")).toBe("strength: [LOW] to HIGH");
    expect(marked("strength: 13 to <>", "family sour")).toBe("strength: LOW to [HIGH]");
    expect(marked("strength: 13 to 21 %<>", "family sour")).toBe("strength: LOW to [HIGH]");
    expect(marked("freezer: -1<>", "house H")).toBe("freezer: [DEGREES] SCALE");
    expect(marked("freezer: -18 <>", "house H")).toBe("freezer: DEGREES [SCALE]");
    expect(marked("tasted: 2026-<>")).toBe("tasted: YEAR-[MONTH]-DAY");
    expect(marked("tasted: 2026-02-1<>")).toBe("tasted: YEAR-MONTH-[DAY]");
    expect(marked("severity: glass-too-small <>", "house H")).toBe("severity: RULE [SEVERITY]");
  });

  test("each item of a list is read from its start", () => {
    expect(marked("acid: 6<> g/100 ml", "stock lime")).toBe("acid: [AMOUNT] ACID");
    expect(marked("acid: 6 g/100 ml <>", "stock lime")).toBe("acid: AMOUNT [ACID]");
    expect(marked("acid: 3 g/100 ml citric; 3 <>g/100 ml malic", "stock lime")).toBe("acid: [AMOUNT] ACID");
    expect(marked("acid: 3 g/100 ml citric; 3 g/100 ml mal<>", "stock lime")).toBe("acid: AMOUNT [ACID]");
    expect(marked("each: leaf 0.1 g; sprig<> 2 g", "stock mint")).toBe("each: [FORM] AMOUNT");
    expect(marked("each: leaf 0.1 g; sprig <>", "stock mint")).toBe("each: FORM [AMOUNT]");
    expect(marked("keeps: 1 day <>", "stock mint")).toBe("keeps: TIME [PLACE]");
    expect(marked("garnish: <>")).toBe("garnish: COUNT [NAME], NOTE");
    expect(marked("garnish: 2 cloves; lemon zest, ex<>")).toBe("garnish: COUNT NAME, [NOTE]");
    expect(marked("glass: coupe, <>")).toBe("glass: GLASS, [HOW]");
  });

  test("it tells what the table says of the field, with its example", () => {
    const { documentation } = signatureAt("stock gin\n  price: <>\n")!;
    const { doc, example } = fields.find(({ name }) => name === "price")!;
    expect(documentation).toEqual({ kind: "markdown", value: `${doc}\n\nExample: \`price: ${example}\`` });
  });

  test("nothing where the name says all there is, in prose, in comments, on the name and in a text nobody knows", () => {
    for (const line of ["family: <>", "story: Poured <>late.", "story: One\n    price: <>", "tags: a<>", "gl<>ass: coupe", "serves: 2<>"])
      expect(marked(line), line).toBe("");
    expect(marked("price: 26.50 # per <>", "stock gin")).toBe("");
    expect(marked("# price: <>", "stock gin")).toBe("");
    expect(marked("price: <>", "word nobody")).toBe("");
    expect(marked("50 ml <>", "menu Card")).toBe("");
  });
});

describe("steps", () => {
  test("what a technique may be told, in any order", () => {
    expect(marked("method: shake <>")).toBe("shake [TIME] with ICE");
    expect(marked("method: shake 12 s <>")).toBe("shake TIME with [ICE]");
    expect(marked("method: dry shake; shake with cracked ice <>")).toBe("shake [TIME] with ICE");
    expect(marked("method: shake with cracked<> ice 12 s")).toBe("shake TIME with [ICE]");
    expect(marked("method: throw 6 <>times")).toBe("throw [TIME] with ICE");
    expect(marked("method: build over <>")).toBe("build [TIME] over ICE");
    expect(marked("method: pre-dilute 25<> %")).toBe("pre-dilute [SHARE]");
    expect(marked("method: hold at <>")).toBe("hold at [TEMPERATURE]");
    expect(marked("method: carbonate to 3 vol<>")).toBe("carbonate to [VOLUMES]");
    expect(marked("method: reduce to <>", "prep syrup")).toBe("reduce to [AMOUNT]");
    expect(marked("method: strain over <>")).toBe("strain over [ICE]");
  });

  test("the technique first, and nothing for one that is told nothing or is in no table", () => {
    expect(marked("method: <>")).toBe("[TECHNIQUE] TIME with ICE; NEXT");
    expect(marked("method: shake 12 s; st<>")).toBe("[TECHNIQUE] TIME with ICE; NEXT");
    expect(marked("method: dry shake <>")).toBe("");
    expect(marked("method: sing to it <>")).toBe("");
  });

  test("how long and how much ice where nothing is said is the table's", () => {
    const [time, ice] = signatureAt("drink Slip\n  method: whip shake <>\n")!.parameters!;
    expect(time!.documentation).toMatchObject({ value: expect.stringContaining("10 s where nothing is said") });
    expect(ice!.documentation).toMatchObject({ value: expect.stringContaining("25 g, and all of it is drunk") });
  });
});

describe("pours", () => {
  const pour = (part: string) => "QUANTITY UNIT INGREDIENT, MODIFIERS".replace(part, `[${part}]`);
  test("amount, unit, name, modifiers", () => {
    expect(marked("5<>0 ml gin")).toBe(pour("QUANTITY"));
    expect(marked("50 <>")).toBe(pour("UNIT"));
    expect(marked("50 m<>l gin")).toBe(pour("UNIT"));
    expect(marked("50 ml <>")).toBe(pour("INGREDIENT"));
    expect(marked("50 ml gi<>n, frozen")).toBe(pour("INGREDIENT"));
    expect(marked("1 egg<> white")).toBe(pour("INGREDIENT"));
    expect(marked("50 ml gin, <>")).toBe(pour("MODIFIERS"));
    expect(marked("50 ml gin, frozen, opt<>", "prep mix")).toBe(pour("MODIFIERS"));
    expect(marked("gin 50 <>ml")).toBe("");
  });

  test("a modifier that is there says what it means", () => {
    const [, , , how] = signatureAt("drink Slip\n  50 ml gin, fro<>zen\n")!.parameters!;
    expect(how!.documentation).toMatchObject({ value: "At the freezer's temperature: it melts less ice." });
  });

  test("what fills up, what stands in a pour's place, and a swap", () => {
    expect(marked("top <>")).toBe("top [INGREDIENT], MODIFIERS");
    expect(marked("top to 180 ml <>")).toBe("top to QUANTITY UNIT [INGREDIENT], MODIFIERS");
    expect(marked("or <>")).toBe("or [QUANTITY] UNIT INGREDIENT, MODIFIERS");
    const swap = (part: string) => "swap OLD for QUANTITY UNIT NEW, MODIFIERS".replace(part, `[${part}]`);
    expect(marked("swap <>")).toBe(swap("OLD"));
    expect(marked("swap g<>in for 60 ml sherry")).toBe(swap("OLD"));
    expect(marked("swap gin for <>")).toBe(swap("QUANTITY"));
    expect(marked("swap gin for 60 <>ml sherry")).toBe(swap("UNIT"));
    expect(marked("swap gin for 60 ml sh<>erry")).toBe(swap("NEW"));
    expect(marked("swap gin for sherry, chi<>")).toBe(swap("MODIFIERS"));
  });
});

test("of every field of the table its own example is read: each part in its turn, the last at the end", () => {
  let told = 0;
  for (const field of fields) {
    for (const kind of field.entries) {
      const line = `  ${field.name}: ${field.example}`;
      const document = { uri: "file:///spec.drink", version: null, tree: read(`${kind} Slip\n${line}\n`) };
      const at = (character: number) => signatureHelp(document, { line: 1, character })?.signatures[0];
      if (!at(line.length) || field.shape === "steps") continue;
      told++;
      const item = Math.max(line.lastIndexOf(";") + 1, line.indexOf(":") + 1) + 1;
      const actives = Array.from({ length: line.length - item + 1 }, (_, index) => at(item + index)!.activeParameter!);
      expect(actives, line).toEqual([...actives].sort());
      // What a sugar is and how a garnish is put on may be left out.
      if (field.name !== "garnish" && field.name !== "sugar") expect(actives.at(-1), line).toBe(at(line.length)!.parameters!.length - 1);
    }
  }
  expect(told).toBeGreaterThan(15);
});

const pieces = fc.constantFrom(
  ...'50 ml |½ |gin|, |; |: |"|“rye”|swap |or |top | for | to |price: |method: |shake |12 s|with |acid: |6 g/100 ml|garnish: |tasted: |# |🍋|é|\t|- |%|£|/'.split(
    "|",
  ),
);
const line = fc.oneof(
  { weight: 4, arbitrary: fc.array(pieces, { maxLength: 7 }).map((all) => `  ${all.join("")}`) },
  fc.string({ unit: "grapheme", maxLength: 30 }),
);

test("any position in any text answers, with a part that is in the form just once", () =>
  fc.assert(
    fc.property(
      fc.constantFrom("drink Slip", "prep Mix", "stock gin", "house H", "family f", "menu m", ""),
      fc.array(line, { minLength: 1, maxLength: 3 }),
      fc.nat(5),
      fc.nat(60),
      (head, lines, at, character) => {
        const document = { uri: "file:///spec.drink", version: null, tree: read([head, ...lines].join("\n")) };
        const [signature] = signatureHelp(document, { line: at, character })?.signatures ?? [];
        if (!signature) return;
        const { label } = signature.parameters![signature.activeParameter!]!;
        for (const one of signature.parameters!) expect(signature.label.split(one.label as string)).toHaveLength(2);
        expect(label).toBeTruthy();
      },
    ),
    { numRuns: 2000 },
  ));
