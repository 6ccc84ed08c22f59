import { expect, test } from "vitest";
import snippets from "../../client/snippets.json";
import { entryKinds, fields, findField, stockKinds } from "../../grammar/fields.ts";
import configuration from "../../grammar/language-configuration.json";

/** A snippet as it stands before anything is typed over: each place with its first choice or its default. */
const filled = (body: readonly string[]) =>
  body.join("\n").replace(/\$\{\d+\|([^,|]*)[^|]*\|\}|\$\{\d+:([^}]*)\}|\$\d/g, (_, choice, usual) => choice ?? usual ?? "");

test.each(Object.entries(snippets))("%s writes only fields that its entry takes", (_name, { body }) => {
  const text = filled(body);
  const kind = entryKinds.find((entry) => text.startsWith(`${entry} `));
  const written = [...text.matchAll(/^ {2}([a-z ]+):/gm)].map(([, name]) => name ?? "");
  expect(written.filter((name) => !findField(name, kind))).toEqual([]);
});

test("every entry word has a snippet", () => {
  const prefixes = Object.values(snippets).map(({ prefix }) => prefix);
  expect(entryKinds.filter((kind) => !prefixes.includes(kind))).toEqual([]);
});

test("the stock snippet offers every kind of the table", () => {
  const [, offered] = /kind: \$\{2\|([^|]*)\|\}/.exec(snippets.Stock.body.join("\n")) ?? [];
  expect(offered?.split(",")).toEqual(stockKinds);
});

test("a new line after an entry's head or a prose field is indented, after another field it is not", () => {
  const indents = (line: string) =>
    configuration.onEnterRules.some(({ beforeText: { pattern, flags } }) => new RegExp(pattern, flags).test(line));
  for (const kind of entryKinds) expect(indents(`${kind} Lantern`), kind).toBe(true);
  for (const { name, shape } of fields) expect(indents(`  ${name}:`), name).toBe(shape === "prose");
});

test("a word that is selected or completed is whole", () => {
  const { pattern, flags } = configuration.wordPattern;
  expect("fat-washed rum, baker’s café 22.5".match(new RegExp(pattern, `${flags}g`))).toEqual([
    "fat-washed",
    "rum",
    "baker’s",
    "café",
    "22.5",
  ]);
});
