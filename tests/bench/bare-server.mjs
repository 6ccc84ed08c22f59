/**
 * The least that a language server on this library can do: keep the open texts and search them. What
 * it costs is the floor that any server on the library stands on.
 */
import { createConnection, ProposedFeatures, TextDocumentSyncKind, TextDocuments } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
// A word that ends in q: what the benchmark's misspelling edit leaves behind.
const wanted = /\b\w*q\b/g;

connection.onInitialize(() => ({
  capabilities: {
    textDocumentSync: TextDocumentSyncKind.Incremental,
    diagnosticProvider: { interFileDependencies: false, workspaceDiagnostics: false },
  },
}));

connection.languages.diagnostics.on(({ textDocument }) => {
  const document = documents.get(textDocument.uri);
  return { kind: "full", items: document ? search(document) : [] };
});

documents.listen(connection);
connection.listen();

function search(document) {
  return Array.from(document.getText().matchAll(wanted), (match) => ({
    range: { start: document.positionAt(match.index), end: document.positionAt(match.index + match[0].length) },
    message: `Found “${match[0]}”.`,
    severity: 2,
  }));
}
