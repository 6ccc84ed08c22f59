import { expect, test } from "vitest";
import { FileChangeType } from "vscode-languageserver/node";
import type { Hover, WorkspaceEdit } from "vscode-languageserver-types";
import { has, lacks, nothing } from "./findings.ts";
import { layOut, nowhere, start } from "./start.ts";

const { Created, Changed, Deleted } = FileChangeType;
const stock = "stock lantern oil\n  kind: spirit\n  abv: 40 %\n";
const drink = "drink Lantern\n  50 ml lantern oil\n";
const [known, unknown] = [lacks("unknown-ingredient"), has("unknown-ingredient")];

test("the server asks to be told of changed specs", async () => {
  const house = layOut({ "card.drink": drink });
  const client = await start({ folders: [house.folder()] });
  await client.diagnosticsOf(house.uriOf("card.drink"));
  const watching = client.registrations.find(({ method }) => method === "workspace/didChangeWatchedFiles");
  expect(JSON.stringify(watching?.registerOptions)).toContain(".drink");
});

test("a closed file that is created, changed and deleted changes what is found in another", async () => {
  const house = layOut({ "card.drink": drink });
  const client = await start({ folders: [house.folder()] });
  const card = house.uriOf("card.drink");
  await client.open(card, drink);
  await client.diagnosticsOf(card, unknown);

  house.write("shelf.drink", stock);
  await client.filesChanged([{ uri: house.uriOf("shelf.drink"), type: Created }]);
  await client.diagnosticsOf(card, known);

  house.write("shelf.drink", stock.replace("lantern", "signal"));
  await client.filesChanged([{ uri: house.uriOf("shelf.drink"), type: Changed }]);
  await client.diagnosticsOf(card, unknown);

  house.write("shelf.drink", stock);
  await client.filesChanged([{ uri: house.uriOf("shelf.drink"), type: Changed }]);
  await client.diagnosticsOf(card, known);

  house.remove("shelf.drink");
  await client.filesChanged([{ uri: house.uriOf("shelf.drink"), type: Deleted }]);
  await client.diagnosticsOf(card, unknown);
});

test("a deleted file's own findings go away", async () => {
  const house = layOut({ "card.drink": drink });
  const client = await start({ folders: [house.folder()] });
  const card = house.uriOf("card.drink");
  await client.diagnosticsOf(card, unknown);
  house.remove("card.drink");
  await client.filesChanged([{ uri: card, type: Deleted }]);
  await client.diagnosticsOf(card, nothing);
});

test("an open text wins over the disk, and the disk counts again once it is closed", async () => {
  const house = layOut({ "shelf.drink": stock, "card.drink": drink });
  const client = await start({ folders: [house.folder()] });
  const [shelf, card] = [house.uriOf("shelf.drink"), house.uriOf("card.drink")];
  await client.open(card, drink);
  await client.diagnosticsOf(card, known);
  await client.open(shelf, "# all gone\n");
  await client.diagnosticsOf(card, unknown);

  house.write("shelf.drink", `${stock}\n# touched on the disk\n`);
  await client.filesChanged([{ uri: shelf, type: Changed }]);
  // The open text still counts: a later version of the card is looked at with it.
  await client.change(card, 2, [{ text: `${drink}\n` }]);
  expect(unknown(await client.diagnosticsOf(card, 2))).toBe(true);

  await client.close(shelf);
  await client.diagnosticsOf(card, known);
});

test("what was typed in one open file changes what is found in another", async () => {
  const house = layOut({});
  const client = await start({ folders: [house.folder()] });
  const [shelf, card] = [house.uriOf("shelf.drink"), house.uriOf("card.drink")];
  await client.open(card, drink);
  await client.open(shelf, "stock lantern oi\n");
  await client.diagnosticsOf(card, unknown);
  const at = { line: 0, character: 16 };
  await client.change(shelf, 2, [{ range: { start: at, end: at }, text: "l" }]);
  await client.diagnosticsOf(card, known);
});

