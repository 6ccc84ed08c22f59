import { expect, test } from "vitest";
import type { CodeLens, Location } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const [card, shelf] = [nowhere("card.drink"), nowhere("shelf.drink")];

async function lensesOf(capabilities: object) {
  const client = await start({ params: { capabilities } });
  await client.open(shelf, "stock gin\n  kind: spirit\n");
  await client.open(card, "drink Slip\n  60 ml gin\n\ndrink Rope\n  from: Slip\n\nmenu Winter\n  - Rope 9\n");
  const request = async (uri: string) => {
    const lenses = await client.request<CodeLens[]>("textDocument/codeLens", { textDocument: { uri } });
    expect(lenses.every(({ command }) => command === undefined)).toBe(true);
    return Promise.all(lenses.map((lens) => client.request<CodeLens>("codeLens/resolve", lens)));
  };
  return { client, request };
}

test("lenses, their counts, and their places for an editor that can show them", async () => {
  const { client, request } = await lensesOf({ experimental: { commands: ["mutchkin.showReferences"] } });
  const lenses = await request(card);
  expect(lenses.map(({ command }) => command!.title)).toEqual(["on no menu", "1 riff", "on 1 menu", "no riffs"]);
  expect(lenses.map(({ command }) => command!.command)).toEqual(["", "mutchkin.showReferences", "mutchkin.showReferences", ""]);
  const [gin] = await request(shelf);
  expect(gin!.command!.title).toBe("poured in 2 drinks");
  const places = await client.request<Location[]>("mutchkin/placesOfLens", gin!.command!.arguments![0]);
  expect(places.map(({ uri, range }) => [uri, range.start.line])).toEqual([
    [card, 1],
    [card, 3],
  ]);
});

test("words alone for another editor, and nothing where they are switched off", async () => {
  const { client, request } = await lensesOf({ workspace: { configuration: true } });
  expect((await request(shelf))[0]!.command).toEqual({ title: "poured in 2 drinks", command: "" });
  await client.configure(() => ({ codeLens: false }));
  await expect.poll(() => request(shelf)).toEqual([]);
});

test("an empty text offers what it could start with, to a client that can put it in", async () => {
  const lenses = async (commands: string[]) => {
    const client = await start({ params: { capabilities: { experimental: { commands } } } });
    await client.open(nowhere("new.drink"), "\n");
    return client.request<CodeLens[]>("textDocument/codeLens", { textDocument: { uri: nowhere("new.drink") } });
  };
  expect((await lenses(["mutchkin.insertFrame"])).map(({ command }) => command!.title)[0]).toBe("start with a drink");
  expect(await lenses([])).toEqual([]);
});
