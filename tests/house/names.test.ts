import { describe, expect, test } from "vitest";
import { read } from "../../grammar/read.ts";
import type { MenuLine, PourLine } from "../../grammar/tree.ts";
import { fold } from "../../server/house/names.ts";
import { flatten } from "../../server/house/riff.ts";
import { entryNamed, houseOf } from "./make.ts";

function nameIn(text: string) {
  const { content } = read(`drink X\n  ${text}`).entries[0]!.lines[1]! as { content: PourLine };
  return content.pour.name!;
}

/** What a pour's name resolves to in a house, as "declared name | modifiers". */
function resolved(house: ReturnType<typeof houseOf>, pour: string): string {
  const scope = house.scopeOf([...house.documents()][0]!);
  const { found, text, modifiers } = house.resolve(scope, ["ingredient"], nameIn(pour));
  return `${found?.name ?? `unknown ${text}`} | ${modifiers.map((one) => one.text).join("; ")}`;
}

describe("names", () => {
  test.each([
    ["mint leaves", "mint leaf"],
    ["blackberries", "blackberry"],
    ["Crème  de pêche", "creme de peche"],
    ["radishes", "radish"],
    ["glass", "glass"],
    ["clove bitters", "clove bitters"],
    ["“Blend # 4”", "blend # 4"],
    ["🍋 lemons", "🍋 lemon"],
  ])("%s folds to %s", (name, key) => expect(fold(name)).toBe(key));

  test("bitter and bitters are two things", () => {
    const house = houseOf("stock harbour bitters\n  kind: bitters\nstock harbour bitter\n  kind: bitter aperitif\n");
    expect(resolved(house, "2 dashes harbour bitters")).toBe("harbour bitters | ");
    expect(resolved(house, "20 ml harbour bitter")).toBe("harbour bitter | ");
  });

  test("the longest declared reading wins, then the first comma starts the modifiers", () => {
    const house = houseOf("stock rum\nstock rum, overproof\n");
    expect(resolved(house, "20 ml rum, overproof, frozen")).toBe("rum, overproof | frozen");
    expect(resolved(house, "20 ml rum, frozen, optional")).toBe("rum | frozen; optional");
    expect(resolved(house, "20 ml kelp gin, frozen")).toBe("unknown kelp gin | frozen");
  });

  test("a looser step never beats a stricter one, whichever house is nearer", () => {
    const house = houseOf("stock crème\nstock creme\n");
    expect(resolved(house, "20 ml creme")).toBe("creme | ");
    expect(resolved(house, "20 ml crème")).toBe("crème | ");
    expect(resolved(house, "20 ml CRÈMES")).toBe("crème | ");
  });

  test("other names are names too, and quotes are only marks", () => {
    const house = houseOf("stock aged rum\n  aka: dark rum; 7 year rum\n");
    expect(resolved(house, "50 ml dark rum")).toBe("dark rum | ");
    expect(resolved(house, "50 ml “7 year rum”, frozen")).toBe("7 year rum | frozen");
  });
});

test("a field may quote the name that it looks up", () => {
  const house = houseOf('drink "Blend # 4"\n  method: shake 12 s\n  50 ml gin\ndrink Riff\n  from: "Blend # 4"\n');
  expect(flatten(house, entryNamed(house, "Riff")).pours).toHaveLength(1);
});

test("a sub-house sees its parent's names and may override them; a neighbour sees neither", () => {
  const house = houseOf(
    "=== house.drink\nhouse Big\nstock slip gin\n  abv: 40 %\n=== cellar/house.drink\nhouse Small\n  jigger: 5 ml\nstock slip gin\n  abv: 50 %\n=== cellar/d.drink\ndrink Low\n  50 ml slip gin\n=== d.drink\ndrink High\n  50 ml slip gin\n",
  );
  const strength = (drink: string) => {
    const entry = entryNamed(house, drink);
    const declared = house.lookup(house.scopeOf(entry), "ingredient", "slip gin")[0]!;
    return declared.entry.lines[1]!.text.trim();
  };
  expect(strength("High")).toBe("abv: 40 %");
  expect(strength("Low")).toBe("abv: 50 %");
});

test("a menu line's price is no part of a name that is declared without it", () => {
  const line = read("menu M\n  - Lantern Sour 12.50").entries[0]!.lines[1]!.content as MenuLine;
  expect(line.priced?.name.text).toBe("Lantern Sour");
  expect(line.whole?.text).toBe("Lantern Sour 12.50");
});
