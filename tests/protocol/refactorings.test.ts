/** Refactorings through the real server: listed without their edits, made once chosen, refused with a reason. */
import { expect, test } from "vitest";
import { LSPErrorCodes } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { CodeAction, CreateFile, TextDocumentEdit, WorkspaceEdit } from "vscode-languageserver-types";
import manifest from "../../package.json";
import { refactorings } from "../../server/features/refactorings/all.ts";
import { nowhere, start } from "./start.ts";

const uri = nowhere("card.drink");
const text = `# Été 🍋\r
drink Slip\r
  glass: coupe\r
  50 ml dry gin\r
  25 ml sweet vermouth\r
\r
drink Ebb\r
  from: Slip\r
  15 ml dry gin\r
`;

const able = {
  workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ["create" as const] } },
  textDocument: { codeAction: { dataSupport: true, disabledSupport: true, resolveSupport: { properties: ["edit"] } } },
};
const unable = { textDocument: { codeAction: { disabledSupport: true } } };

async function open(capabilities: object, file = uri, content = text, languageId = "mutchkin") {
  const client = await start({ params: { capabilities } });
  await client.open(file, content, 1, languageId);
  return {
    client,
    list: (from: number, to = from, only = ["refactor"]) =>
      client.request<CodeAction[]>("textDocument/codeAction", {
        textDocument: { uri: file },
        range: { start: { line: from, character: 4 }, end: { line: to, character: 4 } },
        context: { diagnostics: [], only },
      }),
    resolve: (action: CodeAction) => client.request<CodeAction>("codeAction/resolve", action),
  };
}

function applied(edit: WorkspaceEdit | undefined, before = text, file = uri): string {
  const versioned = edit!.documentChanges?.flatMap((change) => ("edits" in change && change.textDocument.uri === file ? change.edits : []));
  const edits = versioned ?? edit!.changes![file];
  return TextDocument.applyEdits(TextDocument.create(file, "mutchkin", 1, before), edits as never);
}

test("the server says which kinds there are, and that it makes an edit when it is asked for", async () => {
  const { client } = await open(able);
  expect(client.capabilities().codeActionProvider).toMatchObject({
    codeActionKinds: expect.arrayContaining(["quickfix", "refactor.extract", "refactor.inline", "refactor.move", "refactor.rewrite"]),
    resolveProvider: true,
  });
});

test("a riff is flattened: listed without an edit, which comes once it is chosen, in the file's own line breaks", async () => {
  const { list, resolve } = await open(able);
  const action = (await list(6)).find(({ title }) => title === "Flatten into a drink of its own")!;
  expect(action).toMatchObject({ kind: "refactor.inline", data: expect.anything() });
  expect(action).not.toHaveProperty("edit");
  expect(applied((await resolve(action)).edit)).toBe(
    text.replace("  from: Slip\r\n  15 ml dry gin\r\n", "  glass: coupe\r\n  15 ml dry gin\r\n  25 ml sweet vermouth\r\n"),
  );
});

test("an editor that asks no more gets the edit at once, and what cannot be done with its reason", async () => {
  const { list } = await open(unable);
  const listed = await list(3, 4);
  const riff = listed.find(({ title }) => title === "Make a riff of Slip")!;
  expect(applied(riff.edit)).toBe(text.replace("\r\n\r\ndrink Ebb", "\r\n\r\ndrink Slip, riff\r\n  from: Slip\r\n\r\ndrink Ebb"));
  const take = listed.find(({ title }) => title.startsWith("Take 2 pours"))!;
  expect(take).toEqual({ title: take.title, kind: "refactor.extract", disabled: { reason: expect.stringContaining("“Ebb”") } });
  expect((await list(1)).some(({ kind }) => kind === "refactor.move")).toBe(false);
});

test("what cannot be done after all is refused with its reason; so is what was listed of an older text", async () => {
  const { client, list, resolve } = await open(able);
  const take = (await list(3, 4)).find(({ title }) => title.startsWith("Take 2 pours"))!;
  await expect(resolve(take)).rejects.toMatchObject({ code: LSPErrorCodes.RequestFailed, message: expect.stringContaining("“Ebb”") });
  await client.change(uri, 2, [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: "\r\n" }]);
  await expect(resolve(take)).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified });
});

test("only the kinds that are asked for", async () => {
  const { list } = await open(able);
  expect((await list(1, 1, ["refactor.extract"])).map(({ title }) => title)).toEqual(["Make a riff of Slip"]);
  expect(new Set((await list(1, 1, ["quickfix"])).map(({ kind }) => kind))).toEqual(new Set(["quickfix"]));
});

