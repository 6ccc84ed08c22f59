/** Findings as workflow commands of GitHub Actions, which it shows beside the lines of a pull request. */
import { type Checked, reportOf } from "./check.ts";
import type { FindingReport } from "./check-schema.ts";
import { summaryText } from "./check-text.ts";

const commands = { error: "error", warning: "warning", information: "notice", hint: "notice" } as const satisfies Record<
  FindingReport["severity"],
  string
>;

/** One command a line, then the sum of them for whoever reads the log. */
export function checkGithub(checked: Checked): string {
  const report = reportOf(checked);
  return [...report.findings.map(commandOf), summaryText(report), ""].join("\n");
}

function commandOf({ file, line, column, endColumn, code, severity, message, todo }: FindingReport): string {
  const properties = { file, line, endLine: line, col: column, endColumn, title: code };
  const written = Object.entries(properties).map(([key, value]) => `${key}=${escapedProperty(String(value))}`);
  return `::${commands[severity]} ${written.join(",")}::${escaped(`${message} ${todo}`.trim())}`;
}

function escaped(text: string): string {
  return text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}

function escapedProperty(text: string): string {
  return escaped(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
