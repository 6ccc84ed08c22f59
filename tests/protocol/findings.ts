/** What tests ask of diagnostics. */
import type { Diagnostic, PublishDiagnosticsParams } from "vscode-languageserver/node";

type Fits = (push: Pick<PublishDiagnosticsParams, "diagnostics">) => boolean;

export const has =
  (code: string): Fits =>
  ({ diagnostics }) =>
    diagnostics.some((one) => one.code === code);
export const lacks =
  (code: string): Fits =>
  (push) =>
    !has(code)(push);
export const nothing: Fits = ({ diagnostics }) => diagnostics.length === 0;

/** Findings in a stable order and without what may differ between two equal texts (result ids, links). */
export function plain(diagnostics: readonly Diagnostic[]): string[] {
  return diagnostics
    .map(({ range: { start, end }, severity, code, message }) =>
      [start.line, start.character, end.line, end.character, severity, code, message].join(" "),
    )
    .sort();
}
