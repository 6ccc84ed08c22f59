import { expect, test } from "vitest";
import type { TextEdit } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const uri = nowhere("card.drink");

test("a text, a range and the line just typed are formatted", async () => {
  const client = await start();
  await client.open(uri, "drink Slip\n  60ml gin\n  25ml lemon juice\n");
  const ask = (method: string, more: object) => client.request<TextEdit[]>(method, { textDocument: { uri }, options: {}, ...more });
  const gap = (line: number) => ({ range: { start: { line, character: 4 }, end: { line, character: 4 } }, newText: " " });
  expect(await ask("textDocument/formatting", {})).toEqual([gap(1), gap(2)]);
  const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 9 } };
  expect(await ask("textDocument/rangeFormatting", { range })).toEqual([gap(2)]);
  expect(await ask("textDocument/onTypeFormatting", { position: { line: 2, character: 0 }, ch: "\n" })).toEqual([gap(1)]);
});
