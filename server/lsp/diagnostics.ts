/** Findings as the protocol's diagnostics, remembered for each version of what they were made from. */
import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver";
import type { SpecDocument } from "../house/document.ts";
import { type Finding, messageOf } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import type { Severity } from "../house/settings.ts";
import { rules } from "../rules/all.ts";
import { findingsOf, type Report } from "../rules/run.ts";
import type { EditorSettings } from "./settings.ts";

const severityNumbers: Record<Exclude<Severity, "off">, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** A document's findings with the file's lines, in order. */
export function findingsIn(house: House, document: SpecDocument, report: Report): { finding: Finding; startLine: number }[] {
  const found: { finding: Finding; startLine: number }[] = [];
  const { entries, starts } = document.tree;
  for (let index = 0; index < entries.length; index++) {
    const findings = findingsOf(house, entries[index]!, rules, report);
    for (const finding of findings) found.push({ finding, startLine: starts[index]! });
  }
  return found;
}

export function diagnosticsOf(
  house: House,
  document: SpecDocument,
  settings: EditorSettings,
  context: { report: Report; rulesPage: string | undefined; spelling: (uri: string) => string },
): Diagnostic[] {
  const diagnostics: Diagnostic[] = [];
  for (const { finding, startLine } of findingsIn(house, document, context.report)) {
    const severity = settings.severity[finding.code] ?? finding.severity;
    if (severity === "off") continue;
    if (diagnostics.length === settings.maxFindings) {
      diagnostics.push(tooMany(startLine, settings.maxFindings));
      break;
    }
    const { line, start, end } = finding.place;
    diagnostics.push({
      range: { start: { line: startLine + line, character: start }, end: { line: startLine + line, character: end } },
      severity: severityNumbers[severity],
      code: finding.code,
      ...(context.rulesPage && { codeDescription: { href: `${context.rulesPage}#${finding.code}` } }),
      source: "Mutchkin",
      message: messageOf(finding),
      ...(finding.related && {
        relatedInformation: finding.related.map(({ entry, place, what }) => ({
          location: {
            uri: context.spelling(house.getDocumentOf(entry).uri),
            range: {
              start: { line: house.getLineOf(entry) + place.line, character: place.start },
              end: { line: house.getLineOf(entry) + place.line, character: place.end },
            },
          },
          message: what,
        })),
      }),
    });
  }
  return diagnostics;
}

function tooMany(line: number, most: number): Diagnostic {
  return {
    range: { start: { line, character: 0 }, end: { line, character: 0 } },
    severity: DiagnosticSeverity.Information,
    code: "more-findings",
    source: "Mutchkin",
    message: `There is more to find below; this shows the first ${most}. Put some of it right, or raise the setting “mutchkin.maxFindings”.`,
  };
}
