/** Findings as the XML of JUnit: a suite for each file, a failed test for each error and warning. */
import { byFile, type Checked, type Located } from "./check.ts";
import type { FindingReport } from "./check-schema.ts";
import { type XmlElement, xml } from "./xml.ts";

/** A file without errors and warnings is a test that passed. Hints and information are tests that passed, with something to say. */
export function checkJunit(checked: Checked): string {
  const suites = [...byFile(checked)].map(([file, findings]) => suiteOf(file, findings));
  const sum = (key: "@tests" | "@failures") => suites.reduce((all, suite) => all + suite[key], 0);
  return xml("testsuites", {
    "@name": "mutchkin check",
    "@tests": sum("@tests"),
    "@failures": sum("@failures"),
    "@errors": 0,
    testsuite: suites,
  });
}

function suiteOf(file: string, findings: readonly Located[]) {
  const failures = findings.filter(({ finding }) => fails(finding)).length;
  const cases =
    findings.length > 0 ? findings.map((found) => caseOf(found)) : [{ "@name": "nothing found", "@classname": file, "@file": file }];
  return { "@name": file, "@tests": cases.length, "@failures": failures, "@errors": 0, "@skipped": 0, "@time": 0, testcase: cases };
}

function caseOf({ finding, fingerprint }: Located): XmlElement {
  const { file, line, column, severity, message, todo, code } = finding;
  const place = `${file}:${line}:${column}`;
  const content: XmlElement = fails(finding)
    ? { failure: { "@type": `${severity} ${code}`, "@message": message, "#text": `${place}  ${message} ${todo}`.trim() } }
    : { "system-out": `${place}  ${severity}  ${message} ${todo}`.trim() };
  // A service tells a new failure from an old one by the name, so no line stands in it.
  return { "@name": fingerprint, "@classname": file, "@file": file, "@line": line, "@time": 0, ...content };
}

function fails({ severity }: FindingReport): boolean {
  return severity === "error" || severity === "warning";
}
