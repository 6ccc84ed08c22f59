/** The one wrapper around every feature: a fault is logged with its name and answered empty, and the process lives. */
import { type CancellationToken, LSPErrorCodes, ResponseError, type TextDocumentIdentifier } from "vscode-languageserver";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import type { Workspace } from "./workspace.ts";

export type Log = (what: string, cause: unknown) => void;

/** `answer` is for what is asked of one text, `answer.ofHouse` for what is asked of all of them. */
export function answering(workspace: Workspace, log: Log) {
  function guarded<P, R>(name: string, empty: R, of: (params: P) => string, feature: (params: P) => R) {
    return (params: P, token: CancellationToken): R | ResponseError<void> => {
      if (token.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, name);
      try {
        return feature(params);
      } catch (cause) {
        log(`${name} failed${of(params)} and was answered empty`, cause);
        return empty;
      }
    };
  }
  function answer<P extends { textDocument: TextDocumentIdentifier }, R>(
    name: string,
    empty: R,
    feature: (house: House, document: SpecDocument, params: P) => R,
  ) {
    const of = ({ textDocument }: P) => ` on ${textDocument.uri}`;
    return guarded(name, empty, of, (params: P) => {
      const document = workspace.document(params.textDocument.uri);
      return document ? feature(workspace.house, document, params) : empty;
    });
  }
  const ofHouse = <P, R>(name: string, empty: R, feature: (house: House, params: P) => R) =>
    guarded(
      name,
      empty,
      () => "",
      (params: P) => feature(workspace.house, params),
    );
  return Object.assign(answer, { ofHouse });
}
