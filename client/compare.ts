/** Compares a menu, or the whole house, with a revision: asks which, and shows what changed. Every word and figure is the server's. */
import * as vscode from "vscode";
import { type BaseLanguageClient, WorkDoneProgress } from "vscode-languageclient";
import { againCommand, type Comparison, comparisonPage, pageCommands, problemPage } from "./comparison-page.ts";
import { documents } from "./documents.ts";
import { pickRevision, type Revisions } from "./pick-revision.ts";
import { say } from "./say.ts";

export const compareCommand = "mutchkin.compare";

/** What is asked: about a text, or about a menu in it, by the place of the cursor and later by its name. */
interface Question {
  readonly textDocument: { readonly uri: string };
  readonly position?: { readonly line: number; readonly character: number };
  readonly menu?: string;
}

type Answer = Partial<Comparison> & { readonly menu?: string; readonly problem?: string };

interface Shown {
  readonly panel: vscode.WebviewPanel;
  readonly revision: string;
  question: Question;
}

export interface Comparisons extends vscode.Disposable {
  /** Of the menu under the lens that was clicked, or at the cursor; of the house of a file that was chosen. */
  compare(client: BaseLanguageClient, clicked?: unknown): Promise<void>;
  /** Of a page that is open, by its number. */
  again(client: BaseLanguageClient, id?: unknown): Promise<void>;
}

export function comparisons(): Comparisons {
  const shown = new Map<number, Shown>();
  let last = 0;
  const open = (question: Question, revision: string): number => {
    const id = ++last;
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: false };
    const panel = vscode.window.createWebviewPanel("mutchkin.comparison", "Comparison", column, {
      enableCommandUris: pageCommands,
      enableFindWidget: true,
      localResourceRoots: [],
    });
    panel.onDidDispose(() => shown.delete(id));
    shown.set(id, { panel, revision, question });
    return id;
  };
  const show = (id: number, answer: Answer) => {
    const one = shown.get(id);
    if (!one) return;
    const title = answer.title ?? `Compared with ${one.revision}`;
    one.panel.title = title;
    one.panel.webview.html = isWhole(answer)
      ? comparisonPage(answer, nonce(), id, new Date().toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" }))
      : problemPage(title, answer.problem ?? "The comparison failed. The output says why.", nonce(), id);
    // The menu may stand elsewhere by the next time.
    if (answer.menu !== undefined) one.question = { textDocument: one.question.textDocument, menu: answer.menu };
  };
  return {
    dispose: () => {
      for (const { panel } of shown.values()) panel.dispose();
    },
    async compare(client, clicked) {
      if (!vscode.workspace.isTrusted) return say("Comparing asks the git program about this folder. Trust the folder first.");
      const question = questionOf(client, clicked);
      if (!question) return say("Open a spec first, and put the cursor in a menu if that is to be compared.");
      const list = (of: string) => client.sendRequest<Revisions>("mutchkin/revisions", { ...question, of });
      const revision = await pickRevision("Compare with a Revision", list);
      if (revision === undefined) return;
      if (typeof revision !== "string") return say(revision.problem);
      const answer = await asked(client, question, revision);
      if (answer?.problem !== undefined) return say(answer.problem);
      if (answer) show(open(question, revision), answer);
    },
    async again(client, id) {
      const one = typeof id === "number" ? shown.get(id) : undefined;
      if (!one || typeof id !== "number") return say("That comparison is closed. Compare anew.");
      const answer = await asked(client, one.question, one.revision);
      if (answer) show(id, answer);
    },
  };
}

export const compareAgainCommand = againCommand;

/** Nothing where the person has stopped it. */
async function asked(client: BaseLanguageClient, question: Question, revision: string): Promise<Answer | undefined> {
  const options = { location: vscode.ProgressLocation.Notification, title: `Comparing with ${revision}`, cancellable: true };
  return vscode.window.withProgress(options, async (progress, token) => {
    const workDoneToken = `mutchkin-compare-${nonce()}`;
    const listening = client.onProgress(WorkDoneProgress.type, workDoneToken, (told) => {
      if (told.kind !== "end") progress.report({ message: told.kind === "begin" ? told.title : told.message });
    });
    try {
      const answer = await client.sendRequest<Answer>("mutchkin/compare", { ...question, revision, workDoneToken }, token);
      return token.isCancellationRequested ? undefined : answer;
    } finally {
      listening.dispose();
    }
  });
}

function isWhole(answer: Answer): answer is Comparison {
  return answer.problem === undefined && answer.sections !== undefined && answer.commit !== undefined;
}

function questionOf({ code2ProtocolConverter }: BaseLanguageClient, clicked: unknown): Question | undefined {
  if (clicked instanceof vscode.Uri) {
    const { activeTextEditor } = vscode.window;
    // The editor's own menu hands over the text that it stands in: there the cursor says more.
    if (activeTextEditor?.document.uri.toString() !== clicked.toString()) return { textDocument: { uri: clicked.toString() } };
  }
  if (isLens(clicked)) return { textDocument: { uri: clicked.uri }, position: { line: clicked.line, character: 0 } };
  const editor = vscode.window.activeTextEditor;
  if (!editor || vscode.languages.match(documents, editor.document) === 0) return undefined;
  return code2ProtocolConverter.asTextDocumentPositionParams(editor.document, editor.selection.active);
}

function isLens(clicked: unknown): clicked is { readonly uri: string; readonly line: number } {
  return typeof clicked === "object" && clicked !== null && "uri" in clicked && "line" in clicked;
}

function nonce(): string {
  return crypto.randomUUID();
}
