/** Puts a new text in the place of a file's. */
import { fileURLToPath } from "node:url";
import { type Files, Unwritable } from "./files.ts";
import type { Session } from "./session.ts";
import { UsageError } from "./usage-error.ts";

/** Throws a `UsageError` that says why the file is as it was. */
export function writeText(files: Files, { pathOf }: Session, uri: string, text: string): void {
  try {
    files.write(fileURLToPath(uri), text);
  } catch (cause) {
    if (!(cause instanceof Unwritable)) throw cause;
    throw new UsageError(`“${pathOf(uri)}” could not be written: ${cause.message}.`, "It is as it was.");
  }
}
