/** Mixes the drink at the cursor ahead: asks how much, and shows the page. Every word and number on it is the server's. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { documents } from "./documents.ts";
import { say } from "./say.ts";

export const batchCommand = "mutchkin.batch";

/** A page that nobody edits: it has a place of its own, in no folder. */
const scheme = "mutchkin-batch";

interface Answer {
  readonly title?: string;
  readonly text?: string;
  readonly problem?: string;
}

/** Where the lens stands that was clicked. */
interface Spot {
  readonly uri: string;
  readonly line: number;
}

export interface Pages extends vscode.Disposable {
  /** Of the drink under the lens that was clicked, else at the cursor; a menu hands over something else. */
  batch(client: BaseLanguageClient, clicked?: unknown): Promise<void>;
}

export function batchPages(): Pages {
  const texts = new Map<string, string>();
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const forget = vscode.workspace.onDidCloseTextDocument(({ uri }) => uri.scheme === scheme && texts.delete(uri.toString()));
  const provided = vscode.workspace.registerTextDocumentContentProvider(scheme, {
    onDidChange: changed.event,
    provideTextDocumentContent: (uri) => texts.get(uri.toString()) ?? "Ask for this batch again: the page is not kept.",
  });
  const show = async (title: string, text: string): Promise<void> => {
    const uri = vscode.Uri.from({ scheme, path: `/${title.replaceAll("/", "-")}.txt` });
    texts.set(uri.toString(), text);
    changed.fire(uri);
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri), { viewColumn: vscode.ViewColumn.Beside });
  };
  return {
    dispose: () => vscode.Disposable.from(changed, forget, provided).dispose(),
    async batch(client, clicked) {
      const place = placeOf(client, clicked);
      if (!place) return say("Open a spec and put the cursor in a drink first.");
      const made = today();
      const mixed = (to: string) => client.sendRequest<Answer | null>("mutchkin/batch", { ...place, to, made });
      const to = await vscode.window.showInputBox({
        title: "Batch",
        prompt: "For how many serves, how much, or which bottle? For example “40”, “5 l”, or “700 ml bottle” for as many as fill it.",
        validateInput: async (typed) => (typed.trim() ? (await mixed(typed))?.problem : undefined),
      });
      if (!to?.trim()) return;
      const answer = await mixed(to);
      if (answer?.title !== undefined && answer.text !== undefined) await show(answer.title, answer.text);
      else say(answer?.problem ?? "This could not be batched; the output says why.");
    },
  };
}

function placeOf({ code2ProtocolConverter }: BaseLanguageClient, clicked: unknown): object | undefined {
  if (isSpot(clicked)) return { textDocument: { uri: clicked.uri }, position: { line: clicked.line, character: 0 } };
  const editor = vscode.window.activeTextEditor;
  if (!editor || vscode.languages.match(documents, editor.document) === 0) return undefined;
  return code2ProtocolConverter.asTextDocumentPositionParams(editor.document, editor.selection.active);
}

function isSpot(clicked: unknown): clicked is Spot {
  return typeof clicked === "object" && clicked !== null && "uri" in clicked && "line" in clicked;
}

/** The day here, `2026-11-28`: the Swedish form of a date. */
function today(): string {
  return new Date().toLocaleDateString("sv-SE");
}
