/** Everything that the rules find in some texts of a house. */
import type { SpecDocument } from "../house/document.ts";
import type { Finding } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import type { Rule } from "../rules/rule.ts";
import { findingsOf, type Report } from "../rules/run.ts";
import type { CheckReport, FindingReport } from "./check-schema.ts";

export interface Checking {
  readonly rules: readonly Rule[];
  /** How a text is named to the reader. */
  pathOf(uri: string): string;
  /** Told when a rule fails; the others go on. */
  readonly report: Report;
  /** Told before each text. */
  progress?(done: number): void;
}

export function check(house: House, documents: readonly SpecDocument[], checking: Checking): CheckReport {
  const findings: FindingReport[] = [];
  for (const [done, document] of documents.entries()) {
    checking.progress?.(done);
    for (const [index, entry] of document.tree.entries.entries()) {
      for (const finding of findingsOf(house, entry, checking.rules, checking.report)) {
        findings.push(reported(finding, document, checking.pathOf(document.uri), document.tree.starts[index]!));
      }
    }
  }
  const count = (severity: Finding["severity"]) => findings.filter((finding) => finding.severity === severity).length;
  return {
    findings,
    summary: {
      files: documents.length,
      errors: count("error"),
      warnings: count("warning"),
      information: count("information"),
      hints: count("hint"),
    },
  };
}

function reported({ code, severity, place, what, todo }: Finding, { margins }: SpecDocument, file: string, start: number): FindingReport {
  const margin = margins?.[start + place.line]?.length ?? 0;
  return {
    file,
    line: start + place.line + 1,
    column: margin + place.start + 1,
    endColumn: margin + Math.max(place.start, place.end) + 1,
    code,
    severity,
    message: what,
    todo,
    docs: `server/rules/README.md#${code}`,
  };
}
