import { expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc/node";
import { LSPErrorCodes } from "vscode-languageserver/node";
import { makeHouse } from "../bench/house.ts";
import { printSpecs } from "../bench/print.ts";
import { layOut, start } from "./start.ts";

const house = () => layOut(Object.fromEntries(makeHouse(600).map(({ path, entries }) => [`${path}.drink`, printSpecs(entries)])));
const cancelled = { code: LSPErrorCodes.RequestCancelled };

test("a cancelled long request answers that it was cancelled, and the next is answered", async () => {
  const client = await start({ pull: true, folders: [house().folder()] });
  const source = new CancellationTokenSource();
  const asked = client.pullWorkspace([], source.token);
  source.cancel();
  await expect(asked).rejects.toMatchObject(cancelled);
  expect((await client.pullWorkspace()).items.length).toBeGreaterThan(0);
});

test("a request that waits for news can be cancelled", async () => {
  const client = await start({ pull: true, folders: [house().folder()] });
  const known = (await client.pullWorkspace()).items.map(({ uri, resultId }) => ({ uri, value: resultId! }));
  const source = new CancellationTokenSource();
  const waiting = client.pullWorkspace(known, source.token);
  await client.request("textDocument/hover", { textDocument: { uri: known[0]!.uri }, position: { line: 0, character: 0 } });
  source.cancel();
  await expect(waiting).rejects.toMatchObject(cancelled);
});

test("while the house is being looked at, a small request does not wait for all of it", async () => {
  const laid = house();
  const client = await start({ pull: true, folders: [laid.folder()] });
  const order: string[] = [];
  const whole = client.pullWorkspace().then(() => order.push("the whole house"));
  const one = client.pull(laid.uriOf("house.drink")).then(() => order.push("one document"));
  await Promise.all([whole, one]);
  expect(order).toEqual(["one document", "the whole house"]);
});

test("calls are looked for in turns: the search can be cancelled, and a small request goes first", async () => {
  const laid = house();
  const client = await start({ pull: true, folders: [laid.folder()] });
  const at = { textDocument: { uri: laid.uriOf("house.drink") }, position: { line: 0, character: 8 } };
  await client.request("textDocument/hover", at);
  const source = new CancellationTokenSource();
  const asked = client.request("textDocument/references", { ...at, context: { includeDeclaration: true } }, source.token);
  source.cancel();
  await expect(asked).rejects.toMatchObject(cancelled);
  const order: string[] = [];
  const all = client.request("textDocument/references", { ...at, context: { includeDeclaration: true } }).then(() => order.push("calls"));
  const fold = client.request("textDocument/foldingRange", at).then(() => order.push("folding"));
  await Promise.all([all, fold]);
  expect(order).toEqual(["folding", "calls"]);
});
