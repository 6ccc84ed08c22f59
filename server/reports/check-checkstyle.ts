/** Findings as the XML of Checkstyle, which many review tools read. */
import { byFile, type Checked } from "./check.ts";
import type { FindingReport } from "./check-schema.ts";
import { type XmlElement, xml } from "./xml.ts";

const severities = { error: "error", warning: "warning", information: "info", hint: "info" } as const satisfies Record<
  FindingReport["severity"],
  string
>;

/** Every checked file is named, so that findings of an earlier run go away. */
export function checkCheckstyle(checked: Checked): string {
  const files = [...byFile(checked)].map(([file, findings]) => ({ "@name": file, error: findings.map(({ finding }) => errorOf(finding)) }));
  return xml("checkstyle", { "@version": "4.3", file: files });
}

function errorOf({ line, column, severity, message, todo, code }: FindingReport): XmlElement {
  return {
    "@line": line,
    "@column": column,
    "@severity": severities[severity],
    "@message": `${message} ${todo}`.trim(),
    "@source": `mutchkin.${code}`,
  };
}
