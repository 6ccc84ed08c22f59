/** Every feature the server answers: one row each. The reference page and what `initialize` announces are read off here. */
import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionRequest,
  CodeActionResolveRequest,
  CodeLensRequest,
  CodeLensResolveRequest,
  CompletionRequest,
  CompletionResolveRequest,
  DefinitionRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentOnTypeFormattingRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  ImplementationRequest,
  InlayHintRequest,
  InlayHintResolveRequest,
  type Location,
  LSPErrorCodes,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  RequestType,
  ResponseError,
  SelectionRangeRequest,
  SemanticTokensDeltaRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  SignatureHelpRequest,
  WorkspaceSymbolRequest,
} from "vscode-languageserver";
import { mentionsAhead, usesAhead } from "../features/ahead.ts";
import { codeLenses, compare, type LensData, placesOfLens, resolveCodeLens, showReferences } from "../features/code-lens.ts";
import { completion, resolveCompletion } from "../features/completion.ts";
import { definition } from "../features/definition.ts";
import { documentLinks } from "../features/document-links.ts";
import { toWorkspaceEdit } from "../features/edits.ts";
import { firstSteps, insertFrame } from "../features/first-steps.ts";
import { foldingRanges } from "../features/folding.ts";
import { formatting, formattingOnType } from "../features/formatting.ts";
import { hover } from "../features/hover.ts";
import { inlayHints, resolveInlayHint } from "../features/inlay-hints.ts";
import { documentHighlights, implementations, references } from "../features/references.ts";
import { prepareRename, type Refusal, rename } from "../features/rename.ts";
import { selectionRanges } from "../features/selection.ts";
import { semanticTokens, tokenModifiers, tokenTypes } from "../features/semantic-tokens.ts";
import { signatureHelp } from "../features/signature-help.ts";
import { documentSymbols } from "../features/symbols.ts";
import { workspaceSymbols } from "../features/workspace-symbols.ts";
import type { Measure } from "../house/show.ts";
import { codeActionOptions, codeActions, resolveCodeAction } from "./code-actions.ts";
import { compareRequests } from "./compare-requests.ts";
import { completionOptions } from "./completion-options.ts";
import { ownRequests } from "./own-requests.ts";
import { previewRequest } from "./preview-request.ts";
import { ofHouse, ofText, type RequestRow } from "./request.ts";
import { hierarchyRequests } from "./requests-hierarchy.ts";
import type { EditorSettings } from "./settings.ts";

