/** Carries edits over to a file. */
import { fileURLToPath } from "node:url";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { TextEdit } from "vscode-languageserver-types";
import { outward } from "../features/margins.ts";
import type { SpecDocument } from "../house/document.ts";
import { type Files, Unwritable } from "./files.ts";
import type { Session } from "./session.ts";
import { UsageError } from "./usage-error.ts";

/** Everything else in the file stays as it is, to the byte. Throws a `UsageError` that says why the file is as it was. */
export function writeEdits(files: Files, session: Session, document: SpecDocument, edits: TextEdit[]): void {
  const path = fileURLToPath(document.uri);
  writeText(files, path, session.pathOf(document.uri), edited(files.read(path), session, document, edits));
}

/** A file's text after edits of the document that was read from it. */
export function edited(text: string, { house }: Session, { uri, margins }: SpecDocument, edits: TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create(uri, "", 0, text), outward(edits, margins, house));
}

/** `name` is the path as the reader knows it. Throws a `UsageError` that says why the file is as it was. */
export function writeText(files: Files, path: string, name: string, text: string | Uint8Array): void {
  try {
    files.write(path, text);
  } catch (cause) {
    if (!(cause instanceof Unwritable)) throw cause;
    throw new UsageError(`“${name}” could not be written: ${cause.message}.`, "It is as it was.");
  }
}
