/** Every feature the server answers: one line each. */
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type CompletionParams,
  type Connection,
  type DefinitionParams,
  type DocumentOnTypeFormattingParams,
  type DocumentRangeFormattingParams,
  type HoverParams,
  LSPErrorCodes,
  type ReferenceParams,
  type RenameParams,
  ResponseError,
  type SelectionRangeParams,
  type ServerCapabilities,
  type TextDocumentPositionParams,
} from "vscode-languageserver";
import { targetsAt, type WayChoice, waysAt } from "../features/adjust.ts";
import { completion } from "../features/completion.ts";
import { definition } from "../features/definition.ts";
import { toWorkspaceEdit } from "../features/edits.ts";
import { foldingRanges } from "../features/folding.ts";
import { formatting, formattingOnType } from "../features/formatting.ts";
import { hover } from "../features/hover.ts";
import { rangeOf } from "../features/place.ts";
import { quickFixes } from "../features/quick-fixes.ts";
import { documentHighlights, implementations, references } from "../features/references.ts";
import { prepareRename, type Refusal, rename } from "../features/rename.ts";
import { selectionRanges } from "../features/selection.ts";
import { documentSymbols } from "../features/symbols.ts";
import { workspaceSymbols } from "../features/workspace-symbols.ts";
import type { SpecDocument } from "../house/document.ts";
import type { Finding } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import type { Report } from "../rules/run.ts";
import type { answering } from "./answer.ts";
import { findingsIn } from "./diagnostics.ts";
import type { EditorSettings } from "./settings.ts";

export interface FeatureContext {
  readonly answer: ReturnType<typeof answering>;
  readonly report: Report;
  readonly settingsFor: (uri: string) => EditorSettings;
  /** The client's own spelling of a URI. */
  readonly spelling: (uri: string) => string;
}

/** A target by its `id`, as typed, and the pour that it is to be met by where one was named. */
interface AdjustParams extends TextDocumentPositionParams {
  readonly target: string;
  readonly value: string;
  readonly pour?: string;
}

/** Registers the features; answers what the server can, for `initialize`. */
export function registerFeatures(connection: Connection, context: FeatureContext): ServerCapabilities {
  const { answer, settingsFor, spelling } = context;
  connection.onHover(
    answer("hover", null, (house, document, { position }: HoverParams) => {
      const { units } = settingsFor(document.uri);
      return hover(house, document, position, units === "house" ? undefined : units) ?? null;
    }),
  );
  connection.onCodeAction(
    answer("code actions", [], (house, document, params: CodeActionParams) => codeActions(house, document, params, context)),
  );
  connection.onDefinition(
    answer("definition", [], (house, document, { position }: DefinitionParams) => definition(house, document, position, spelling)),
  );
  connection.onCompletion(
    answer("completion", [], (house, document, { position }: CompletionParams) => completion(house, document, position)),
  );
  connection.onDocumentFormatting(answer("format", [], (_house, document) => formatting(document)));
  connection.onDocumentRangeFormatting(
    answer("format", [], (_house, document, { range }: DocumentRangeFormattingParams) => formatting(document, range)),
  );
  connection.onDocumentOnTypeFormatting(
    answer("format", [], (_house, document, { position }: DocumentOnTypeFormattingParams) => formattingOnType(document, position)),
  );
  connection.onReferences(
    answer("references", [], (house, document, { position, context: { includeDeclaration } }: ReferenceParams) =>
      references(house, document, position, includeDeclaration, spelling),
    ),
  );
  connection.onImplementation(
    answer("implementations", [], (house, document, { position }: TextDocumentPositionParams) =>
      implementations(house, document, position, spelling),
    ),
  );
  connection.onSelectionRanges(
    answer("selection", [], (_house, document, { positions }: SelectionRangeParams) => selectionRanges(document, positions)),
  );
  connection.onWorkspaceSymbol(
    answer.ofHouse("workspace symbols", [], (house, { query }: { query: string }) => workspaceSymbols(house, query, spelling)),
  );
  connection.onDocumentHighlight(
    answer("highlights", [], (house, document, { position }: TextDocumentPositionParams) => documentHighlights(house, document, position)),
  );
  connection.onPrepareRename(
    answer("prepare rename", null, (house, document, { position }: TextDocumentPositionParams) =>
      orRefused(prepareRename(house, document, position)),
    ),
  );
  connection.onRenameRequest(
    answer("rename", null, (house, document, { position, newName }: RenameParams) => {
      const fix = orRefused(rename(house, document, position, newName));
      return fix instanceof ResponseError ? fix : (toWorkspaceEdit(house, fix, spelling) ?? null);
    }),
  );
  connection.onDocumentSymbol(answer("symbols", [], (_house, document) => documentSymbols(document)));
  connection.onFoldingRanges(answer("folding", [], (_house, document) => foldingRanges(document)));
  connection.onRequest(
    "mutchkin/adjustTargets",
    answer("targets", null, (house, document, { position }: TextDocumentPositionParams) => targetsAt(house, document, position) ?? null),
  );
  connection.onRequest(
    "mutchkin/adjustWays",
    answer("ways", null, (house, document, { position, target, value, pour }: AdjustParams) => {
      const { ways, problem } = waysAt(house, document, position, target, value, pour);
      const edit = ({ fix, ...way }: WayChoice) => ({ ...way, ...(fix && { edit: toWorkspaceEdit(house, fix, spelling) }) });
      return { ways: ways.map(edit), ...(problem && { problem }) };
    }),
  );
  return {
    hoverProvider: true,
    definitionProvider: true,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" },
    referencesProvider: true,
    implementationProvider: true,
    selectionRangeProvider: true,
    workspaceSymbolProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
    completionProvider: { triggerCharacters: [" ", ":", "-"] },
    documentSymbolProvider: true,
    foldingRangeProvider: true,
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite] },
  };
}

/** A refusal reaches the person as the reason why. */
function orRefused<T extends object>(answer: T | Refusal): T | ResponseError<void> {
  return "because" in answer ? new ResponseError(LSPErrorCodes.RequestFailed, answer.because) : answer;
}

function codeActions(
  house: House,
  document: SpecDocument,
  { range, context }: CodeActionParams,
  { report, spelling }: FeatureContext,
): CodeAction[] {
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
