/** Findings as SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format), with the rules' own explanations. */
import type { Rule } from "../rules/rule.ts";
import type { Checked, Located } from "./check.ts";
import type { FindingReport } from "./check-schema.ts";
import { fencedText } from "./markers.ts";

const levels = { error: "error", warning: "warning", information: "note", hint: "note" } as const satisfies Record<
  FindingReport["severity"],
  string
>;

export interface Run {
  readonly rules: readonly Rule[];
  /** Mutchkin's own. */
  readonly version: string;
  /** Every file could be read, and every rule ran. */
  readonly complete: boolean;
}

/** The log of one run, ending in a line break. */
export function checkSarif({ files, findings }: Checked, { rules, version, complete }: Run): string {
  const ruleIndexes = new Map(rules.map(({ code }, index) => [code, index]));
  const fileIndexes = new Map(files.map((file, index) => [file, index]));
  const log = {
    $schema: "https://json.schemastore.org/sarif-2.1.0.json",
    version: "2.1.0",
    runs: [
      {
        tool: { driver: { name: "Mutchkin", version, semanticVersion: version, rules: rules.map(descriptorOf) } },
        invocations: [{ executionSuccessful: complete }],
        artifacts: files.map((file) => ({ location: locationOf(file) })),
        columnKind: "utf16CodeUnits",
        results: findings.map((found) => resultOf(found, fileIndexes.get(found.finding.file), ruleIndexes.get(found.finding.code))),
      },
    ],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

function descriptorOf({ code, severity, docs }: Rule) {
  const why = docs.source ? `${docs.why} Source: ${docs.source}` : docs.why;
  return {
    id: code,
    shortDescription: { text: docs.title },
    fullDescription: { text: docs.why },
    help: {
      text: `${why}\n\nFound:\n\n${docs.bad.trimEnd()}\n\nPut right:\n\n${docs.good.trimEnd()}\n`,
      markdown: `${why}\n\nFound:\n\n${fencedText(docs.bad)}\n\nPut right:\n\n${fencedText(docs.good)}\n`,
    },
    defaultConfiguration: { level: levels[severity] },
  };
}

function resultOf({ finding, fingerprint }: Located, fileIndex: number | undefined, ruleIndex: number | undefined) {
  const { file, line, column, endColumn, code, severity, message, todo } = finding;
  return {
    ruleId: code,
    ...(ruleIndex !== undefined && { ruleIndex }),
    level: levels[severity],
    message: { text: `${message} ${todo}`.trim() },
    locations: [
      {
        physicalLocation: {
          artifactLocation: { ...locationOf(file), index: fileIndex },
          region: { startLine: line, startColumn: column, endLine: line, endColumn },
        },
      },
    ],
    partialFingerprints: { "mutchkinFinding/v1": fingerprint },
  };
}

/** A path from the checked folder, or a whole one for a file that is not below it; escaped, since `#` and `%` mean something in a URI. */
function locationOf(file: string) {
  const escaped = file.split("/").map(encodeURIComponent).join("/");
  if (/^[A-Za-z]:\//.test(file)) return { uri: `file:///${escaped.replace("%3A", ":")}` };
  return file.startsWith("/") ? { uri: `file://${escaped}` } : { uri: escaped, uriBaseId: "%SRCROOT%" };
}
