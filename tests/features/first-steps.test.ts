import { expect, test } from "vitest";
import snippets from "../../client/snippets.json";
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
