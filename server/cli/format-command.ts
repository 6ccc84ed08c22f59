/** `mutchkin format`: files in their canonical form, written or only looked at. */
import { fileURLToPath } from "node:url";
import { formatting } from "../features/formatting.ts";
import { showCount } from "../house/show.ts";
import { exitCodes } from "./exit-codes.ts";
import { openHouse, type Session } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { edited, writeEdits } from "./write-text.ts";

export interface FormatOptions {
  /** Only says which files are not in canonical form. */
  readonly check?: boolean;
  /** Prints the texts in form instead of writing them: what git's textconv asks for. */
  readonly print?: boolean;
}

/** Names each file that it changes, or would; answers the exit code. */
export function formatCommand(paths: readonly string[], { check = false, print = false }: FormatOptions, terminal: Terminal): number {
  const session = openHouse(paths, terminal);
  if (print) return printed(session, terminal);
  let changed = 0;
  for (const document of session.documents) {
    const edits = formatting(document);
    if (edits.length === 0) continue;
    changed++;
    if (!check) writeEdits(terminal.files, session, document, edits);
    terminal.print(`${check ? "Would format" : "Formatted"} ${session.pathOf(document.uri)}\n`);
  }
  const complete = session.finish();
  const files = showCount(session.documents.length, "file");
  terminal.print(changed === 0 ? `${files} in good form.\n` : `${changed} of ${files} ${check ? "would change" : "changed"}.\n`);
  return !complete ? exitCodes.failed : check && changed > 0 ? exitCodes.findings : exitCodes.clean;
}

function printed(session: Session, terminal: Terminal): number {
  for (const document of session.documents) {
    const text = terminal.files.read(fileURLToPath(document.uri));
    terminal.print(edited(text, session, document, formatting(document)));
  }
  return session.finish() ? exitCodes.clean : exitCodes.failed;
}
