/** A house is the same files and the same texts whether the disk or the editor is asked. */
import { type Dirent, readdirSync, readFileSync, symlinkSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { expect, test, vi } from "vitest";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { Connection } from "vscode-languageserver";
import type { URI } from "vscode-uri";
import { answerForFiles } from "../../client/files.ts";
import { diskEnvironment } from "../../server/lsp/disk.ts";
import { filesOfEditor } from "../../server/lsp/editor.ts";
import { layOut } from "./start.ts";

/** The editor's file system over this disk, in the shapes that its documentation gives. */
vi.mock("vscode", async () => {
  const { URI, Utils } = await import("vscode-uri");
  const FileType = { Unknown: 0, File: 1, Directory: 2, SymbolicLink: 64 };
  const { File, Directory, SymbolicLink } = FileType;
  const typeOf = (entry: Dirent) => (entry.isSymbolicLink() ? SymbolicLink | Directory : entry.isDirectory() ? Directory : File);
  const fs = {
    readDirectory: async ({ fsPath }: URI) => readdirSync(fsPath, { withFileTypes: true }).map((entry) => [entry.name, typeOf(entry)]),
    readFile: async ({ fsPath }: URI) => new Uint8Array(readFileSync(fsPath)),
  };
  const Uri = { parse: (uri: string) => URI.parse(uri), joinPath: Utils.joinPath };
  return { FileType, Uri, workspace: { fs }, Disposable: { from: () => ({ dispose() {} }) } };
});

/** The server's questions, answered by the client's code without a wire between them. */
function editor() {
  const answers = new Map<string, (params: object) => unknown>();
  const client = { onRequest: (method: string, answer: (params: object) => unknown) => answers.set(method, answer) };
  answerForFiles(client as unknown as BaseLanguageClient);
  const connection = { sendRequest: async (method: string, params: object) => answers.get(method)?.(params) };
  return filesOfEditor(connection as unknown as Connection);
}

const disk = diskEnvironment({ list: async () => [], read: async () => undefined });

test("the same files are listed", async () => {
  const house = layOut({
    "card.drink": "",
    "a b/é #1.drink": "",
    "deep/er/still.drink": "",
    "deep/notes.txt": "",
    "node_modules/other/card.drink": "",
    "deep/.git/card.drink": "",
  });
  const { uri } = house.folder();
  symlinkSync(fileURLToPath(uri), fileURLToPath(house.uriOf("deep/round")));
  const listed = (await editor().list(uri)).sort();
  expect(listed).toHaveLength(3);
  expect(listed).toEqual((await disk.list(uri)).sort());
});

test("a folder that cannot be read is empty, a file that cannot be read is absent", async () => {
  const house = layOut({});
  expect(await editor().list(house.uriOf("gone"))).toEqual([]);
  expect(await editor().read(house.uriOf("gone.drink"))).toBeUndefined();
});

test("the same text is read from any bytes, also from a mark of their order and from none of UTF-8", async () => {
  const house = layOut({});
  const uri = house.uriOf("card.drink");
  const marks = fc.constantFrom([], [0xef, 0xbb, 0xbf], [0xff, 0xfe], [0xc3], [0xed, 0xa0, 0x80], [0xf0, 0x9f, 0x8d]);
  await fc.assert(
    fc.asyncProperty(marks, fc.uint8Array(), marks, async (before, bytes, after) => {
      house.write("card.drink", Uint8Array.from([...before, ...bytes, ...after]));
      expect(await editor().read(uri)).toBe(await disk.read(uri));
    }),
    { numRuns: 300, examples: [[[0xef, 0xbb, 0xbf], Uint8Array.from(Buffer.from("drink Lantern\n")), []]] },
  );
});
