import { spawn } from "node:child_process";
import { once } from "node:events";
import { expect, onTestFinished, test } from "vitest";
import { LSPErrorCodes } from "vscode-languageserver/node";
import type { Transport } from "./client.ts";
import { nowhere, start, startSilent } from "./start.ts";

const transports: Transport[] = ["stdio", "ipc"];
const hover = { textDocument: { uri: nowhere("a.drink") }, position: { line: 0, character: 0 } };
// The codes are the protocol's own: LSP 3.17, ErrorCodes.
const [serverNotInitialized, invalidRequest, methodNotFound] = [-32002, -32600, -32601];

test.each(transports)("over %s: from initialize to a clean exit", async (transport) => {
  const client = startSilent(transport);
  const { capabilities, serverInfo } = await client.initialize();
  expect(serverInfo?.name).toBe("Mutchkin");
  expect(capabilities.textDocumentSync).toMatchObject({ openClose: true, change: 2 });
  await client.open(nowhere("a.drink"), "drink Lantern\n  50 ml lamp oil\n");
  await client.diagnosticsOf(nowhere("a.drink"), 1);
  expect(await client.shutDown()).toEqual({ code: 0, signal: null });
  expect(client.stderr()).toBe("");
});

test("a request before initialize is refused, and initialize still works", async () => {
  const client = startSilent();
  await expect(client.request("textDocument/hover", hover)).rejects.toMatchObject({ code: serverNotInitialized });
  await expect(client.request("shutdown")).rejects.toMatchObject({ code: serverNotInitialized });
  await client.initialize();
});

test("a notification before initialize is dropped", async () => {
  const client = startSilent();
  await client.open(nowhere("early.drink"), "drink Early\n  50 ml lamp oil\n");
  await client.initialize({ pull: true });
  expect(await client.pull(nowhere("early.drink"))).toMatchObject({ kind: "full", items: [] });
});

test("a second initialize is refused, and the server goes on", async () => {
  const client = await start();
  await expect(client.request("initialize", { processId: null, rootUri: null, capabilities: {} })).rejects.toMatchObject({
    code: invalidRequest,
  });
  await client.open(nowhere("a.drink"), "drink Lantern\n  50 ml lamp oil\n");
  await client.diagnosticsOf(nowhere("a.drink"), 1);
});

test("after shutdown every request is refused, shutdown too, and only exit is taken", async () => {
  const client = await start();
  await client.request("shutdown");
  await expect(client.request("textDocument/hover", hover)).rejects.toMatchObject({ code: invalidRequest });
  await expect(client.request("shutdown")).rejects.toMatchObject({ code: invalidRequest });
  await client.notify("exit");
  expect(await client.exited()).toEqual({ code: 0, signal: null });
});

test("exit without shutdown ends the process with 1", async () => {
  const client = await start();
  await client.notify("exit");
  expect(await client.exited()).toEqual({ code: 1, signal: null });
});

test("exit before initialize ends the process", async () => {
  const client = startSilent();
  await client.notify("exit");
  expect((await client.exited()).signal).toBeNull();
});

test("an unknown request is answered as unknown, an unknown notification is passed over", async () => {
  const client = await start();
  await expect(client.request("mutchkin/pourMeOne")).rejects.toMatchObject({ code: methodNotFound });
  await client.notify("mutchkin/pouredOne");
  await client.notify("$/neverHeardOf");
  await client.open(nowhere("a.drink"), "drink Lantern\n");
  await client.diagnosticsOf(nowhere("a.drink"), 1);
});

test("the process ends when its client's end of the pipe closes", async () => {
  const client = await start();
  client.child.stdin!.end();
  expect((await client.exited()).signal).toBeNull();
});

test("the process ends when its client's end of the IPC channel closes", async () => {
  const client = await start({}, "ipc");
  client.child.disconnect();
  expect((await client.exited()).signal).toBeNull();
});

test("the process ends when the client's process is gone, though its pipe is open", async () => {
  const someone = spawn(process.execPath, ["-e", "setInterval(() => undefined, 1000)"], { stdio: "ignore" });
  onTestFinished(() => void someone.kill("SIGKILL"));
  const client = await start({ params: { processId: someone.pid! } });
  const gone = once(someone, "exit");
  someone.kill("SIGKILL");
  await gone;
  expect((await client.exited()).signal).toBeNull();
});

test("a request of a document that was never opened is answered empty", async () => {
  const client = await start();
  expect(await client.request("textDocument/hover", hover)).toBeNull();
});

test("the library's own code for a cancelled request is the protocol's", () => {
  expect(LSPErrorCodes.RequestCancelled).toBe(-32800);
});
