/** Edits of the workspace in the form that the client says it takes. Features answer in the fullest form; who takes less is given that here. */
import type { ClientCapabilities, TextDocumentEdit, TextEdit, WorkspaceEdit } from "vscode-languageserver";

type DocumentChange = NonNullable<WorkspaceEdit["documentChanges"]>[number];

/**
 * An answer with every edit of the workspace in it as the client takes it: without the making of files
 * for one that does not make them (it opens a file that is not there empty), and as `changes`, which every client takes,
 * for one without `documentChanges`.
 */
export function asClientTakes<T>(answer: T, { workspace }: ClientCapabilities): T {
  const { documentChanges = false, resourceOperations = [] } = workspace?.workspaceEdit ?? {};
  const creates = resourceOperations.includes("create");
  if (documentChanges && creates) return answer;
  const shape = (changes: readonly DocumentChange[]): WorkspaceEdit => {
    const edits = changes.filter((change): change is TextDocumentEdit => "edits" in change);
    return documentChanges ? { documentChanges: edits } : { changes: byFile(edits) };
  };
  return reshaped(answer, shape) as T;
}

function reshaped(answer: unknown, shape: (changes: readonly DocumentChange[]) => WorkspaceEdit): unknown {
  if (Array.isArray(answer)) return answer.map((one) => reshaped(one, shape));
  if (typeof answer !== "object" || answer === null) return answer;
  const { documentChanges, ...rest } = answer as WorkspaceEdit;
  if (documentChanges) return { ...rest, ...shape(documentChanges) };
  return Object.fromEntries(Object.entries(answer).map(([key, value]) => [key, key === "data" ? value : reshaped(value, shape)]));
}

function byFile(changes: readonly TextDocumentEdit[]): Record<string, TextEdit[]> {
  const files: Record<string, TextEdit[]> = {};
  for (const { textDocument, edits } of changes) {
    const there = files[textDocument.uri] ?? [];
    files[textDocument.uri] = [...there, ...(edits as TextEdit[])];
  }
  return files;
}
