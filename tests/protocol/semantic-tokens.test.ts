import { expect, test } from "vitest";
import type { SemanticTokens, SemanticTokensDelta } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const [card, shelf] = [nowhere("card.drink"), nowhere("shelf.drink")];
const textDocument = { uri: card };
const text = "drink Slip\n  60 ml moonlight\n  20 ml lemon juice\n";

test("tokens of a text, of a range, and of what changed since", async () => {
  const semanticTokens = { requests: {}, tokenTypes: [], tokenModifiers: [], formats: [], augmentsSyntaxTokens: true };
  const client = await start({ params: { capabilities: { textDocument: { semanticTokens } } } });
  await client.open(card, text);
  const { legend } = client.capabilities().semanticTokensProvider!;
  const looks = (data: readonly number[]) => data.flatMap((type, at) => (at % 5 === 3 ? legend.tokenTypes[type]! : []));
  const whole = await client.request<SemanticTokens>("textDocument/semanticTokens/full", { textDocument });
  expect(looks(whole.data)).toEqual(["class", "string", "variable"]);
  const ranged = await client.request<SemanticTokens>("textDocument/semanticTokens/range", {
    textDocument,
    range: { start: { line: 0, character: 0 }, end: { line: 3, character: 0 } },
  });
  expect(ranged.data).toEqual(whole.data);

  const insert = { start: { line: 1, character: 8 }, end: { line: 1, character: 8 } };
  await client.change(card, 2, [{ range: insert, text: "dark " }]);
  const delta = await client.request<SemanticTokensDelta>("textDocument/semanticTokens/full/delta", {
    textDocument,
    previousResultId: whole.resultId,
  });
  expect(delta.edits).toEqual([{ start: 7, deleteCount: 1, data: ["dark moonlight".length] }]);
  const old = await client.request<SemanticTokens>("textDocument/semanticTokens/full/delta", {
    textDocument,
    previousResultId: whole.resultId,
  });
  expect(looks(old.data)).toEqual(["class", "string", "variable"]); // not the last answer: the whole
});

test("an editor without a grammar gets the rest of the text, too", async () => {
  const client = await start();
  await client.open(card, text);
  const { legend } = client.capabilities().semanticTokensProvider!;
  const { data } = await client.request<SemanticTokens>("textDocument/semanticTokens/full", { textDocument });
  const looks = data.flatMap((type, at) => (at % 5 === 3 ? legend.tokenTypes[type]! : []));
  expect(looks.slice(0, 5)).toEqual(["keyword", "class", "number", "keyword", "string"]);
});

test("what is declared elsewhere has the client ask again", async () => {
  const asked: string[] = [];
  const workspace = { semanticTokens: { refreshSupport: true }, inlayHint: { refreshSupport: true } };
  const client = await start({ params: { capabilities: { workspace } } });
  let tell: () => void = () => undefined;
  for (const method of ["workspace/semanticTokens/refresh", "workspace/inlayHint/refresh"]) {
    client.connection.onRequest(method, () => {
      asked.push(method);
      tell();
      return null;
    });
  }
  await client.open(card, text);
  await client.diagnosticsOf(card, 1);
  const both = new Promise<void>((resolve) => {
    tell = () => asked.length === 2 && resolve();
  });
  await client.open(shelf, "stock moonlight\n  kind: spirit\n  abv: 40 %\n");
  await both;
  expect(asked.sort()).toEqual(["workspace/inlayHint/refresh", "workspace/semanticTokens/refresh"]);
});
