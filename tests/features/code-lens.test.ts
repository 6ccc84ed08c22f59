import { expect, test } from "vitest";
import type { CodeLens } from "vscode-languageserver-types";
import { codeLenses, type LensData, placesOfLens, resolveCodeLens, showReferences } from "../../server/features/code-lens.ts";
import type { House } from "../../server/house/house.ts";
import { documentsOf, houseIn, houseOf, root } from "../house/make.ts";

const bar = `stock gin
  kind: spirit
stock nutmeg syrup
stock moonlight
prep brine
  1 g salt
  1 g gin
prep olive brine
  1 g brine
=== card.drink
drink Été Sour # a comment
  garnish: grated nutmeg; nutmeg syrup
  50 ml gin
    or 50 ml gin
  10 ml brine
drink Neap
  from: Été Sour
drink Ebb
  from: Neap
  without gin
menu Winter
  - Été Sour 12
  - Neap £9
menu Summer
  - Été Sour 11
  - Été Sour 22
`;

function resolved(house: House, file: string, canShow = true): CodeLens[] {
  return codeLenses(house, house.document(`${root}/${file}`)!).map((lens) => resolveCodeLens(house, lens, canShow));
}
const said = (house: House, file: string) => resolved(house, file).map(({ range, command }) => `${range.start.line} ${command!.title}`);
const places = (house: House, lens: CodeLens) =>
  placesOfLens(house, lens.data as LensData, (uri) => uri.slice(root.length + 1)).map(
    ({ uri, range: { start, end } }) => `${uri}:${start.line}:${start.character}-${end.character}`,
  );

test("a drink is on menus and has riffs, each once; a stock and a prep are poured and garnish", () => {
  const house = houseOf(bar);
  expect(said(house, "card.drink")).toEqual(["0 on 2 menus", "0 1 riff", "5 on 1 menu", "5 1 riff", "7 on no menu", "7 no riffs"]);
  expect(said(house, "spec.drink")).toEqual([
    "0 poured in 2 drinks, 1 prep", // Ebb takes it out; Neap inherits it
    "2 garnishes 3 drinks",
    "3 used nowhere",
    "4 poured in 3 drinks, 1 prep",
    "7 used nowhere",
  ]);
});

test("a lens stands over the name and asks for nothing until it is resolved", () => {
  const house = houseOf(bar);
  const before = house.memo.computed;
  const [first] = codeLenses(house, house.document(`${root}/spec.drink`)!);
  expect(first!.range).toEqual({ start: { line: 0, character: 6 }, end: { line: 0, character: 9 } });
  expect(first!.command).toBeUndefined();
  expect(house.memo.computed).toBe(before);
});

test("a click shows the lines, and for what is inherited the riff's name", () => {
  const house = houseOf(bar);
  const [gin] = resolved(house, "spec.drink");
  expect(gin!.command).toEqual({ title: "poured in 2 drinks, 1 prep", command: showReferences, arguments: [gin!.data] });
  expect(places(house, gin!)).toEqual(["spec.drink:6:6-9", "card.drink:2:8-11", "card.drink:5:6-10"]);
  const [menus, riffs] = resolved(house, "card.drink");
  expect(places(house, menus!)).toEqual(["card.drink:11:4-12", "card.drink:14:4-12"]);
  expect(places(house, riffs!)).toEqual(["card.drink:5:6-10"]);
});

test("a drink with a bottle says how it is poured from it, in the units asked for", () => {
  const house = houseOf("house Bar\n  ounce: 30 ml\ndrink Slip\n  50 ml gin, batched\n  25 ml aged rum, batched\n  25 ml lemon juice\n");
  const lens = codeLenses(house, house.document(`${root}/spec.drink`)!).at(-1)!;
  expect(resolveCodeLens(house, lens, true).command).toEqual({ title: "service: 75 ml batch + 25 ml lemon juice", command: "" });
  expect(resolveCodeLens(house, lens, true, "oz").command!.title).toBe("service: 2 1/2 oz batch + 25 ml lemon juice");
});

