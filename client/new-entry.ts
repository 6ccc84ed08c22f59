/** Where an edit does nothing but add an entry, its name is what is written next: it is shown and selected. */
import * as vscode from "vscode";
import type { Middleware } from "vscode-languageclient";

/** Where what was added starts, once the edit is made. */
interface Added {
  readonly uri: vscode.Uri;
  readonly line: number;
}

/** Absent where the edit changes anything that is there. */
export function addedBy(edit: vscode.WorkspaceEdit): Added | undefined {
  const [[uri, [change, ...others] = []] = [], ...elsewhere] = edit.entries();
  if (!uri || !change?.range.isEmpty || others.length + elsewhere.length > 0) return undefined;
  const line = change.newText.split(/\r\n|\r|\n/).findIndex((text) => /\p{L}/u.test(text));
  return line < 0 ? undefined : { uri, line: change.range.start.line + line };
}

/** Selects what stands behind the first word of the line, so that typing takes its place. */
export function selectName({ uri, line }: Added): void {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.uri.toString() !== uri.toString() || line >= editor.document.lineCount) return;
  const { text, range } = editor.document.lineAt(line);
  const start = /^[^\p{L}]*\p{L}+\s+/u.exec(text)?.[0].length ?? 0;
  editor.selection = new vscode.Selection(range.start.translate(0, start), range.end);
  editor.revealRange(range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** Runs what an editor runs after an action's edit. */
const selectAdded = "mutchkin.selectAdded";

export function answerAdded(): vscode.Disposable {
  return vscode.commands.registerCommand(selectAdded, selectName);
}

export const showAdded: Pick<Middleware, "resolveCodeAction"> = {
  async resolveCodeAction(action, token, next) {
    const resolved = await next(action, token);
    const isExtract = resolved?.kind && vscode.CodeActionKind.RefactorExtract.contains(resolved.kind);
    const added = isExtract && resolved.edit ? addedBy(resolved.edit) : undefined;
    if (resolved && added) resolved.command ??= { title: "Show what was added", command: selectAdded, arguments: [added] };
    return resolved;
  },
};
