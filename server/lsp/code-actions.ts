/** What can be done at a range, as the protocol's code actions. */
import type { CodeAction, CodeActionParams } from "vscode-languageserver";
import { toWorkspaceEdit } from "../features/edits.ts";
import { rangeOf } from "../features/place.ts";
import { quickFixes } from "../features/quick-fixes.ts";
import type { SpecDocument } from "../house/document.ts";
import type { Finding } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { findingsIn } from "./diagnostics.ts";
import type { Context } from "./request.ts";

interface Asked extends Pick<Context, "report" | "spelling"> {
  readonly house: House;
  readonly document: SpecDocument;
  readonly params: CodeActionParams;
}

export function codeActions({ house, document, params: { range, context }, report, spelling }: Asked): CodeAction[] {
  const findings = findingsIn(house, document, report).map(({ finding }) => finding);
  const actions: CodeAction[] = [];
  const fixed = new Set<Finding>();
  for (const action of quickFixes(house, document, range, findings)) {
    if (context.only && !context.only.some((kind) => action.kind === kind || action.kind.startsWith(`${kind}.`))) continue;
    const edit = toWorkspaceEdit(house, action, spelling);
    if (!edit) continue;
    const { finding } = action;
    const start = finding && rangeOf(house, finding.entry, finding.place).start;
    const diagnostic = context.diagnostics.find(
      (one) => one.code === finding?.code && one.range.start.line === start?.line && one.range.start.character === start.character,
    );
    // The first safe fix of a finding is the one that the editor's shortcut takes.
    const isPreferred = finding !== undefined && action.safe && !fixed.has(finding);
    if (finding) fixed.add(finding);
    actions.push({
      title: action.title,
      kind: action.kind,
      edit,
      ...(isPreferred && { isPreferred }),
      ...(diagnostic && { diagnostics: [diagnostic] }),
    });
  }
  return actions;
}
