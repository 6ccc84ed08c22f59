/** Answers the server's questions for files that it cannot read itself, from the editor's file systems. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

interface ListParams {
  readonly folder: string;
  readonly endings: readonly string[];
  /** Names of folders that are left out. */
  readonly passOver: readonly string[];
}

export function answerForFiles(client: BaseLanguageClient): vscode.Disposable {
  return vscode.Disposable.from(
    client.onRequest("mutchkin/listFiles", listFiles),
    client.onRequest("mutchkin/readFile", ({ uri }: { uri: string }) => readFile(vscode.Uri.parse(uri))),
  );
}

/**
 * Walks the folders: the editor's own search finds nothing where a file system brings no search with
 * it. Links are not followed, which would lead round in circles, and a folder that cannot be read is
 * as if it were empty: both as on disk.
 */
async function listFiles({ folder, endings, passOver }: ListParams): Promise<string[]> {
  const found: string[] = [];
  const walk = async (at: vscode.Uri): Promise<void> => {
    const entries = await vscode.workspace.fs.readDirectory(at).then(undefined, () => []);
    const below = entries.filter(([name, type]) => type === vscode.FileType.Directory && !passOver.includes(name));
    const files = entries.filter(([name, type]) => type === vscode.FileType.File && endings.some((ending) => name.endsWith(ending)));
    for (const [name] of files) found.push(vscode.Uri.joinPath(at, name).toString());
    await Promise.all(below.map(([name]) => walk(vscode.Uri.joinPath(at, name))));
  };
  const top = vscode.Uri.parse(folder);
  // A file system's root may be written without a path, to which nothing can be joined.
  await walk(top.path ? top : top.with({ path: "/" }));
  return found;
}

/** The text as Node reads it: a byte order mark stays, and a byte that is none of UTF-8 becomes a replacement character. */
async function readFile(uri: vscode.Uri): Promise<string | null> {
  try {
    return new TextDecoder("utf-8", { ignoreBOM: true }).decode(await vscode.workspace.fs.readFile(uri));
  } catch {
    return null; // Gone or unreadable since it was listed.
  }
}
