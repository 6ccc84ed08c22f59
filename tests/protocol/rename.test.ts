import { expect, test } from "vitest";
import type { DocumentHighlight, Location, Range, WorkspaceEdit } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const [stock, card] = [nowhere("stock.drink"), nowhere("card.drink")];

async function ask() {
  const client = await start();
  await client.open(stock, "stock harbour rum\n  kind: spirit\n  abv: 40 %\n\nstock gin\n  kind: spirit\n  abv: 41 %\n");
  await client.open(card, "drink Slip\n  60 ml harbour rum, frozen\n");
  const at = { textDocument: { uri: card }, position: { line: 1, character: 12 } };
  return <T>(method: string, more: object = {}) => client.request<T>(method, { ...at, ...more });
}

test("a name is asked for, and changed in every open file", async () => {
  const request = await ask();
  const asked = await request<{ range: Range; placeholder: string }>("textDocument/prepareRename");
  expect(asked).toEqual({ range: { start: { line: 1, character: 8 }, end: { line: 1, character: 19 } }, placeholder: "harbour rum" });
  const { documentChanges } = await request<WorkspaceEdit>("textDocument/rename", { newName: "ferry rum" });
  const edits = documentChanges!.flatMap((change) => ("edits" in change ? [[change.textDocument.uri, change.edits] as const] : []));
  expect(new Map(edits).get(stock)).toEqual([
    { range: { start: { line: 0, character: 6 }, end: { line: 0, character: 17 } }, newText: "ferry rum" },
  ]);
  expect(new Map(edits).get(card)).toEqual([{ range: asked.range, newText: "ferry rum" }]);
});

test("a name that is taken is refused, with the place", async () => {
  const request = await ask();
  await expect(request("textDocument/rename", { newName: "gin" })).rejects.toThrow(
    "“gin” is already a stock: line 5 of stock.drink. Choose another name.",
  );
});

test("references and highlights", async () => {
  const request = await ask();
  const found = await request<Location[]>("textDocument/references", { context: { includeDeclaration: true } });
  expect(found.map(({ uri }) => uri).sort()).toEqual([card, stock]);
  expect(await request<DocumentHighlight[]>("textDocument/documentHighlight")).toHaveLength(1);
});
