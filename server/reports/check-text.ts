/** Findings as lines that an editor's terminal can jump to, with what to do below each, and the sum of them. */
import { showCount } from "../house/show.ts";
import type { CheckReport, FindingReport } from "./check-schema.ts";
import { type Look, readable, wrap } from "./sheet.ts";

/** How each severity is counted, the gravest first. */
export const severityWords = [
  ["error", "error", "errors"],
  ["warning", "warning", "warnings"],
  ["information", "for information", "for information"],
  ["hint", "hint", "hints"],
] as const satisfies readonly (readonly [FindingReport["severity"], string, string])[];

/** Ends in a line break; the last line is the summary. */
export function checkText(report: CheckReport, look: Look): string {
  const { findings } = report;
  const paragraphs = findings.map((finding, index) => {
    const newFile = index > 0 && findings[index - 1]!.file !== finding.file;
    return `${newFile ? "\n" : ""}${findingText(finding, look)}\n`;
  });
  return `${paragraphs.join("")}${paragraphs.length > 0 ? "\n" : ""}${look.strong(summaryText(report))}\n`;
}

const indent = "    ";

function findingText({ file, line, column, severity, message, todo, code }: FindingReport, look: Look): string {
  const place = readable(`${file}:${line}:${column}`);
  const lead = `${place}  ${severity}  `;
  // Wrapped before it is set, since emphasis takes no room.
  const text = wrap(`${message} [${code}]`, look.width, indent, lead).slice(lead.length);
  const what = `${look.strong(place)}  ${look.severity(severity, severity)}  ${text}`;
  return todo ? `${what}\n${wrap(todo, look.width, indent)}` : what;
}

/** How many files were looked at, and what was found in sum. */
export function summaryText({ summary, findings }: CheckReport): string {
  const files = showCount(summary.files, "file");
  return `${files} checked: ${countsText({ findings }) || "nothing found"}.`;
}

/** How many findings of each severity there are; empty where there are none. */
export function countsText({ findings }: Pick<CheckReport, "findings">): string {
  return severityWords
    .map(([severity, one, many]) => [findings.filter((finding) => finding.severity === severity).length, one, many] as const)
    .filter(([count]) => count > 0)
    .map(([count, one, many]) => showCount(count, one, many))
    .join(", ");
}
