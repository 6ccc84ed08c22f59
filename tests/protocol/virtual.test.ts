/** Folders that are on no disk: the server asks the editor for their files. */
import { expect, onTestFinished, test } from "vitest";
import { FileChangeType } from "vscode-languageserver/node";
import { has, lacks } from "./findings.ts";
import { layOut, start, startSilent } from "./start.ts";

const stock = "stock lantern oil\n  kind: spirit\n  abv: 40 %\n";
const drink = "drink Lantern\n  50 ml lantern oil\n";
const unknown = has("unknown-ingredient");
const known = lacks("unknown-ingredient");

/** A server whose client keeps these texts in a file system of its own. */
async function startWith(texts: Map<string, string>) {
  const client = startSilent();
  const asked: { folder: string; endings: string[]; passOver: string[] }[] = [];
  client.connection.onRequest("mutchkin/listFiles", (params: (typeof asked)[0]) => {
    asked.push(params);
    return [...texts.keys()].filter((uri) => uri.startsWith(`${params.folder}/`));
  });
  client.connection.onRequest("mutchkin/readFile", ({ uri }: { uri: string }) => texts.get(uri) ?? null);
  await client.initialize({ folders: [{ uri: "vault://bar/house", name: "house" }] });
  return { client, asked };
}

test("a house that is on no disk is read through the editor, and read again when it changes", async () => {
  const texts = new Map([["vault://bar/house/shelf/stock.drink", stock]]);
  const { client, asked } = await startWith(texts);
  const card = "vault://bar/house/card.drink";
  await client.open(card, drink);
  await client.diagnosticsOf(card, known);

  const shelf = "vault://bar/house/shelf/stock.drink";
  texts.delete(shelf);
  await client.filesChanged([{ uri: shelf, type: FileChangeType.Deleted }]);
  await client.diagnosticsOf(card, unknown);
  texts.set(shelf, stock);
  await client.filesChanged([{ uri: shelf, type: FileChangeType.Created }]);
  await client.diagnosticsOf(card, known);
  expect(asked.map(({ folder }) => folder)).toEqual(["vault://bar/house"]);
});

test("the editor is told which files are wanted, as the disk is searched", async () => {
  const { client, asked } = await startWith(new Map());
  await client.open("vault://bar/house/card.drink", drink);
  await client.diagnosticsOf("vault://bar/house/card.drink", unknown);
  expect(asked[0]?.endings).toContain(".drink");
  expect(asked[0]?.passOver).toContain("node_modules");
});

test("what is on disk is not asked for", async () => {
  const house = layOut({ "shelf.drink": stock, "node_modules/other/card.drink": drink });
  const client = startSilent();
  let asked = 0;
  for (const method of ["mutchkin/listFiles", "mutchkin/readFile"]) client.connection.onRequest(method, () => asked++);
  onTestFinished(() => expect(asked).toBe(0));
  await client.initialize({ folders: [house.folder()] });
  await client.open(house.uriOf("card.drink"), drink);
  await client.diagnosticsOf(house.uriOf("card.drink"), known);
});

test("with an editor that does not know our requests, what is open is checked", async () => {
  const client = await start({ folders: [{ uri: "vault://bar/house", name: "house" }] });
  await client.open("vault://bar/house/card.drink", drink);
  await client.diagnosticsOf("vault://bar/house/card.drink", unknown);
});