export const requests: readonly RequestRow[] = [
  ofText(HoverRequest.type, {
    inText: true,
    does: "what the cursor is on, computed",
    announces: { hoverProvider: true },
    empty: null,
    answer: ({ house, document, params, settingsFor }) =>
      hover(house, document, params.position, unitsIn(settingsFor(document.uri))) ?? null,
  }),
  ofText(CompletionRequest.type, {
    inText: true,
    does: "what could stand at the cursor, the house's own before the larder's",
    atOnce: true,
    announces: { completionProvider: { triggerCharacters: [" ", ":", "-"], resolveProvider: true } },
    empty: null,
    answer: ({ house, document, params, client }) => completion(house, document, params.position, completionOptions(client())),
  }),
  ofHouse(CompletionResolveRequest.type, {
    does: "an item with its documentation: what it is, how often the house pours it",
    atOnce: true,
    empty: { label: "" },
    answer: ({ house, params }) => resolveCompletion(house, params),
  }),
  ofText(SignatureHelpRequest.type, {
    does: "how a field's value, a step, a pour or a swap is written, with the part that the cursor is in",
    atOnce: true,
    // Never unasked: it would lie over the lines above, beside the list of what can stand there. Once asked for it goes along.
    announces: { signatureHelpProvider: { retriggerCharacters: [":", " ", ",", ";"] } },
    empty: null,
    answer: ({ document, params }) => signatureHelp(document, params.position),
  }),
  ofText(DefinitionRequest.type, {
    inText: true,
    does: "where what the cursor names is declared; what only the larder declares has no file to go to",
    announces: { definitionProvider: true },
    empty: null,
    answer: ({ house, document, params, spelling }) => definition(house, document, params.position, spelling),
  }),
  ofText(ReferencesRequest.type, {
    inText: true,
    does: "every call of what the cursor names, in all texts at hand",
    ahead: mentionsAhead,
    announces: { referencesProvider: true },
    empty: null,
    answer: ({ house, document, params: { position, context }, spelling }) =>
      references(house, document, position, context.includeDeclaration, spelling),
  }),
  ofText(DocumentHighlightRequest.type, {
    inText: true,
    does: "every call of what the cursor names, in this text",
    announces: { documentHighlightProvider: true },
    empty: null,
    answer: ({ house, document, params }) => documentHighlights(house, document, params.position),
  }),
  ofText(ImplementationRequest.type, {
    inText: true,
    does: "the riffs of a drink, the drinks of a family; the drinks and preps that a stock or a prep is poured in or garnishes",
    ahead: usesAhead,
    announces: { implementationProvider: true },
    empty: null,
    answer: ({ house, document, params, spelling }) => implementations(house, document, params.position, spelling),
  }),
  ofText(PrepareRenameRequest.type, {
    inText: true,
    does: "what would be renamed at the cursor, or why nothing can be",
    announces: { renameProvider: { prepareProvider: true } },
    empty: null,
    answer: ({ house, document, params }) => orRefused(prepareRename(house, document, params.position)),
  }),
  ofText(RenameRequest.type, {
    inText: true,
    does: "a name in all texts at hand; one that is taken, or that a line would not read, is refused with the reason",
    ahead: mentionsAhead,
    empty: null,
    answer: ({ house, document, params: { position, newName }, spelling }) => {
      const fix = orRefused(rename(house, document, position, newName));
      return fix instanceof ResponseError ? fix : (toWorkspaceEdit(house, fix, spelling) ?? null);
    },
  }),
  ofText(DocumentSymbolRequest.type, {
    does: "the outline: entries with their pours and sections",
    atOnce: true,
    announces: { documentSymbolProvider: true },
    empty: null,
    answer: ({ document }) => documentSymbols(document),
  }),
  ofHouse(WorkspaceSymbolRequest.type, {
    does: "what is declared in all texts at hand, by some letters of its name",
    announces: { workspaceSymbolProvider: true },
    empty: null,
    answer: ({ house, params, spelling }) => workspaceSymbols(house, params.query, spelling),
  }),
  ofText(FoldingRangeRequest.type, {
    does: "entries, long prose and runs of comments",
    atOnce: true,
    announces: { foldingRangeProvider: true },
    empty: null,
    answer: ({ document }) => foldingRanges(document),
  }),
  ofText(SelectionRangeRequest.type, {
    does: "word, part, item, line, entry, text",
    atOnce: true,
    announces: { selectionRangeProvider: true },
    empty: null,
    answer: ({ document, params }) => selectionRanges(document, params.positions),
  }),
  ofText(SemanticTokensRequest.type, {
    does: "what each name means: bought, made here, a drink, only the larder's, unknown; the rest for a client that does not say `augmentsSyntaxTokens`",
    announces: {
      semanticTokensProvider: {
        legend: { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] },
        full: { delta: true },
        range: true,
      },
    },
    empty: null,
    answer: ({ house, document, tokens, client }) =>
      tokens.full(document.uri, semanticTokens(house, document, undefined, !hasGrammar(client()))),
  }),
  ofText(SemanticTokensDeltaRequest.type, {
    does: "what of them has changed since an answer",
    empty: null,
    answer: ({ house, document, params, tokens, client }) =>
      tokens.since(document.uri, params.previousResultId, semanticTokens(house, document, undefined, !hasGrammar(client()))),
  }),
  ofText(SemanticTokensRangeRequest.type, {
    does: "those of the entries that a range touches",
    empty: null,
    answer: ({ house, document, params, client }) => ({ data: semanticTokens(house, document, params.range, !hasGrammar(client())) }),
  }),
  ofText(InlayHintRequest.type, {
    does: "what a drink comes to, behind its name; what parts come to; the other system's units",
    announces: { inlayHintProvider: { resolveProvider: true } },
    empty: null,
    answer: ({ house, document, params, settingsFor }) => {
      const settings = settingsFor(document.uri);
      return inlayHints(house, document, params.range, settings.inlayHints, unitsIn(settings));
    },
  }),
  ofHouse(InlayHintResolveRequest.type, {
    does: "a hint with its tooltip: how sure a figure is, and where a size stands",
    empty: { position: { line: 0, character: 0 }, label: "" },
    answer: ({ house, params, settingsFor }) => resolveInlayHint(house, params, unitsIn(settingsFor((params.data as { uri: string }).uri))),
  }),
  ofText(CodeLensRequest.type, {
    does: "above a drink its menus, its riffs, how it is poured from its batch and (for a client that lists `mutchkin.batch`) a way to batch it, above a menu one to compare it (`mutchkin.compare`), above a stock or a prep what it is poured in; not counted yet",
    announces: { codeLensProvider: { resolveProvider: true } },
    empty: null,
    answer: ({ house, document, settingsFor, client, revisions }) => {
      if (!settingsFor(document.uri).codeLens) return [];
      return [
        ...(canRun(client(), insertFrame) ? firstSteps(document) : []),
        ...codeLenses(house, document, (command) => canRun(client(), command) && (command !== compare || revisions !== undefined)),
      ];
    },
  }),
  ofHouse(CodeLensResolveRequest.type, {
    does: "a lens with its count; it runs `mutchkin.showReferences` for a client that lists that in `experimental.commands`",
    ahead: usesAhead,
    empty: { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } },
    answer: ({ house, params, client, settingsFor }) =>
      resolveCodeLens(house, params, canRun(client(), showReferences), unitsIn(settingsFor((params.data as LensData).uri))),
  }),
  ofHouse(new RequestType<LensData, Location[], void>("mutchkin/placesOfLens"), {
    does: "our own: the places that a lens has counted, by its `data`",
    empty: [],
    answer: ({ house, params, spelling }) => placesOfLens(house, params, spelling),
  }),
  ofText(DocumentLinkRequest.type, {
    does: "addresses of the web and files of the house that comments and prose name; the page of a rule that is allowed",
    announces: { documentLinkProvider: { resolveProvider: false } },
    empty: null,
    answer: ({ house, document, rulesPage, spelling }) => documentLinks(house, document, rulesPage, spelling),
  }),
  ofText(DocumentFormattingRequest.type, {
    does: "blanks in their canonical order, in as few edits as do it; a line that does not read is left",
    atOnce: true,
    announces: { documentFormattingProvider: true },
    empty: null,
    answer: ({ document }) => formatting(document),
  }),
  ofText(DocumentRangeFormattingRequest.type, {
    does: "the same of the lines that a range touches",
    atOnce: true,
    announces: { documentRangeFormattingProvider: true },
    empty: null,
    answer: ({ document, params }) => formatting(document, params.range),
  }),
  ofText(DocumentOnTypeFormattingRequest.type, {
    does: "the same of the line above a fresh line break",
    atOnce: true,
    announces: { documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" } },
    empty: null,
    answer: ({ document, params }) => formattingOnType(document, params.position),
  }),
  ofText(CodeActionRequest.type, {
    inText: true,
    does: "fixes of findings, all safe ones of a text for whoever asks for `source.fixAll`; conversions of a pour, a drink or a file; refactorings of a drink, a prep or a file",
    announces: { codeActionProvider: codeActionOptions },
    empty: null,
    answer: codeActions,
  }),
  ofHouse(CodeActionResolveRequest.type, {
    does: "the edit of a refactoring, or why it cannot be made after all",
    empty: {} as CodeAction,
    answer: ({ params, ...context }) => resolveCodeAction(params, context),
  }),
  ...hierarchyRequests,
  ...ownRequests,
  previewRequest,
  ...compareRequests,
];

/** The editor's own wish for amounts; absent where it is the house's. */
function unitsIn({ units }: EditorSettings): Measure["units"] | undefined {
  return units === "house" ? undefined : units;
}

/** Whether the editor colours the text by a grammar, and lays our tokens over that. */
function hasGrammar({ textDocument }: ClientCapabilities): boolean {
  return textDocument?.semanticTokens?.augmentsSyntaxTokens === true;
}

/** Whether the editor has a command that no protocol promises. */
function canRun({ experimental }: ClientCapabilities, command: string): boolean {
  const commands: unknown = experimental?.commands;
  return Array.isArray(commands) && commands.includes(command);
}

/** A refusal reaches the person as the reason why. */
function orRefused<T extends object>(answer: T | Refusal): T | ResponseError<void> {
  return "because" in answer ? new ResponseError(LSPErrorCodes.RequestFailed, answer.because) : answer;
}
