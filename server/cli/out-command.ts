/** `mutchkin check --out`: the drinks that are off tonight, and those that fall back on something else. */
import { outReport } from "../reports/out.ts";
import { outText } from "../reports/out-text.ts";
import { exitCodes } from "./exit-codes.ts";
import { openHouse } from "./session.ts";
import type { Terminal } from "./terminal.ts";

/** Prints the list; answers the exit code. What is out is no fault of the specs. */
export function outCommand(paths: readonly string[], { format }: { readonly format: "text" | "json" }, terminal: Terminal): number {
  const session = openHouse(paths, terminal);
  const entries = session.documents.flatMap((document) => document.tree.entries);
  const report = outReport(session.house, entries, session.pathOf);
  const complete = session.finish();
  terminal.print(format === "json" ? `${JSON.stringify(report, null, 2)}\n` : outText(report, terminal.look));
  return complete ? exitCodes.clean : exitCodes.failed;
}
