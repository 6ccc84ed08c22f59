/** Writes a small working house into a folder, in two questions. What is written comes from the server. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { say } from "./say.ts";

interface Choices {
  readonly countries: readonly (vscode.QuickPickItem & { readonly country: string })[];
  readonly problem?: string;
}

type Edit = Parameters<BaseLanguageClient["protocol2CodeConverter"]["asWorkspaceEdit"]>[0];

interface Written {
  readonly edit?: Edit;
  readonly open?: { readonly uri: string; readonly position: { readonly line: number; readonly character: number } };
  readonly problem?: string;
}

const title = "New House";

export async function newHouse(client: BaseLanguageClient): Promise<void> {
  const folder = await whichFolder();
  if (!folder) return;
  const uri = client.code2ProtocolConverter.asUri(folder);
  const { countries, problem } = await client.sendRequest<Choices>("mutchkin/newHouseChoices", { folder: uri });
  if (problem) return say(problem);
  const name = await vscode.window.showInputBox({
    title,
    prompt: "What is the house called? Its name stands on reports.",
    validateInput: (typed) => (typed.trim() ? undefined : "A house needs a name."),
  });
  if (name === undefined) return;
  const country = await vscode.window.showQuickPick(nearestFirst(countries), {
    title,
    placeHolder: "Where is it? Standard drinks, allergens and money follow the country.",
    matchOnDescription: true,
  });
  if (!country) return;
  const written = await client.sendRequest<Written>("mutchkin/newHouse", { folder: uri, name, country: country.country });
  if (!written.edit || !written.open) return say(written.problem ?? "The house could not be written; the output says why.");
  await write(client, written.edit, written.open);
}

async function whichFolder(): Promise<vscode.Uri | undefined> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (folders.length === 0) {
    const open = "Open a Folder";
    const answer = await vscode.window.showInformationMessage("A house lives in a folder of its own. Open one first.", open);
    if (answer === open) await vscode.commands.executeCommand("workbench.action.files.openFolder");
    return undefined;
  }
  const folder = folders.length === 1 ? folders[0] : await vscode.window.showWorkspaceFolderPick({ placeHolder: "In which folder?" });
  return folder?.uri;
}

/** The country of the editor's own region first: it is the likeliest. */
function nearestFirst(countries: Choices["countries"]): Choices["countries"] {
  const here = new Intl.Locale(Intl.DateTimeFormat().resolvedOptions().locale).region;
  return [...countries].sort((one, other) => Number(other.country === here) - Number(one.country === here));
}

async function write(client: BaseLanguageClient, edit: Edit, open: NonNullable<Written["open"]>): Promise<void> {
  const { asWorkspaceEdit, asUri, asPosition } = client.protocol2CodeConverter;
  const converted = await asWorkspaceEdit(edit);
  if (!converted || !(await vscode.workspace.applyEdit(converted))) {
    return say("The house was not written: a file of its names is there already, or the folder may not be written to.");
  }
  // Made by a command and not typed: nobody expects to have to save them.
  for (const [uri] of converted.entries()) await (await vscode.workspace.openTextDocument(uri)).save();
  const document = await vscode.workspace.openTextDocument(asUri(open.uri));
  const start = asPosition(open.position);
  const selection = new vscode.Range(start, document.lineAt(start.line).range.end);
  await vscode.window.showTextDocument(document, { selection });
}
