/** `mutchkin cost`: what each drink of a menu costs and brings in, and what another price of a stock would change. */
import { costCsv } from "../reports/cost-csv.ts";
import { costText } from "../reports/cost-text.ts";
import { costReport } from "../reports/costing.ts";
import { exitCodes } from "./exit-codes.ts";
import { openMenus } from "./menus-asked.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export const costFormats = ["text", "csv", "json"] as const;

export interface CostOptions {
  readonly format: (typeof costFormats)[number];
  readonly if?: readonly string[];
}

/** Prints the costs; answers the exit code. A drink above its target is no reason to fail: `check` is for that. */
export function costCommand(asked: readonly string[], { format, if: ifs = [] }: CostOptions, terminal: Terminal): number {
  const session = openMenus(asked, terminal);
  const report = costReport(session.house, session.menus, { ifs, pathOf: session.pathOf });
  if ("problem" in report) throw new UsageError(report.problem, report.todo);
  const complete = session.finish();
  const printed = {
    text: () => costText(report, terminal.look),
    csv: () => costCsv(report),
    json: () => `${JSON.stringify(report, null, 2)}\n`,
  };
  terminal.print(printed[format]());
  return complete ? exitCodes.clean : exitCodes.failed;
}
