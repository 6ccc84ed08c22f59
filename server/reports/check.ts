/** Everything that the rules find in some texts of a house. */
import type { Entry } from "../../grammar/tree.ts";
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

/** What was found in which texts: what every format is printed from. */
export interface Checked {
  /** The checked files, whether anything was found in them or not. */
  readonly files: readonly string[];
  readonly findings: readonly Located[];
}

export interface Located {
  readonly finding: FindingReport;
  readonly entry: Entry;
  /** The same for the same defect wherever the entry has moved to: the rule, the entry, the marked text, and which of several equal ones in the file. */
  readonly fingerprint: string;
}

export function check(house: House, documents: readonly SpecDocument[], checking: Checking): Checked {
  const findings: Located[] = [];
  const files = documents.map(({ uri }) => checking.pathOf(uri));
  for (const [done, document] of documents.entries()) {
    checking.progress?.(done);
    const equals = new Map<string, number>();
    for (const [index, entry] of document.tree.entries.entries()) {
      for (const found of findingsOf(house, entry, checking.rules, checking.report)) {
        const print = fingerprintOf(found);
        const nth = (equals.get(print) ?? 0) + 1;
        equals.set(print, nth);
        findings.push({
          finding: reported(found, document, files[done]!, document.tree.starts[index]!),
          entry,
          fingerprint: nth > 1 ? `${print} (${nth})` : print,
        });
      }
    }
  }
  return { files, findings };
}

/** The message is no part of it: its figures move with every stock that is poured, and its words with every version. */
function fingerprintOf({ code, entry, place }: Finding): string {
  const where = entry.name ? `${entry.kind} ${entry.name.text}` : entry.kind;
  const marked = entry.lines[place.line]?.text.slice(place.start, place.end) ?? "";
  return [code, where, marked].map((part) => part.trim().replace(/\s+/g, " ")).join(" | ");
}

/** The findings by their files, with every file that was checked. */
export function byFile({ files, findings }: Checked): ReadonlyMap<string, readonly Located[]> {
  const all = new Map<string, Located[]>(files.map((file) => [file, []]));
  for (const found of findings) all.get(found.finding.file)?.push(found);
  return all;
}

/** The published report: the findings and their sums. */
export function reportOf({ files, findings }: Checked): CheckReport {
  const count = (severity: Finding["severity"]) => findings.filter(({ finding }) => finding.severity === severity).length;
  return {
    findings: findings.map(({ finding }) => finding),
    summary: {
      files: files.length,
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
