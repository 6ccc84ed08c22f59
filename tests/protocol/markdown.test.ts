/** A spec inside a Markdown file is served like one in a file of its own, at the file's own places. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { CodeAction, Hover, Location, Position, TextEdit, WorkspaceEdit } from "vscode-languageserver-types";
import { layOut, nowhere, start } from "./start.ts";

const [chapter, stock] = [nowhere("chapter.md"), nowhere("stock.drink")];

/** A spec nested in a list in a quote, with prose around it that reads like a spec. */
const text = [
  "# Slack Water", //              0
  "", //                           1
  "drink deep, and read on:", //   2
  "", //                           3
  "> - ```drink", //               4
  ">   drink Rope", //             5
  ">     60 ml harbour rum", //    6
  ">     25  ml lemon juice", //   7
  ">     1 tsp nosuch", //         8
  ">   ```", //                    9
  "", //                          10
  "    50 ml gin", //             11
  "",
].join("\n");

async function open() {
  const client = await start();
  await client.open(stock, "stock harbour rum\n  kind: spirit\n  abv: 40 %\n");
  await client.open(chapter, text, 1, "markdown");
  const ask = <T>(method: string, line: number, character: number, more: object = {}) =>
    client.request<T>(method, { textDocument: { uri: chapter }, position: { line, character }, ...more });
  return { client, ask };
}

test("findings stand where the text is, and prose has none", async () => {
  const { client } = await open();
  const { diagnostics } = await client.diagnosticsOf(chapter, ({ diagnostics }) => diagnostics.length > 0);
  const unknown = diagnostics.find(({ code }) => code === "unknown-ingredient")!;
  expect(unknown.range).toEqual({ start: { line: 8, character: 12 }, end: { line: 8, character: 18 } });
  expect(diagnostics.every(({ range }) => range.start.line >= 5 && range.end.line <= 8)).toBe(true);
});

test("hover, completion and definition answer in a block, and nothing in the prose around it", async () => {
  const { ask } = await open();
  const hover = await ask<Hover>("textDocument/hover", 6, 14);
  expect(hover.range).toEqual({ start: { line: 6, character: 6 }, end: { line: 6, character: 23 } });
  expect(await ask<Location[]>("textDocument/definition", 6, 14)).toMatchObject([{ uri: stock, range: { start: { line: 0 } } }]);
  for (const [line, character] of [
    [2, 3],
    [4, 8],
    [9, 5],
    [11, 8],
  ] as const) {
    expect(await ask("textDocument/hover", line, character)).toBeNull();
    expect(await ask("textDocument/completion", line, character)).toEqual({ isIncomplete: false, items: [] });
  }
});

test("a rename in a spec file reaches the chapter, and the other way round", async () => {
  const { client, ask } = await open();
  const edits = async (edit: Promise<WorkspaceEdit>) =>
    ((await edit).documentChanges ?? []).flatMap((one) => ("edits" in one ? one.edits.map((edit) => [one.textDocument.uri, edit]) : []));
  const expected = [
    [stock, { range: { start: { line: 0, character: 6 }, end: { line: 0, character: 17 } }, newText: "ferry rum" }],
    [chapter, { range: { start: { line: 6, character: 12 }, end: { line: 6, character: 23 } }, newText: "ferry rum" }],
  ];
  expect(await edits(ask("textDocument/rename", 6, 20, { newName: "ferry rum" }))).toEqual(expected);
  const there = { textDocument: { uri: stock }, position: { line: 0, character: 8 }, newName: "ferry rum" };
  expect(await edits(client.request("textDocument/rename", there))).toEqual(expected);
});

test("formatting changes lines of blocks only, and lines that a fix adds have the block's margin", async () => {
  const { client, ask } = await open();
  expect(await client.request<TextEdit[]>("textDocument/formatting", { textDocument: { uri: chapter } })).toEqual([
    { range: { start: { line: 7, character: 9 }, end: { line: 7, character: 10 } }, newText: "" },
  ]);
  const { diagnostics } = await client.diagnosticsOf(chapter, ({ diagnostics }) => diagnostics.length > 0);
  const unknown = diagnostics.find(({ code }) => code === "unknown-ingredient")!;
  const actions = await ask<CodeAction[]>("textDocument/codeAction", 8, 14, { range: unknown.range, context: { diagnostics } });
  const fix = actions.find(({ title }) => title.startsWith("Declare"))!;
  expect(fix.diagnostics).toEqual([unknown]);
  expect(fix.edit!.documentChanges).toMatchObject([{ textDocument: { uri: stock } }]);
});

test("an edit of the chapter moves what is found with it", async () => {
  const { client } = await open();
  await client.diagnosticsOf(chapter, 1);
  const at: Position = { line: 1, character: 0 };
  await client.change(chapter, 2, [{ range: { start: at, end: at }, text: "One more line.\n\n" }]);
  const after = await client.diagnosticsOf(chapter, 2);
  expect(after.diagnostics.find(({ code }) => code === "unknown-ingredient")!.range.start.line).toBe(10);
  await client.change(chapter, 3, [{ range: { start: { line: 6, character: 4 }, end: { line: 6, character: 12 } }, text: "```text" }]);
  expect((await client.diagnosticsOf(chapter, 3)).diagnostics).toEqual([]);
});

test("a closed chapter's specs are the house's; a Markdown file without any is not", async () => {
  const house = layOut({
    "house.drink": "house The Halyard Room\n",
    "book/one.md": "```drink\ndrink Slip\n  60 ml gin\n  5 ml nosuch\n```\n",
    "README.md": "drink Slip\n  60 ml nosuch\n",
  });
  const client = await start({ folders: [house.folder()] });
  const push = await client.diagnosticsOf(house.uriOf("book/one.md"));
  expect(push.diagnostics.map(({ range }) => range.start.line)).toContain(3);
  expect(client.pushed(house.uriOf("README.md"))).toBeUndefined();
});

test("a house in a chapter's block governs that chapter alone", async () => {
  const house = layOut({
    "house.drink": "house The Halyard Room\n\nstock pier water\n  kind: spirit\n  abv: 40 %\n",
    "own.md":
      "```drink\nhouse The Ferry\n  country: NO\n\nstock pier water\n  kind: salt\n  salt: 20 g/100 ml\n```\n\nand\n\n```drink\ndrink A\n  60 ml gin\n  5 ml pier water\n```\n",
    "other.md": "```drink\ndrink B\n  60 ml gin\n  5 ml pier water\n```\n",
  });
  const client = await start({ folders: [house.folder()] });
  const hover = async (path: string, line: number) => {
    const uri = house.uriOf(path);
    await client.open(uri, readFileSync(new URL(uri), "utf8"), 1, "markdown");
    await client.diagnosticsOf(uri, 1);
    const { contents } = await client.request<Hover>("textDocument/hover", { textDocument: { uri }, position: { line, character: 8 } });
    return JSON.stringify(contents);
  };
  expect(await hover("own.md", 13)).not.toContain("40 % vol");
  expect(await hover("other.md", 3)).toContain("40 % vol");
});
