/** The demo house, and the locker of mistakes: each file is named after the rule that finds it. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";
import { read } from "../../grammar/read.ts";
import { House } from "../../server/house/house.ts";
import { readLarder } from "../../server/larder/larder.ts";
import { rules } from "../../server/rules/all.ts";
import { findIn } from "./check.ts";

function houseIn(folder: string): House {
  const house = new House({ larder: readLarder(), roots: [`file:///${folder}`] });
  for (const file of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    if (!file.endsWith(".drink")) continue;
    house.setDocument({ uri: `file:///${folder}/${file}`, version: null, tree: read(readFileSync(join(folder, file), "utf8")) });
  }
  return house;
}

test("the demo house has fewer than one finding for each drink", () => {
  const house = houseIn("samples/halyard-room");
  const drinks = [...house.documents()].flatMap(({ tree }) => tree.entries.filter(({ kind }) => kind === "drink"));
  expect(drinks.length).toBeGreaterThan(15);
  expect(findIn(house).length).toBeLessThan(drinks.length);
});

describe("the locker of mistakes", () => {
  const house = houseIn("samples/mistakes");
  const found = findIn(house);
  const files = [...house.documents()].map(({ uri }) => uri).filter((uri) => basename(uri) !== "house.drink");

  test.each(files.map((uri) => [basename(uri, ".drink"), uri]))("%s is found by its own rule and by no other", (code, uri) => {
    // What is allowed without a reason is not allowed.
    const expected = code === "allow-without-reason" ? [code, "unmeasurable"] : [code];
    expect(new Set(found.filter((one) => one.uri === uri).map(({ finding }) => finding.code))).toEqual(new Set(expected));
  });

  test("has a file for every rule", () =>
    expect(files.map((uri) => basename(uri, ".drink")).sort()).toEqual(rules.map(({ code }) => code).sort()));
});
