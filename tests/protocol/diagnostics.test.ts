import { expect, test } from "vitest";
import type { DocumentDiagnosticReport, WorkspaceDiagnosticReport } from "vscode-languageserver/node";
import { nothing } from "./findings.ts";
import { layOut, nowhere, start } from "./start.ts";

const uri = nowhere("card.drink");
const lamp = "drink Lantern\n  50 ml lamp oil\n";
const codes = (diagnostics: readonly { code?: unknown }[]) => diagnostics.map(({ code }) => code);
const itemsOf = (report: DocumentDiagnosticReport) => (report.kind === "full" ? report.items : []);

test("pushed diagnostics carry the version they were made from", async () => {
  const client = await start();
  await client.open(uri, lamp, 7);
  expect(codes((await client.diagnosticsOf(uri, 7)).diagnostics)).toContain("unknown-ingredient");
  const oil = { start: { line: 1, character: 8 }, end: { line: 1, character: 16 } };
  await client.change(uri, 12, [{ range: oil, text: "lime juice" }]);
  expect(codes((await client.diagnosticsOf(uri, 12)).diagnostics)).not.toContain("unknown-ingredient");
});

test("a diagnostic says where, how bad, what and why it can be found again", async () => {
  const client = await start();
  await client.open(uri, lamp);
  const { diagnostics } = await client.diagnosticsOf(uri, 1);
  const unknown = diagnostics.find(({ code }) => code === "unknown-ingredient");
  expect(unknown).toMatchObject({
    range: { start: { line: 1, character: 8 }, end: { line: 1, character: 16 } },
    source: "Mutchkin",
    codeDescription: { href: expect.stringContaining("#unknown-ingredient") },
  });
  expect(unknown?.severity).toBeTypeOf("number");
  expect(unknown?.message).toContain("lamp oil");
});

test("a closed document that is nowhere on the disk loses its findings", async () => {
  const client = await start();
  await client.open(uri, lamp);
  await client.diagnosticsOf(uri, ({ diagnostics }) => diagnostics.length > 0);
  await client.close(uri);
  await client.diagnosticsOf(uri, nothing);
});

test("a client that pulls is told that it can, and is pushed nothing", async () => {
  const client = await start({ pull: true });
  await client.open(uri, lamp);
  expect(codes(itemsOf(await client.pull(uri)))).toContain("unknown-ingredient");
  expect(client.pushed(uri)).toBeUndefined();
});

test("a client that does not pull is offered no pull", async () => {
  const client = await start();
  await client.shutDown();
  const other = await start({ pull: true });
  expect(other.capabilities().diagnosticProvider).toMatchObject({ interFileDependencies: true, workspaceDiagnostics: true });
  expect(client.capabilities().diagnosticProvider).toBeUndefined();
});

test("a pull of what has not changed is answered as unchanged, until it changes", async () => {
  const client = await start({ pull: true });
  await client.open(uri, lamp);
  const first = await client.pull(uri);
  expect(first.resultId).toBeDefined();
  expect(await client.pull(uri, first.resultId)).toEqual({ kind: "unchanged", resultId: first.resultId });
  const at = { line: 1, character: 16 };
  await client.change(uri, 2, [{ range: { start: at, end: at }, text: "s" }]);
  const second = await client.pull(uri, first.resultId);
  expect(second.kind).toBe("full");
  expect(second.resultId).not.toBe(first.resultId);
});

test("a pull right behind an edit answers for the edited text", async () => {
  const client = await start({ pull: true });
  await client.open(uri, "drink Lantern\n  50 ml lime juice\n");
  await client.pull(uri);
  const at = { line: 1, character: 18 };
  void client.change(uri, 2, [{ range: { start: at, end: at }, text: "xyz" }]);
  expect(JSON.stringify(itemsOf(await client.pull(uri)))).toContain("juicexyz");
});

test("the workspace's diagnostics hold closed files, and then only what changed", async () => {
  const house = layOut({ "one.drink": lamp, "two.drink": "drink Mooring\n  50 ml rope tar\n" });
  const client = await start({ pull: true, folders: [house.folder()] });
  const all = await client.pullWorkspace();
  expect(textByUri(all)).toMatchObject({
    [house.uriOf("one.drink")]: expect.stringContaining("lamp oil"),
    [house.uriOf("two.drink")]: expect.stringContaining("rope tar"),
  });
  const known = all.items.map((item) => ({ uri: item.uri, value: item.resultId! }));
  const next = client.pullWorkspace(known);
  house.write("two.drink", "drink Mooring\n  50 ml wet tar\n");
  await client.filesChanged([{ uri: house.uriOf("two.drink"), type: 2 }]);
  const news = textByUri({ items: (await next).items.filter(({ kind }) => kind === "full") });
  expect(Object.keys(news)).toEqual([house.uriOf("two.drink")]);
  expect(news[house.uriOf("two.drink")]).toContain("wet tar");
});

test("a workspace pull names an open document's version, and none for a closed one", async () => {
  const house = layOut({ "one.drink": lamp, "two.drink": lamp });
  const client = await start({ pull: true, folders: [house.folder()] });
  await client.open(house.uriOf("one.drink"), lamp, 5);
  const { items } = await client.pullWorkspace();
  const versions = Object.fromEntries(items.map((item) => [item.uri, item.version]));
  expect(versions).toEqual({ [house.uriOf("one.drink")]: 5, [house.uriOf("two.drink")]: null });
});

function textByUri(report: WorkspaceDiagnosticReport): Record<string, string> {
  return Object.fromEntries(report.items.map((item) => [item.uri, JSON.stringify("items" in item ? item.items : [])]));
}