test("every folder is a house of its own", async () => {
  const house = layOut({ "one/shelf.drink": stock, "one/card.drink": drink, "two/card.drink": drink });
  const client = await start({ folders: [house.folder("one"), house.folder("two")] });
  const [one, two] = [house.uriOf("one/card.drink"), house.uriOf("two/card.drink")];
  for (const uri of [one, two]) await client.open(uri, drink);
  await client.diagnosticsOf(two, unknown);
  await client.diagnosticsOf(one, known);
});

test("a folder that is added is read, one that is removed is forgotten", async () => {
  const house = layOut({ "one/card.drink": drink, "two/card.drink": drink });
  const client = await start({ folders: [house.folder("one")] });
  const [one, two] = [house.uriOf("one/card.drink"), house.uriOf("two/card.drink")];
  await client.diagnosticsOf(one, unknown);
  expect(client.pushed(two)).toBeUndefined();
  await client.notify("workspace/didChangeWorkspaceFolders", { event: { added: [house.folder("two")], removed: [house.folder("one")] } });
  await client.diagnosticsOf(two, unknown);
  await client.diagnosticsOf(one, nothing);
});

test("a single file without a folder is checked by itself", async () => {
  const client = await start();
  const uri = nowhere("alone.drink");
  await client.open(uri, drink);
  await client.diagnosticsOf(uri, unknown);
  await client.change(uri, 2, [{ text: `${stock}\n${drink}` }]);
  expect(known(await client.diagnosticsOf(uri, 2))).toBe(true);
});

test("an untitled document is checked, and answers a hover", async () => {
  const client = await start();
  const uri = "untitled:Untitled-1";
  await client.open(uri, `${stock}\n${drink}  20 ml lamp oil\n`);
  expect((await client.diagnosticsOf(uri, unknown)).uri).toBe(uri);
  const hover = await client.request("textDocument/hover", { textDocument: { uri }, position: { line: 4, character: 8 } });
  expect(JSON.stringify(hover)).toContain("Lantern");
});

test("a file that cannot be read leaves the others standing", async () => {
  const house = layOut({ "card.drink": drink, "folder.drink/inner.drink": stock });
  const client = await start({ folders: [house.folder()] });
  await client.open(house.uriOf("card.drink"), drink);
  await client.diagnosticsOf(house.uriOf("card.drink"), known);
});

test("a document's URI comes back as the client spells it", async () => {
  const client = await start();
  const spelled = "file:///halyard/caf%C3%A9/Slack%20Water.drink";
  await client.open(spelled, drink);
  expect((await client.diagnosticsOf(spelled, unknown)).uri).toBe(spelled);
  const odd = "file:///halyard/d%3A/a%2Bb.drink";
  await client.open(odd, drink);
  expect((await client.diagnosticsOf(odd, unknown)).uri).toBe(odd);
});

test("what is asked while the folder is being read is answered from all of it", async () => {
  const many = Object.fromEntries(Array.from({ length: 400 }, (_, n) => [`card/tide-${n}.drink`, `drink Tide ${n}\n  50 ml zz rum\n`]));
  const house = layOut({ ...many, "zz.drink": "stock zz rum\n  kind: spirit\n  abv: 44 %\n" });
  const client = await start({ folders: [house.folder()] });
  const uri = house.uriOf("card/tide-7.drink");
  await client.open(uri, many["card/tide-7.drink"]!);
  const at = { textDocument: { uri }, position: { line: 1, character: 10 } };
  const hover = client.request<Hover>("textDocument/hover", at);
  const rename = client.request<WorkspaceEdit>("textDocument/rename", { ...at, newName: "pier rum" });
  expect(JSON.stringify((await hover).contents)).toContain("44 % vol");
  expect((await rename).documentChanges).toHaveLength(401);
});
