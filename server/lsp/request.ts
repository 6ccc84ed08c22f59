/**
 * What a row of the table of requests is, and the one wrapper around every feature: a fault is logged
 * with its method and answered empty, and the process lives.
 */
import {
  type CancellationToken,
  type ClientCapabilities,
  type Connection,
  LSPErrorCodes,
  type RequestType,
  ResponseError,
  type ServerCapabilities,
  type TextDocumentIdentifier,
} from "vscode-languageserver";
import { inward, outward } from "../features/margins.ts";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import type { Report } from "../rules/run.ts";
import { asClientTakes } from "./client-forms.ts";
import type { Revisions } from "./environment.ts";
import type { EarlierHouse } from "./past.ts";
import type { EditorSettings } from "./settings.ts";
import type { TokenResults } from "./token-results.ts";
import type { Workspace } from "./workspace.ts";

/** What every feature is answered with besides the house. */
export interface Context {
  readonly workspace: Workspace;
  readonly log: (what: string, cause: unknown) => void;
  readonly report: Report;
  readonly settingsFor: (uri: string) => EditorSettings;
  /** The client's own spelling of a URI. */
  readonly spelling: (uri: string) => string;
  /** Resolves once all files are read that are being read; absent where none is. */
  readonly settled: (token: CancellationToken) => Promise<void> | undefined;
  /** To be awaited between pieces of long work. */
  readonly turns: () => () => Promise<boolean>;
  /** What the client said that it can do; nothing before `initialize`. */
  readonly client: () => ClientCapabilities;
  /** Where the rules are explained, as a URI without a fragment; absent where that is not shipped. */
  readonly rulesPage: string | undefined;
  /** What was once in a folder; absent where nothing can tell. */
  readonly revisions: Revisions | undefined;
  /** The house with one text as it was, while that is shown beside the text. */
  readonly earlier: EarlierHouse;
  /** What was last answered of each text. */
  readonly tokens: TokenResults;
}

export interface RequestRow {
  readonly method: string;
  /** In the reference page's words. */
  readonly does: string;
  /** What `initialize` tells the client about it. */
  readonly announces: (client: ClientCapabilities) => ServerCapabilities;
  readonly register: (connection: Connection, context: Context) => void;
}

/** What is asked of one text, or of all of them. */
interface OfText<P> extends Context {
  readonly house: House;
  readonly document: SpecDocument;
  readonly params: P;
}
interface OfHouse<P> extends Context {
  readonly house: House;
  readonly params: P;
}

interface Row<A, R> {
  readonly does: string;
  readonly announces?: ServerCapabilities | ((client: ClientCapabilities) => ServerCapabilities);
  /** It rests on the text alone, or would rather be early than whole: what others declare is not waited for. */
  readonly atOnce?: boolean;
  /** Of a Markdown text it is asked about what is written around the specs, too. */
  readonly inText?: boolean;
  /** What takes long in a large house, to be done in turns before it is answered; it can be cancelled in between. */
  readonly ahead?: (house: House) => Iterable<unknown>;
  /** The answer where there is nothing to say, and after a fault. */
  readonly empty: R;
  readonly answer: (asked: A) => R | ResponseError<void>;
}

/** A request about one text; one that is not at hand is answered empty. */
export function ofText<P extends { textDocument: TextDocumentIdentifier }, R, E>(
  type: RequestType<P, R, E>,
  { empty, answer, inText, ...row }: Row<OfText<P>, R>,
): RequestRow {
  return rowOf(type, row, empty, (params, context) => {
    const document = context.workspace.document(params.textDocument.uri);
    const inside = document?.margins ? inward(params, document.margins, inText) : params;
    if (!document || !inside) return empty;
    const answered = answer({ ...context, house: context.workspace.house, document, params: inside });
    return answered instanceof ResponseError ? answered : told(answered, document, context);
  });
}

/** A request about all texts, or about something that was answered before; an item is in its text. */
export function ofHouse<P, R, E>(type: RequestType<P, R, E>, { empty, answer, ...row }: Row<OfHouse<P>, R>): RequestRow {
  return rowOf(type, row, empty, (params, context) => {
    const answered = answer({ ...context, house: context.workspace.house, params });
    const { item } = (params ?? {}) as { readonly item?: { readonly uri: string } };
    const document = item && context.workspace.document(item.uri);
    return answered instanceof ResponseError ? answered : told(answered, document, context);
  });
}

/** An answer with the places of the files, in the forms that the client takes. */
export function told<R>(answered: R, document: SpecDocument | undefined, { workspace, client }: Context): R {
  return asClientTakes(outward(answered, document?.margins, workspace), client());
}

function rowOf<P, R, E>(
  type: RequestType<P, R, E>,
  { does, announces, atOnce, ahead }: Pick<Row<never, R>, "does" | "announces" | "atOnce" | "ahead">,
  empty: R,
  answer: (params: P, context: Context) => R | ResponseError<void>,
): RequestRow {
  const { method } = type;
  return {
    method,
    does,
    announces: typeof announces === "function" ? announces : () => announces ?? {},
    register: (connection, context) =>
      connection.onRequest(method, (params: P, token: CancellationToken): unknown => {
        const guarded = () => {
          if (token.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, method);
          try {
            return answer(params, context);
          } catch (cause) {
            context.log(`${method} failed${textIn(params)} and was answered empty`, cause);
            return empty;
          }
        };
        // Half a house would be full of unknown figures, and a rename in it would be half a rename.
        const reading = atOnce ? undefined : context.settled(token);
        return reading || ahead ? prepared(context, token, reading, ahead).then(guarded) : guarded();
      }),
  };
}

async function prepared(
  { workspace: { house }, turns }: Context,
  token: CancellationToken,
  reading: Promise<void> | undefined,
  ahead: Row<never, never>["ahead"],
): Promise<void> {
  await reading;
  const turn = turns();
  for (const _piece of ahead?.(house) ?? []) {
    await turn();
    if (token.isCancellationRequested) return;
  }
}

function textIn(params: unknown): string {
  const uri = (params as { textDocument?: TextDocumentIdentifier } | undefined)?.textDocument?.uri;
  return uri ? ` on ${uri}` : "";
}
