/** `mutchkin check`: what the rules find, and whether that is too much. */
import { check } from "../reports/check.ts";
import { checkText } from "../reports/check-text.ts";
import { exitCodes } from "./exit-codes.ts";
import { openHouse } from "./session.ts";
import type { Terminal } from "./terminal.ts";

export interface CheckOptions {
  readonly format: "text" | "json";
  /** Warnings that are let pass. */
  readonly maxWarnings: number;
}

/** Prints the findings; answers the exit code. */
export function checkCommand(paths: readonly string[], { format, maxWarnings }: CheckOptions, terminal: Terminal): number {
  const session = openHouse(paths, terminal);
  const { documents } = session;
  const report = check(session.house, documents, { ...session, progress: (done) => session.progress(done, documents.length) });
  const complete = session.finish();
  const look = terminal.watched ? terminal.look : { ...terminal.look, width: Number.POSITIVE_INFINITY };
  terminal.print(format === "json" ? `${JSON.stringify(report, null, 2)}\n` : checkText(report, look));
  const { errors, warnings } = report.summary;
  return !complete ? exitCodes.failed : errors > 0 || warnings > maxWarnings ? exitCodes.findings : exitCodes.clean;
}
