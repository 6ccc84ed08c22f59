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
export function writeEdits(files: Files, { house, pathOf }: Session, { uri, margins }: SpecDocument, edits: TextEdit[]): void {
  const path = fileURLToPath(uri);
  try {
    const before = TextDocument.create(uri, "", 0, files.read(path));
    files.write(path, TextDocument.applyEdits(before, outward(edits, margins, house)));
  } catch (cause) {
    if (!(cause instanceof Unwritable)) throw cause;
    throw new UsageError(`“${pathOf(uri)}” could not be written: ${cause.message}.`, "It is as it was.");
  }
}
