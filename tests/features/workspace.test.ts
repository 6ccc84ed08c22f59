import { expect, test } from "vitest";
import { implementations } from "../../server/features/references.ts";
import { workspaceSymbols } from "../../server/features/workspace-symbols.ts";
import { houseOf } from "../house/make.ts";
import { fixtureOf } from "./cursor.ts";

const bar = `=== a.drink
stock harbour rum
  kind: spirit
prep rum syrup
  100 g harbour rum
  100 g white sugar
drink Été Sour
  50 ml harbour rum
drink Low Water
  from: Été Sour
=== b.drink
menu Card
  - Été Sour 12
drink Rope
  20 ml rum syrup
`;

test("symbols of all texts: those that start so, then that hold it, then that have its letters", () => {
  const names = (query: string) => workspaceSymbols(houseOf(bar), query).map(({ name, containerName }) => `${containerName} ${name}`);
  expect(names("ete")).toEqual(["drink Été Sour"]);
  expect(names("r")).toEqual(["drink Rope", "prep rum syrup", "menu Card", "drink Été Sour", "stock harbour rum", "drink Low Water"]);
  expect(names("hbr")).toEqual(["stock harbour rum"]);
  expect(names("zz")).toEqual([]);
});

const made = (marked: string) => {
  const { house, document, position } = fixtureOf(marked);
  return implementations(house, document, position).map(({ uri, range }) => `${uri.slice(-7)}:${range.start.line + 1}`);
};

test("what is made with it: riffs of a drink, drinks of a family, what a stock is poured in, inherited or not", () => {
  expect(made(bar.replace("drink Été", "drink É<>té"))).toEqual(["a.drink:8"]);
  expect(made(bar.replace("stock harbour", "stock harb<>our"))).toEqual(["a.drink:3", "a.drink:6", "a.drink:8"]);
  const without = bar.replace("stock harbour", "stock harb<>our").replace("from: Été Sour", "from: Été Sour\n  without harbour rum");
  expect(made(without)).toEqual(["a.drink:3", "a.drink:6"]);
  expect(made(bar.replace("drink Été Sour", "drink Été Sour\n  family: sl<>ack").replace("prep rum", "family slack\nprep rum"))).toEqual([
    "a.drink:7",
  ]);
  expect(made(bar.replace("prep rum", "prep r<>um"))).toEqual(["b.drink:3"]);
});
