import { expect, test } from "vitest";
import type { CompletionItem, CompletionList, InsertReplaceEdit } from "vscode-languageserver";
import { nowhere, start } from "./start.ts";

const card = nowhere("card.drink");
const text = "drink Slip\n  22.5 ml lemon juice\n\ndrink Fog\n  le\n  25 ml le juice\n";

test("light items, then what one says of itself; a client that can do no more gets plain text", async () => {
  const client = await start();
  await client.open(card, text);
  const list = await client.request<CompletionList>("textDocument/completion", {
    textDocument: { uri: card },
    position: { line: 4, character: 4 },
  });
  const item = list.items.find(({ label }) => label === "22.5 ml lemon juice")!;
  expect(item.documentation).toBeUndefined();
  expect(item.textEdit).toEqual({
    newText: "22.5 ml lemon juice",
    range: { start: { line: 4, character: 2 }, end: { line: 4, character: 4 } },
  });
  expect(list.items.some(({ insertTextFormat }) => insertTextFormat !== undefined)).toBe(false);
  const resolved = await client.request<CompletionItem>("completionItem/resolve", item);
  expect(resolved).toMatchObject({ ...item, documentation: { value: expect.stringContaining("Poured in 1 drink, 22.5 ml.") } });
});

test("a client that can takes places to fill in, and edits that insert or replace", async () => {
  const completionItem = { snippetSupport: true, insertReplaceSupport: true };
  const client = await start({ params: { capabilities: { textDocument: { completion: { completionItem } } } } });
  await client.open(card, text);
  const ask = (line: number, character: number) =>
    client.request<CompletionList>("textDocument/completion", { textDocument: { uri: card }, position: { line, character } });
  const snippet = (await ask(4, 4)).items.find(({ label }) => label === "lime juice");
  expect(snippet).toMatchObject({ insertTextFormat: 2, textEdit: { newText: `\${1:25} ml lime juice` } });
  const inside = (await ask(5, 9)).items.find(({ label }) => label === "lemon juice")!.textEdit as InsertReplaceEdit;
  expect([inside.insert.end.character, inside.replace.end.character]).toEqual([9, 16]);
});
