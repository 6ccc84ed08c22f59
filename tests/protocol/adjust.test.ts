import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { TextDocumentEdit, WorkspaceEdit } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const uri = nowhere("card.drink");
const text =
  "stock harbour rum\n  kind: spirit\n  abv: 40 %\n\ndrink Été 🍋\n  family: sour\n  method: shake 12 s\n  60 ml harbour rum\n  22.5 ml lime juice\n  22.5 ml plain syrup\n";

interface Targets {
  name: string;
  targets: { id: string; label: string; detail: string; present: string }[];
  ingredients: string[];
}
interface Ways {
  problem?: string;
  ways: { label: string; description?: string; detail: string; edit?: WorkspaceEdit }[];
}

async function ask() {
  const client = await start();
  await client.open(uri, text);
  const at = (line: number) => ({ textDocument: { uri }, position: { line, character: 4 } });
  return {
    targets: (line: number) => client.request<Targets | null>("mutchkin/adjustTargets", at(line)),
    ways: (target: string, value: string, pour?: string) => client.request<Ways>("mutchkin/adjustWays", { ...at(8), target, value, pour }),
  };
}

test("what a drink can be brought to, with where it stands and where it is usual", async () => {
  const found = await (await ask()).targets(8);
  expect(found!.name).toBe("Été 🍋");
  expect(found!.targets.map(({ label }) => label)).toEqual(["Ratio", "Strength", "Sweetness", "Acid", "Salt", "Volume"]);
  expect(found!.targets[0]!.detail).toMatch(/^[\d.]+ ± [\d.]+ now; 4 to 13 is usual for “sour”$/);
  for (const { present } of found!.targets) expect(present).toMatch(/^[\d.]+$/);
  expect(found!.ingredients[0]).toBe("harbour rum");
  expect(found!.ingredients).toContain("citric acid");
});

test("outside of a drink and a prep there is nothing to choose", async () => expect(await (await ask()).targets(1)).toBeNull());

test("each way is said in words, and its edit changes that one line", async () => {
  const { ways } = await (await ask()).ways("ratio", "6");
  const way = ways.find(({ label }) => label === "plain syrup")!;
  expect(way.description).toMatch(/^[\d.]+ ml in place of 22\.5 ml$/);
  expect(way.detail).toMatch(/^Ratio [\d.]+ ± [\d.]+: .*(?:left over|above|below)/);
  const { edits, textDocument } = way.edit!.documentChanges![0] as TextDocumentEdit;
  expect(textDocument).toEqual({ uri, version: 1 });
  const after = TextDocument.applyEdits(TextDocument.create(uri, "mutchkin", 1, text), edits as never);
  expect(after).toBe(text.replace("22.5 ml plain", `${/^[\d.]+ ml/.exec(way.description!)![0]} plain`));
});

test("a new pour, a number with its unit, and what does not do it", async () => {
  const { ways } = await ask();
  const [water] = (await ways("strengthPct", "12 % vol", "water")).ways;
  expect(water).toMatchObject({ label: "water", description: expect.stringMatching(/^[\d.]+ ml, new$/) });
  const [syrup] = (await ways("strengthPct", "60", "plain syrup")).ways;
  expect(syrup).toEqual({ label: "plain syrup", detail: expect.stringMatching(/^Even without any plain syrup the strength is/) });
  expect((await ways("acidGPer100Ml", "2", "citric acid")).ways[0]!.detail).toContain("eyes");
});

test("what cannot be understood is answered in words", async () => {
  const { ways } = await ask();
  for (const [target, value, pour, words] of [
    ["ratio", "a bit more", undefined, /does not hold one number/],
    ["strengthPct", "18 g", undefined, /not counted in “g”/],
    ["ratio", "9", "lim juice", /Did you mean “lime juice”/],
    ["nothing", "9", undefined, /not there any more/],
  ] as const)
    expect(await ways(target, value, pour)).toEqual({ ways: [], problem: expect.stringMatching(words) });
});
