import { expect, test } from "vitest";
import snippets from "../../client/snippets.json";
import { type EntryKind, findField } from "../../grammar/fields.ts";
import { firstSteps } from "../../server/features/first-steps.ts";
import { documentsOf } from "../house/make.ts";

const steps = (text: string) => firstSteps(documentsOf(text)[0]!).map(({ command }) => command!);

test.each(["\n", "  \n\n \t\n"])("%j can start with any frame that the editor has", (text) => {
  expect(steps(text).length).toBeGreaterThan(2);
  for (const { arguments: [name] = [] } of steps(text)) expect(Object.keys(snippets)).toContain(name);
});

test.each(["# a card\n", "drink\n", "50 ml gin\n", "=== book.md\n\n"])("%j has begun, or is no spec file", (text) => {
  expect(steps(text)).toEqual([]);
});

test("a frame offers for a field only what the field takes", () => {
  const lines = Object.entries(snippets).flatMap(([kind, { body }]) => body.map((line) => ({ kind, line })));
  const offered = lines.flatMap(({ kind, line }) => {
    const [, name, words] = /^ {2}([a-z ]+): \$\{\d+\|(.*)\|\}$/.exec(line) ?? [];
    const choices = name && findField(name, kind.toLowerCase() as EntryKind)?.choices;
    return choices && words ? [{ choices, words: words.split(",") }] : [];
  });
  expect(offered.length).toBeGreaterThan(3);
  for (const { choices, words } of offered) expect(choices).toEqual(expect.arrayContaining(words));
});

test("the frame of a book reads, and its recipes have what a recipe can have", () => {
  const text = snippets.Book.body.map((line) => line.replace(/\$\{\d+[:|]([^,|}]*)(?:[^}]*)\}|\$\d/g, "$1")).join("\n");
  const [book] = documentsOf(text)[0]!.tree.entries.filter(({ kind }) => kind === "book");
  const fields = book!.lines.flatMap(({ content }) => (content.kind === "field" ? [content.name.text] : []));
  expect(fields).toEqual(expect.arrayContaining(["author", "chapters", "units shown"]));
  for (const name of fields) expect(findField(name, "book")).toBeDefined();
  expect(steps("\n").map(({ title }) => title)).toContain("with a book");
});
