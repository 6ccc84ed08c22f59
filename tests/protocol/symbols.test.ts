import { expect, test } from "vitest";
import type { Location, SelectionRange, WorkspaceSymbol } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const uri = nowhere("card.drink");

test("what is declared, what is made with it, and what grows around the cursor", async () => {
  const client = await start();
  await client.open(uri, "drink Slip\n  60 ml gin\n\ndrink Rope\n  from: Slip\n");
  const symbols = await client.request<WorkspaceSymbol[]>("workspace/symbol", { query: "rope" });
  expect(symbols.map(({ name }) => name)).toEqual(["Rope"]);
  const at = { textDocument: { uri }, position: { line: 0, character: 8 } };
  const made = await client.request<Location[]>("textDocument/implementation", at);
  expect(made.map(({ range }) => range.start.line)).toEqual([3]);
  const [grown] = await client.request<SelectionRange[]>("textDocument/selectionRange", { ...at, positions: [at.position] });
  expect(grown!.range).toEqual({ start: { line: 0, character: 6 }, end: { line: 0, character: 10 } });
});
