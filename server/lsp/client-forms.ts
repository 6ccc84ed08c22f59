/** Answers in the forms that the client says it takes. Features answer in the fullest form; who takes less is given that here. */
import type { ClientCapabilities, TextDocumentEdit, TextEdit, WorkspaceEdit } from "vscode-languageserver";
import { withoutMarks } from "../features/markdown.ts";

type DocumentChange = NonNullable<WorkspaceEdit["documentChanges"]>[number];

interface Forms {
  readonly edit: ((changes: readonly DocumentChange[]) => WorkspaceEdit) | undefined;
  readonly markdown: boolean;
}

/** An answer with every edit of the workspace and every text in it as the client takes them. */
export function asClientTakes<T>(answer: T, client: ClientCapabilities): T {
  const forms: Forms = { edit: editsFor(client), markdown: takesMarkdown(client) };
  return forms.edit || !forms.markdown ? (reshaped(answer, forms) as T) : answer;
}

/**
 * Without the making of files for a client that does not make them (it opens one that is not there
 * empty), and as `changes`, which every client takes, for one without `documentChanges`. Absent for one that takes all.
 */
function editsFor({ workspace }: ClientCapabilities): Forms["edit"] {
  const { documentChanges = false, resourceOperations = [] } = workspace?.workspaceEdit ?? {};
  if (documentChanges && resourceOperations.includes("create")) return undefined;
  return (changes) => {
    const edits = changes.filter((change): change is TextDocumentEdit => "edits" in change);
    return documentChanges ? { documentChanges: edits } : { changes: byFile(edits) };
  };
}

/** A client that lists the formats of hovers without it shows none elsewhere either; one that lists nothing is not known to. */
function takesMarkdown({ textDocument }: ClientCapabilities): boolean {
  return textDocument?.hover?.contentFormat?.includes("markdown") ?? true;
}

function reshaped(answer: unknown, forms: Forms): unknown {
  if (Array.isArray(answer)) return answer.map((one) => reshaped(one, forms));
  if (typeof answer !== "object" || answer === null) return answer;
  const { documentChanges, ...rest } = answer as WorkspaceEdit;
  if (documentChanges && forms.edit) return { ...rest, ...forms.edit(documentChanges) };
  const { kind, value } = answer as { kind?: unknown; value?: unknown };
  if (!forms.markdown && kind === "markdown" && typeof value === "string") return { kind: "plaintext", value: withoutMarks(value) };
  return Object.fromEntries(Object.entries(answer).map(([key, part]) => [key, key === "data" ? part : reshaped(part, forms)]));
}

function byFile(changes: readonly TextDocumentEdit[]): Record<string, TextEdit[]> {
  const files: Record<string, TextEdit[]> = {};
  for (const { textDocument, edits } of changes) {
    const there = files[textDocument.uri] ?? [];
    files[textDocument.uri] = [...there, ...(edits as TextEdit[])];
  }
  return files;
}
