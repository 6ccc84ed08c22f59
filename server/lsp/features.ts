/** Every feature the server answers: one line each. */
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Connection,
  type HoverParams,
  type ServerCapabilities,
} from "vscode-languageserver";
import { toWorkspaceEdit } from "../features/edits.ts";
import { hover } from "../features/hover.ts";
import type { SpecDocument } from "../house/document.ts";
import type { Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import type { Report } from "../rules/run.ts";
import type { answering } from "./answer.ts";
import { findingsIn } from "./diagnostics.ts";
import type { EditorSettings } from "./settings.ts";

export interface FeatureContext {
  readonly answer: ReturnType<typeof answering>;
  readonly report: Report;
  readonly settingsFor: (uri: string) => EditorSettings;
}

/** Registers the features; answers what the server can, for `initialize`. */
export function registerFeatures(connection: Connection, { answer, report, settingsFor }: FeatureContext): ServerCapabilities {
  connection.onHover(
    answer("hover", null, (house, document, { position }: HoverParams) => {
      const { units } = settingsFor(document.uri);
      return hover(house, document, position, units === "house" ? undefined : units) ?? null;
    }),
  );
  connection.onCodeAction(
    answer("code actions", [], (house, document, params: CodeActionParams) => codeActions(house, document, params, report)),
  );
  return {
    hoverProvider: true,
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite] },
  };
}

function codeActions(house: House, document: SpecDocument, { range, context }: CodeActionParams, report: Report): CodeAction[] {
  const actions: CodeAction[] = [];
  for (const { finding, startLine } of findingsIn(house, document, report)) {
    const line = startLine + finding.place.line;
    if (line < range.start.line || line > range.end.line || !finding.fixes) continue;
    const diagnostic = context.diagnostics.find(
      (one) => one.code === finding.code && one.range.start.line === line && one.range.start.character === finding.place.start,
    );
    for (const [index, fix] of finding.fixes().entries()) {
      const action = actionOf(house, fix, CodeActionKind.QuickFix);
      if (action) actions.push({ ...action, isPreferred: fix.safe && index === 0, ...(diagnostic && { diagnostics: [diagnostic] }) });
    }
  }
  return actions;
}

function actionOf(house: House, fix: Fix, kind: CodeActionKind): CodeAction | undefined {
  const edit = toWorkspaceEdit(house, fix);
  return edit && { title: fix.title, kind, edit };
}
