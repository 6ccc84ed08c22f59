/** The demo house, and the locker of mistakes: each file is named after the rule that finds it. */
import { basename } from "node:path";
import { describe, expect, test } from "vitest";
import { rules } from "../../server/rules/all.ts";
import { houseIn } from "../house/make.ts";
import { findIn } from "./check.ts";

test("the demo house has fewer than one finding for each drink", () => {
  const house = houseIn("samples/halyard-room");
  const drinks = [...house.documents()].flatMap(({ tree }) => tree.entries.filter(({ kind }) => kind === "drink"));
  expect(drinks.length).toBeGreaterThan(15);
  expect(findIn(house).length).toBeLessThan(drinks.length);
});

const codeOf = (uri: string) => basename(uri).replace(/\.[a-z]+$/, "");

describe("the locker of mistakes", () => {
  const house = houseIn("samples/mistakes");
  const found = findIn(house);
  const files = [...house.documents()].map(({ uri }) => uri).filter((uri) => basename(uri) !== "house.drink");

  test.each(files.map((uri) => [codeOf(uri), uri]))("%s is found by its own rule and by no other", (code, uri) => {
    // What is allowed without a reason is not allowed.
    const expected = code === "allow-without-reason" ? [code, "unmeasurable"] : [code];
    expect(new Set(found.filter((one) => one.uri === uri).map(({ finding }) => finding.code))).toEqual(new Set(expected));
  });

  test("has a file for every rule", () => expect(files.map(codeOf).sort()).toEqual(rules.map(({ code }) => code).sort()));
});
