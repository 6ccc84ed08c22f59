/**
 * Brings the drink or the prep at the cursor to a target, in three questions: what, how much, by which
 * pour. Every choice, number and word comes from the server.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { documents } from "./documents.ts";
import { say } from "./say.ts";

type Target = vscode.QuickPickItem & { readonly id: string; readonly present: string; readonly example: string };

interface Targets {
  readonly name: string;
  readonly targets: readonly Target[];
  readonly ingredients: readonly string[];
}

type WorkspaceEdit = Parameters<BaseLanguageClient["protocol2CodeConverter"]["asWorkspaceEdit"]>[0];
type Way = vscode.QuickPickItem & { readonly edit?: WorkspaceEdit };

interface Ways {
  readonly ways: readonly Way[];
  readonly problem?: string;
}

export async function adjust(client: BaseLanguageClient): Promise<void> {
  const editor = vscode.window.activeTextEditor;
  if (!editor || vscode.languages.match(documents, editor.document) === 0)
    return say("Open a spec and put the cursor in a drink or a prep first.");
  const { document } = editor;
  const { version } = document;
  const place = client.code2ProtocolConverter.asTextDocumentPositionParams(document, editor.selection.active);
  const found = await client.sendRequest<Targets | null>("mutchkin/adjustTargets", place);
  if (!found) return say("Put the cursor in a drink or a prep first.");

  const title = `Adjust ${found.name}`;
  const picked = await pickTarget(found.targets, title);
  if (!picked) return;
  const { target, typed } = picked;
  const waysBy = async (value: string, pour?: string): Promise<Ways> => {
    const answer = await client.sendRequest<Ways | null>("mutchkin/adjustWays", { ...place, target: target.id, value, pour });
    return answer ?? { ways: [], problem: "This could not be computed; the output says why." };
  };
  const value = await vscode.window.showInputBox({
    title: `${title}: ${target.label}`,
    prompt: `${target.label}: ${target.detail}. For example “${target.example}”.`,
    value: typed ?? target.present,
    validateInput: async (typed) => (await waysBy(typed)).problem,
  });
  if (value === undefined) return;

  let { ways } = await waysBy(value);
  for (;;) {
    const asked = { title: `${title}: ${target.label} ${value}`, placeHolder: "By which pour?", matchOnDescription: true };
    const chosen = await vscode.window.showQuickPick([...ways.map(marked), another], asked);
    if (!chosen) return;
    if (chosen !== another) {
      if (document.version !== version) return say("The text has changed in between; ask again.");
      return apply(client, chosen);
    }
    const pour = await vscode.window.showQuickPick(found.ingredients, { title: asked.title, placeHolder: "What is to be poured?" });
    if (!pour) return;
    const answer = await waysBy(value, pour);
    if (answer.problem) return say(answer.problem);
    ways = answer.ways;
  }
}

/** Whoever types “ratio 8” at once finds the ratio, with the 8 for the next question. */
function pickTarget(targets: Targets["targets"], title: string): Promise<{ target: Target; typed?: string } | undefined> {
  const pick = vscode.window.createQuickPick<vscode.QuickPickItem & { readonly target: Target; readonly typed?: string }>();
  const plain = targets.map((target) => ({ ...target, target }));
  Object.assign(pick, { title, placeholder: "What is to be as you want it? For example “ratio” or “ratio 8”.", items: plain });
  return new Promise((resolve) => {
    pick.onDidChangeValue((value) => {
      const [, word, typed] = /^\s*(\p{L}+)\s+(\S.*)$/u.exec(value) ?? [];
      const target = word && targets.find(({ label }) => label.toLowerCase().startsWith(word.toLowerCase()));
      pick.items = target && typed ? [{ ...target, label: `${target.label} ${typed}`, alwaysShow: true, target, typed }] : plain;
    });
    pick.onDidAccept(() => {
      resolve(pick.selectedItems[0]);
      pick.hide();
    });
    pick.onDidHide(() => {
      resolve(undefined);
      pick.dispose();
    });
    pick.show();
  });
}

/** A way that does not get there says so at a glance. */
const marked = (way: Way): Way => (way.description ? way : { ...way, label: `$(circle-slash) ${way.label}` });
const another: Way = { label: "Something else…", detail: "Names a pour that is not in it yet." };

async function apply(client: BaseLanguageClient, { label, detail, edit }: Way): Promise<void> {
  const converted = edit && (await client.protocol2CodeConverter.asWorkspaceEdit(edit));
  if (!converted) say(detail ?? label);
  else if (!(await vscode.workspace.applyEdit(converted))) say("The editor did not take the change.");
}
