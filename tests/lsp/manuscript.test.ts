/** A chapter in an editor: what is found in its text stands there, and is put right there. */
import { expect, test } from "vitest";
import { type CodeAction, type DocumentDiagnosticReport, FileChangeType, type WorkspaceDiagnosticReport } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { environmentOf, startHere } from "./in-process.ts";

const uri = "file:///quay/one.md";
const chapter = `> ## Slip Sour
>
> 🍋 Give it 25 ml of lemon juice, says :strenght[Slip Sour].

- \`\`\`drink
  drink Slip Sour
    glass: coupe
    method: shake 12 s; fine strain
    garnish: none
    50 ml gin
    22.5 ml lemon juice
    15 ml sugar syrup
  \`\`\`
`;

test("findings in running text have their places and their fixes in the file", async () => {
  const disk = new Map([["file:///quay/book.drink", "book Slack Water\n  units shown: metric\n"]]);
  const { client, stop } = await startHere(
    environmentOf(disk, () => 0),
    ["file:///quay"],
  );
  await client.sendNotification("textDocument/didOpen", { textDocument: { uri, languageId: "markdown", version: 1, text: chapter } });
  const report = await client.sendRequest<DocumentDiagnosticReport>("textDocument/diagnostic", { textDocument: { uri } });
  const items = "items" in report ? report.items : [];
  const before = TextDocument.create(uri, "markdown", 1, chapter);
  expect(items.map(({ code, range }) => [code, before.getText(range)])).toEqual([
    ["prose-disagrees", "25 ml"],
    ["unknown-directive", "strenght"],
  ]);
  const texts = await Promise.all(
    items.map(async (diagnostic) => {
      const params = { textDocument: { uri }, range: diagnostic.range, context: { diagnostics: [diagnostic] } };
      const actions = await client.sendRequest<CodeAction[]>("textDocument/codeAction", params);
      const { edit } = actions.find(({ diagnostics }) => diagnostics?.[0]?.code === diagnostic.code)!;
      return TextDocument.applyEdits(before, edit!.changes![uri]!).split("\n")[2];
    }),
  );
  expect(texts).toEqual([
    '> 🍋 Give it :pour[lemon juice]{in="Slip Sour"} of lemon juice, says :strenght[Slip Sour].',
    "> 🍋 Give it 25 ml of lemon juice, says :strength[Slip Sour].",
  ]);
  stop();
});

test("a closed preface is a chapter as soon as there is its book, and no longer", async () => {
  const [preface, book] = ["file:///quay/a-preface.md", "file:///quay/book.drink"];
  const disk = new Map([
    [preface, "We utilize it.\n"],
    ["file:///quay/low/README.md", "We utilize it.\n"],
    [book, "book Slack Water\n  avoid: utilize\n"],
  ]);
  const { client, stop } = await startHere(
    environmentOf(disk, () => 1),
    ["file:///quay"],
  );
  const found = async () => {
    const { items } = await client.sendRequest<WorkspaceDiagnosticReport>("workspace/diagnostic", { previousResultIds: [] });
    return items.flatMap((item) => ("items" in item ? item.items.map(({ code }) => `${item.uri} ${code}`) : []));
  };
  const save = async (text: string) => {
    disk.set(book, text);
    await client.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri: book, type: FileChangeType.Changed }] });
  };
  expect(await found()).toEqual([`${preface} avoided-word`]);
  await save("house Quay\n");
  await expect.poll(found).toEqual([]);
  await save("book Slack Water\n  avoid: utilize\n  chapters: low/README.md\n");
  await expect.poll(found).toEqual(["file:///quay/low/README.md avoided-word"]);
  stop();
});
