/** Fixes, which know only entries, as edits of the files: with places where the entries stand now and each file's own line breaks. */
import { TextDocument } from "vscode-languageserver-textdocument";
import type { CreateFile, Range, TextDocumentEdit, TextEdit, WorkspaceEdit } from "vscode-languageserver-types";
import { readWithin } from "../../grammar/markdown.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { SpecDocument } from "../house/document.ts";
import type { Addition, Edit, Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";

/**
 * The workspace edit of a fix. A new text goes to a file that is made if it is not there. Answers
 * `undefined` where an entry of the fix is in no text any more: the fix is out of date. `spelling`: how
 * the editor spells a URI.
 */
export function toWorkspaceEdit(house: House, fix: Fix, spelling = (uri: string) => uri): WorkspaceEdit | undefined {
  const changes = new Map<string, { document: SpecDocument | undefined; fresh: boolean; edits: TextEdit[] }>();
  const at = (uri: string, document: SpecDocument | undefined, fresh = false) => {
    const there = changes.get(uri) ?? { document, fresh, edits: [] };
    changes.set(uri, there);
    return there.edits;
  };
  for (const edit of fix.edits) {
    if ("uri" in edit) {
      const document = house.document(edit.uri);
      at(edit.uri, document, edit.fresh).push(document ? appended(document, edit) : { range: fileStart, newText: edit.text });
      continue;
    }
    const document = house.findDocumentOf(edit.entry);
    if (!document || house.isLarder(edit.entry)) return undefined;
    at(document.uri, document).push(textEdit(house, document, edit));
  }
  const documentChanges: (TextDocumentEdit | CreateFile)[] = [];
  for (const [key, { document, fresh, edits }] of changes) {
    const uri = spelling(key);
    const options = fresh ? { overwrite: false, ignoreIfExists: false } : { ignoreIfExists: true };
    if (!document) documentChanges.push({ kind: "create", uri, options });
    documentChanges.push({ textDocument: { uri, version: document?.version ?? null }, edits });
  }
  return { documentChanges };
}

/** The same as plain text edits of one file; what the fix does to other files is left out. */
export function toTextEdits(house: House, document: SpecDocument, fix: Fix): TextEdit[] {
  return fix.edits.flatMap((edit) => {
    if ("uri" in edit) return edit.uri === document.uri ? [appended(document, edit)] : [];
    return house.findDocumentOf(edit.entry) === document ? [textEdit(house, document, edit)] : [];
  });
}

/** The texts at hand that a fix changes, as they stand after it. To a Markdown file it may add no line. */
export function changedTexts(house: House, fix: Fix): SpecDocument[] {
  const documents = new Set(fix.edits.map((edit) => ("uri" in edit ? house.document(edit.uri) : house.findDocumentOf(edit.entry))));
  return [...documents].flatMap((document) => {
    if (!document) return [];
    const text = textAfter(document, toTextEdits(house, document, fix));
    return [{ ...document, tree: document.margins ? readWithin(text, { ...document, margins: document.margins }) : read(text) }];
  });
}

/** The text as it stands after these edits of it; of a Markdown file the specs alone. */
export function textAfter({ uri, tree }: SpecDocument, edits: TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create(uri, "mutchkin", 0, print(tree)), edits);
}

const fileStart: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

function textEdit(house: House, document: SpecDocument, edit: Edit): TextEdit {
  const line = house.getLineOf(edit.entry) + edit.line;
  const { text, eol } = edit.entry.lines[edit.line] ?? { text: "", eol: "" };
  // An end behind the text takes the line break with it, so that a whole line goes.
  const end =
    edit.end > text.length && eol !== "" ? { line: line + 1, character: 0 } : { line, character: Math.min(edit.end, text.length) };
  return { range: { start: { line, character: Math.min(edit.start, text.length) }, end }, newText: withBreaks(edit.text, document) };
}

function appended(document: SpecDocument, { text }: Addition): TextEdit {
  if (document.margins) {
    // Behind the last line of the last block, where its fence closes.
    const closing = { line: document.margins.findLastIndex((margin) => typeof margin === "string") + 1, character: 0 };
    return { range: { start: closing, end: closing }, newText: withBreaks(text, document) };
  }
  const entry = document.tree.entries[document.tree.entries.length - 1];
  const character = entry?.lines[entry.lines.length - 1]?.text.length ?? 0;
  const end = { line: Math.max(0, document.tree.lineCount - 1), character };
  // A last line without a break would run on into the new text.
  const lead = character > 0 ? "\n" : "";
  return { range: { start: end, end }, newText: withBreaks(lead + text, document) };
}

function withBreaks(text: string, document: SpecDocument): string {
  const eol = document.tree.entries[0]?.lines[0]?.eol || "\n";
  return eol === "\n" ? text : text.replaceAll("\n", eol);
}
