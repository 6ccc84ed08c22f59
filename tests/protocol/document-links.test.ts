import { expect, test } from "vitest";
import type { DocumentLink } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const [card, shelf] = [nowhere("cards/card.drink"), nowhere("shelf.drink")];

test("addresses, files of the house by the client's own spelling, and the page of an allowed rule", async () => {
  const client = await start();
  await client.open(shelf, "stock gin\n  kind: spirit\n");
  await client.open(card, "drink Slip\n  60 ml gin # https://example.org, ../shelf.drink\n  # allow missing-glass: from the tap\n");
  const links = await client.request<DocumentLink[]>("textDocument/documentLink", { textDocument: { uri: card } });
  expect(links.map(({ target }) => target)).toEqual([
    "https://example.org",
    shelf,
    expect.stringMatching(/^file:.*README\.md#missing-glass$/),
  ]);
  expect(links[0]!.range).toEqual({ start: { line: 1, character: 14 }, end: { line: 1, character: 33 } });
});
