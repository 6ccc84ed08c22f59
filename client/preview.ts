/** A chapter beside the editor as it will print, following what is typed. All of it is the server's; here it is only shown. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { escaped } from "./comparison-page.ts";
import { documents } from "./documents.ts";
import { previewPage } from "./preview-page.ts";
import { say } from "./say.ts";
import { openPlaceCommand, type Spot } from "./spot.ts";

export const previewCommand = "mutchkin.previewChapter";

interface Answer {
  readonly title?: string;
  readonly css?: string;
  readonly body?: string;
  readonly problems?: readonly { readonly text: string; readonly line: number }[];
  readonly problem?: string;
}

/** So long after the last key it is asked for again. */
const restMs = 150;

export interface Preview extends vscode.Disposable {
  /** Of the chapter in the editor; from then on of whichever chapter is looked at. */
  show(client: BaseLanguageClient): Promise<void>;
}

export function chapterPreview(): Preview {
  let panel: vscode.WebviewPanel | undefined;
  let shown: { uri: string; css: string; line?: number } | undefined;
  let client: BaseLanguageClient | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;

  /** Answers whether there was something to show. What a later question has answered is not shown again. */
  const refresh = async (uri: string): Promise<boolean> => {
    if (!client?.isRunning()) return false;
    const turn = ++asked;
    const answer = await client.sendRequest<Answer>("mutchkin/preview", { textDocument: { uri } });
    if (turn !== asked) return true;
    if (answer.body === undefined || answer.css === undefined) {
      if (!panel) say(answer.problem ?? "There is nothing to preview; the output says why.");
      return false;
    }
    panel ??= open();
    panel.title = `${answer.title} (preview)`;
    const body = problemsOf(answer, uri) + answer.body;
    // The page stays, and with it where one has scrolled to.
    if (shown?.uri === uri && shown.css === answer.css) void panel.webview.postMessage({ body });
    else panel.webview.html = previewPage(answer.css, body, crypto.randomUUID());
    shown = { uri, css: answer.css, ...(shown?.uri === uri && { line: shown.line }) };
    return true;
  };
  /** Shows what stands at the cursor, unless it is where it was. */
  const reveal = (editor: vscode.TextEditor) => {
    const line = editor.selection.active.line;
    if (!shown || shown.line === line || editor.document.uri.toString() !== shown.uri) return;
    shown.line = line;
    void panel?.webview.postMessage({ line });
  };
  const open = () => {
    const made = vscode.window.createWebviewPanel(
      "mutchkin.preview",
      "Preview",
      { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, enableFindWidget: true, enableCommandUris: [openPlaceCommand], localResourceRoots: [] },
    );
    made.onDidDispose(() => {
      panel = undefined;
      shown = undefined;
    });
    return made;
  };
  const soon = (uri: string) => {
    clearTimeout(timer);
    timer = setTimeout(() => void refresh(uri).catch((cause) => client?.outputChannel.error(String(cause))), restMs);
  };
  const follow = vscode.Disposable.from(
    // A spec in another file may be what a chapter prints.
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      if (shown && vscode.languages.match(documents, document) > 0) soon(shown.uri);
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => reveal(textEditor)),
    vscode.window.onDidChangeActiveTextEditor((editor) => {
      const uri = editor?.document.languageId === "markdown" ? editor.document.uri.toString() : undefined;
      if (shown && uri !== undefined && uri !== shown.uri) soon(uri);
    }),
  );
  return {
    dispose() {
      clearTimeout(timer);
      follow.dispose();
      panel?.dispose();
    },
    async show(by) {
      client = by;
      const { document } = vscode.window.activeTextEditor ?? {};
      if (document?.languageId !== "markdown") return say("Open a chapter of a book first: a Markdown file beside its `book` entry.");
      if ((await refresh(document.uri.toString())) && panel) panel.reveal(undefined, true);
    },
  };
}

/** What prints nothing, each with a way to its line. */
function problemsOf({ problems = [] }: Answer, uri: string): string {
  if (problems.length === 0) return "";
  const items = problems.map(({ text, line }) => {
    const spot: Spot = { uri, line };
    return `<li><a href="command:${openPlaceCommand}?${encodeURIComponent(JSON.stringify([spot]))}">Line ${line + 1}</a>: ${escaped(text)}</li>`;
  });
  return `<aside class="problems" aria-label="Problems"><p>This keeps the book from being built:</p><ul>${items.join("")}</ul></aside>`;
}