test("words alone where there is nothing to show, or no way to", () => {
  const house = houseOf(bar);
  expect(resolved(house, "spec.drink")[2]!.command).toEqual({ title: "used nowhere", command: "" });
  expect(resolved(house, "spec.drink", false)[0]!.command).toEqual({ title: "poured in 2 drinks, 1 prep", command: "" });
});

test("empty where the text has changed since it was asked about", () => {
  const house = houseOf(bar);
  const [lens] = codeLenses(house, house.document(`${root}/card.drink`)!);
  const [fresh] = documentsOf("=== card.drink\nstock gin\n");
  house.setDocument(fresh!);
  expect(resolveCodeLens(house, lens!, true).command).toEqual({ title: "", command: "" });
  expect(placesOfLens(house, lens!.data as LensData)).toEqual([]);
});

test("after each change it is as if freshly counted", () => {
  const house = houseOf(bar);
  said(house, "card.drink");
  const changes: [file: string, text: string][] = [
    ["card.drink", bar.slice(bar.indexOf("drink Été")).replace("10 ml brine", "10 ml olive brine")],
    ["card.drink", bar.slice(bar.indexOf("drink Été")).replace("menu Summer", "menu")],
    ["spec.drink", bar.slice(0, bar.indexOf("===")).replace("stock gin", "stock dry gin")],
    ["spec.drink", `house The Slip\n${bar.slice(0, bar.indexOf("==="))}`],
    ["third.drink", "drink Third\n  50 ml gin\n  50 ml moonlight\n"],
    ["third.drink", "drink Moonlight\n  from: Neap\n"],
  ];
  const texts = new Map<string, string>(
    documentsOf(bar).map(({ uri }, index) => [uri.slice(root.length + 1), bar.split("=== card.drink\n")[index]!]),
  );
  for (const [file, text] of changes) {
    texts.set(file, text);
    house.setDocument(documentsOf(`=== ${file}\n${text}`)[0]!);
    const fresh = houseOf([...texts].map(([name, one]) => `=== ${name}\n${one}`).join("\n"));
    for (const name of texts.keys()) expect(said(house, name), text).toEqual(said(fresh, name));
  }
  house.removeDocument(`${root}/third.drink`);
  expect(said(house, "card.drink")).not.toContain("5 2 riffs");
});

test("after a change only what it touched is computed again", () => {
  const house = houseOf(bar);
  said(house, "spec.drink");
  const before = house.memo.computed;
  house.setDocument(documentsOf("=== third.drink\ndrink Third\n  50 ml gin\n")[0]!);
  expect(said(house, "spec.drink")[0]).toBe("0 poured in 3 drinks, 1 prep");
  expect(house.memo.computed - before).toBeLessThan(10);
});

test("the samples say what is so", () => {
  const house = houseIn("samples/halyard-room");
  const lenses = [...house.documents()].flatMap((document) =>
    codeLenses(house, document).map((lens) => resolveCodeLens(house, lens, true)),
  );
  expect(lenses.length).toBeGreaterThan(50);
  for (const { command, data } of lenses.filter(({ data }) => (data as LensData).shows !== "service")) {
    const counts = [...command!.title.matchAll(/\d+/g)].reduce((sum, [digits]) => sum + Number(digits), 0);
    expect(placesOfLens(house, data as LensData)).toHaveLength(counts);
  }
});

test("above a menu stands a way to compare it, for a client that has one", () => {
  const house = houseOf(bar);
  const document = house.document(`${root}/card.drink`)!;
  const found = codeLenses(house, document, (command) => command === "mutchkin.compare").filter(({ data }) => data.shows === "compare");
  expect(found.map((lens) => resolveCodeLens(house, lens, true).command)).toEqual(
    found.map(({ data }) => ({ title: "compare…", command: "mutchkin.compare", arguments: [data] })),
  );
  expect(found).toHaveLength(2);
  expect(codeLenses(house, document).filter(({ data }) => data.shows === "compare")).toEqual([]);
});
