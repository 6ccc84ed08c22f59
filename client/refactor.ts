/**
 * Refactorings as commands, for whoever looks in the palette and not under the cursor. What can be done,
 * in which words and with which edit, comes from the server.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { documents } from "./documents.ts";
import { addedBy, selectName } from "./new-entry.ts";
import { say } from "./say.ts";

type Edit = Parameters<BaseLanguageClient["protocol2CodeConverter"]["asWorkspaceEdit"]>[0];

interface Choice {
  readonly title: string;
  readonly edit: Edit;
}

interface Choices {
  readonly choices: readonly Choice[];
  readonly problem?: string;
}

interface Scaled extends Partial<Choice> {
  readonly problem?: string;
}

/** The commands `mutchkin.NAME` that are a server's refactoring of that name. */
export const refactorings = ["makeRiff", "flattenRiff", "extractPrep", "inlinePrep", "sortPours", "markBatched", "splitFile"] as const;

export function refactor(name: (typeof refactorings)[number]) {
  return (client: BaseLanguageClient): Promise<void> => choose(client, "mutchkin/refactor", { name });
}

export function convert(client: BaseLanguageClient): Promise<void> {
  return choose(client, "mutchkin/convert", {});
}

/** To as much as is typed: `8 serves`, `700 ml`. */
export async function scale(client: BaseLanguageClient): Promise<void> {
  const spot = spotIn(client);
  if (!spot) return;
  const scaledTo = (to: string) => client.sendRequest<Scaled | null>("mutchkin/scale", { ...spot.params, to });
  const to = await vscode.window.showInputBox({
    title: "Scale",
    prompt: "To how many serves, or to what volume? For example “8” or “700 ml”.",
    validateInput: async (typed) => (typed.trim() ? (await scaledTo(typed))?.problem : undefined),
  });
  if (!to?.trim()) return;
  const scaled = await scaledTo(to);
  if (scaled?.edit) await apply(client, scaled.edit, spot);
  else say(scaled?.problem ?? "This could not be scaled; the output says why.");
}

/** One choice is taken at once, of several one is picked. */
async function choose(client: BaseLanguageClient, request: string, more: object): Promise<void> {
  const spot = spotIn(client);
  if (!spot) return;
  const answer = await client.sendRequest<Choices | null>(request, { ...spot.params, ...more });
  const choices = answer?.choices ?? [];
  if (choices.length === 0) return say(answer?.problem ?? "Put the cursor in a drink or a prep first.");
  const items = choices.map((choice) => ({ label: choice.title, choice }));
  const chosen = items.length === 1 ? items[0] : await vscode.window.showQuickPick(items, { placeHolder: "Which of these?" });
  if (chosen) await apply(client, chosen.choice.edit, spot);
}

interface Spot {
  readonly editor: vscode.TextEditor;
  readonly version: number;
  readonly params: object;
}

function spotIn(client: BaseLanguageClient): Spot | undefined {
  const editor = vscode.window.activeTextEditor;
  if (!editor || vscode.languages.match(documents, editor.document) === 0) {
    say("Open a spec and put the cursor in a drink or a prep first.");
    return undefined;
  }
  const { asTextDocumentPositionParams, asRange } = client.code2ProtocolConverter;
  const { document, selection } = editor;
  const params = { ...asTextDocumentPositionParams(document, selection.active), range: asRange(selection) };
  return { editor, version: document.version, params };
}

async function apply(client: BaseLanguageClient, edit: Edit, { editor, version }: Spot): Promise<void> {
  if (editor.document.version !== version) return say("The text has changed in between; ask again.");
  const converted = await client.protocol2CodeConverter.asWorkspaceEdit(edit);
  if (!converted || !(await vscode.workspace.applyEdit(converted))) return say("The editor did not take the change.");
  const added = addedBy(converted);
  if (added) selectName(added);
}
