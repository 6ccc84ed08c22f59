/** Requests that are answered later than a feature: they read files or go on in turns, say how far they are, and stop when they are told to. */
import { type CancellationToken, type Connection, type ProgressToken, WorkDoneProgress } from "vscode-languageserver";
import type { Context, RequestRow } from "./request.ts";

export interface Asked extends Context {
  readonly stop: AbortSignal;
  readonly say: (message: string) => void;
}

interface Row<P> {
  readonly does: string;
  /** The answer after a fault, which is logged. */
  readonly empty: unknown;
  readonly answer: (params: P, asked: Asked) => Promise<unknown>;
}

/** A request that waits for the house to be read, and may take its time. A fault is logged. */
export function longRequest<P extends object>(method: string, { does, empty, answer }: Row<P>): RequestRow {
  return {
    method,
    does,
    announces: () => ({}),
    register: (connection, context) =>
      connection.onRequest(method, async (params: P, token: CancellationToken): Promise<unknown> => {
        const stopping = new AbortController();
        const { say, done } = teller(connection, params);
        const listening = token.onCancellationRequested(() => stopping.abort());
        try {
          await context.settled(token);
          return await answer(params, { ...context, stop: stopping.signal, say });
        } catch (cause) {
          context.log(`${method} failed and was answered empty`, cause);
          return empty;
        } finally {
          listening.dispose();
          done();
        }
      }),
  };
}

/** Says how far it is to a client that gave a token for it, and that it is done. */
function teller(connection: Connection, params: object): { say(message: string): void; done(): void } {
  const { workDoneToken: token } = params as { readonly workDoneToken?: ProgressToken };
  let begun = false;
  return {
    say(message) {
      if (token === undefined) return;
      void connection.sendProgress(WorkDoneProgress.type, token, begun ? { kind: "report", message } : { kind: "begin", title: message });
      begun = true;
    },
    done() {
      if (token !== undefined && begun) void connection.sendProgress(WorkDoneProgress.type, token, { kind: "end" });
    },
  };
}