test("a file is split into new ones", async () => {
  const { list, resolve } = await open(able);
  const split = (await list(1)).find(({ kind }) => kind === "refactor.move")!;
  const { edit } = await resolve(split);
  const created = edit!.documentChanges!.filter((change): change is CreateFile => "kind" in change);
  expect(created).toEqual(
    ["slip", "ebb"].map((name) => ({
      kind: "create",
      uri: nowhere(`${name}.drink`),
      options: { overwrite: false, ignoreIfExists: false },
    })),
  );
  const written = edit!.documentChanges!.find(
    (change): change is TextDocumentEdit => "edits" in change && change.textDocument.uri === nowhere("slip.drink"),
  );
  expect(written!.edits).toMatchObject([
    { newText: "# Été 🍋\r\ndrink Slip\r\n  glass: coupe\r\n  50 ml dry gin\r\n  25 ml sweet vermouth\r\n" },
  ]);
  expect(applied(edit)).toBe("");
});

test("in a chapter the lines keep what the list puts before them, and a chapter is never split", async () => {
  const chapter = nowhere("chapter.md");
  const content =
    "# Winter\n\n1. One\n\n   ```drink\n   drink Slip\n     50 ml dry gin\n     20 ml lime juice\n\n   drink Ebb\n     from: Slip\n   ```\n\nThe end.\n";
  const { list, resolve } = await open(able, chapter, content, "markdown");
  const listed = await list(9);
  expect(listed.some(({ kind }) => kind === "refactor.move")).toBe(false);
  const flat = await resolve(listed.find(({ title }) => title.startsWith("Flatten"))!);
  expect(applied(flat.edit, content, chapter)).toBe(content.replace("     from: Slip\n", "     50 ml dry gin\n     20 ml lime juice\n"));
});

test("to what is typed: an edit with its title, or what is wrong", async () => {
  const { client } = await open(able);
  const scale = (to: string, line = 3) =>
    client.request<{ title: string; edit: WorkspaceEdit } | { problem: string }>("mutchkin/scale", {
      textDocument: { uri },
      position: { line, character: 4 },
      to,
    });
  const scaled = await scale("6");
  expect(scaled).toMatchObject({ title: "Scale to 6 serves, with its 1 riff" });
  expect(applied((scaled as { edit: WorkspaceEdit }).edit)).toContain("  serves: 6\r\n  300 ml dry gin\r\n  150 ml sweet vermouth\r\n");
  expect(await scale("six")).toEqual({ problem: expect.stringContaining("“six” is no size") });
  expect(await scale("6", 8)).toEqual({ problem: expect.stringContaining("Ebb is a riff") });
  expect(await scale("6", 0)).toEqual({ problem: expect.stringContaining("Put the cursor in a drink") });
});

test("a command finds what a refactoring can do for the whole entry, or where it can be asked for", async () => {
  const client = await start();
  const uri = nowhere("card.drink");
  await client.open(uri, "drink Slip\n  method: stir 20 s\n  50 ml gin\n\nmenu Card\n  - Slip 12.50\n");
  const range = (line: number) => ({ start: { line, character: 0 }, end: { line, character: 0 } });
  type Choices = { choices: { title: string; edit: WorkspaceEdit }[]; problem?: string };
  const ask = (name: string, line: number) =>
    client.request<Choices>("mutchkin/refactor", { textDocument: { uri }, range: range(line), name });
  for (const { name, where } of refactorings) {
    const answer = await ask(name, 4);
    expect(answer.choices.length > 0 ? undefined : answer.problem).toBe(answer.choices.length > 0 ? undefined : where);
  }
  const { choices } = await ask("makeRiff", 2);
  expect(choices.map(({ title }) => title)).toEqual(["Make a riff of Slip"]);
  expect((await ask("scale", 2)).choices.length).toBeGreaterThan(1);
  const converted = await client.request<Choices>("mutchkin/convert", { textDocument: { uri }, range: range(2) });
  expect(converted.choices.map(({ title }) => title).join()).toContain("oz");
});

test("every refactoring has its command in the palette", () => {
  const commands = manifest.contributes.commands.map(({ command }) => command);
  for (const { name } of refactorings) expect(commands).toContain(`mutchkin.${name}`);
});

test("whoever fixes on saving gets all that is safe, and nobody else is offered it", async () => {
  const client = await start();
  const fixed = nowhere("fixed.drink");
  await client.open(fixed, "drink Slip\n50 ml gin\n  2,5 cl lemon juice\n");
  const range = { start: { line: 0, character: 0 }, end: { line: 3, character: 0 } };
  const ask = (only?: string[]) =>
    client.request<CodeAction[]>("textDocument/codeAction", { textDocument: { uri: fixed }, range, context: { diagnostics: [], only } });
  const [action] = await ask(["source.fixAll"]);
  const [change] = action!.edit!.documentChanges as TextDocumentEdit[];
  expect(change!.edits).toHaveLength(2);
  expect((await ask()).some(({ kind }) => kind?.startsWith("source"))).toBe(false);
});
