/** The one wrapper around every feature: a fault is logged with its name and answered empty, and the process lives. */
import { type CancellationToken, LSPErrorCodes, ResponseError, type TextDocumentIdentifier } from "vscode-languageserver";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import type { Workspace } from "./workspace.ts";

export type Log = (what: string, cause: unknown) => void;

export function answering(workspace: Workspace, log: Log) {
  return function answer<P extends { textDocument: TextDocumentIdentifier }, R>(
    name: string,
    empty: R,
    feature: (house: House, document: SpecDocument, params: P) => R,
  ): (params: P, token: CancellationToken) => R | ResponseError<void> {
    return (params, token) => {
      if (token.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, name);
      try {
        const document = workspace.document(params.textDocument.uri);
        return document ? feature(workspace.house, document, params) : empty;
      } catch (cause) {
        log(`${name} failed on ${params.textDocument.uri} and was answered empty`, cause);
        return empty;
      }
    };
  };
}
