/** What can be done at a range, as the protocol's code actions; a refactoring's edit is made once it is chosen, where the client asks then. */
import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionKind,
  type CodeActionOptions,
  type CodeActionParams,
  LSPErrorCodes,
  type Range,
  ResponseError,
  type WorkspaceEdit,
} from "vscode-languageserver";
import { toWorkspaceEdit } from "../features/edits.ts";
import { fixAll } from "../features/fix-all.ts";
import { rangeOf } from "../features/place.ts";
import { quickFixes } from "../features/quick-fixes.ts";
import { refactoringKinds, refactoringsAt } from "../features/refactorings/all.ts";
import type { Offer } from "../features/refactorings/refactoring.ts";
import type { Refusal } from "../features/rename.ts";
import type { SpecDocument } from "../house/document.ts";
import type { Finding } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { findingsIn } from "./diagnostics.ts";
import type { Context } from "./request.ts";

interface Asked extends Pick<Context, "report" | "spelling" | "client"> {
  readonly house: House;
  readonly document: SpecDocument;
  readonly params: CodeActionParams;
}

/** What tells an action again that was listed without its edit. */
interface Chosen {
  readonly uri: string;
  readonly version: number | null;
  readonly range: Range;
}

/** For `editor.codeActionsOnSave` and the like. */
const fixAllKind = `${CodeActionKind.SourceFixAll}.mutchkin`;

export const codeActionOptions: CodeActionOptions = {
  codeActionKinds: [CodeActionKind.QuickFix, ...refactoringKinds, fixAllKind],
  resolveProvider: true,
};

export function codeActions(asked: Asked): CodeAction[] {
  return [...fixActions(asked), ...refactoringActions(asked), ...fixAllActions(asked)];
}

/** Only for a client that asks for it: it is about the whole text and not about the place. */
function fixAllActions({ house, document, params: { context }, report, spelling }: Asked): CodeAction[] {
  if (!context.only || !isWanted(fixAllKind, context.only)) return [];
  const fix = fixAll(
    house,
    document,
    findingsIn(house, document, report).map(({ finding }) => finding),
  );
  const edit = fix && toWorkspaceEdit(house, fix, spelling);
  return edit ? [{ title: fix.title, kind: fixAllKind, edit }] : [];
}

function refactoringActions({ house, document, params: { range, context }, spelling, client }: Asked): CodeAction[] {
  const offers = refactoringsAt(house, document, range, createsFiles(client())).filter(({ kind }) => isWanted(kind, context.only));
  const { resolveSupport, dataSupport, disabledSupport } = client().textDocument?.codeAction ?? {};
  if (resolveSupport?.properties.includes("edit") && dataSupport) {
    const data: Chosen = { uri: document.uri, version: document.version, range };
    return offers.map(({ title, kind }) => ({ title, kind, data }));
  }
  return offers.flatMap((offer): CodeAction[] => {
    const { title, kind } = offer;
    const made = editOf(house, offer, spelling);
    if (!("because" in made)) return [{ title, kind, edit: made }];
    return disabledSupport ? [{ title, kind, disabled: { reason: made.because } }] : [];
  });
}

/** The listed action with its edit; why it cannot be done after all reaches the person. */
export function resolveCodeAction(action: CodeAction, { workspace, spelling, client }: Context): CodeAction | ResponseError<void> {
  const { uri, version, range } = action.data as Chosen;
  const { house } = workspace;
  const document = house.document(uri);
  if (document?.version !== version) return new ResponseError(LSPErrorCodes.ContentModified, "The text has changed since. Ask again.");
  const offer = refactoringsAt(house, document, range, createsFiles(client())).find(({ title }) => title === action.title);
  const made = offer && editOf(house, offer, spelling);
  if (!made) return new ResponseError(LSPErrorCodes.ContentModified, "Another text has changed since. Ask again.");
  return "because" in made ? new ResponseError(LSPErrorCodes.RequestFailed, made.because) : { ...action, edit: made };
}

export function editOf(house: House, { title, edits }: Offer, spelling: Context["spelling"]): WorkspaceEdit | Refusal {
  const made = edits();
  if ("because" in made) return made;
  return toWorkspaceEdit(house, { title, edits: made, safe: false }, spelling) ?? { because: "The text has changed since. Ask again." };
}

export function createsFiles({ workspace }: ClientCapabilities): boolean {
  const { documentChanges, resourceOperations } = workspace?.workspaceEdit ?? {};
  return documentChanges === true && (resourceOperations?.includes("create") ?? false);
}

function isWanted(kind: string, only: readonly string[] | undefined): boolean {
  return !only || only.some((one) => kind === one || kind.startsWith(`${one}.`));
}

function fixActions({ house, document, params: { range, context }, report, spelling }: Asked): CodeAction[] {
  const findings = findingsIn(house, document, report).map(({ finding }) => finding);
  const actions: CodeAction[] = [];
  const fixed = new Set<Finding>();
  for (const action of quickFixes(house, document, range, findings)) {
    if (!isWanted(action.kind, context.only)) continue;
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
