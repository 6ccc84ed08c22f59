/**
 * The protocol's life cycle, which the library does not guard: nothing is answered before
 * `initialize`, after `shutdown`, or to a second `initialize`. A message that comes at the wrong time
 * is renamed on its way in, so that an ordinary handler can refuse it.
 */
import { type Connection, ErrorCodes, type MessageStrategy, ResponseError } from "vscode-languageserver";

type Phase = "before" | "running" | "after";

const refusals = {
  "mutchkin/refusedBefore": [ErrorCodes.ServerNotInitialized, "The server has not been initialized yet. Send `initialize` first."],
  "mutchkin/refusedAgain": [ErrorCodes.InvalidRequest, "The server is initialized already. `initialize` may be sent once."],
  "mutchkin/refusedAfter": [ErrorCodes.InvalidRequest, "The server has been shut down. Only `exit` is taken now."],
} as const;

export interface LifeCycle {
  readonly messageStrategy: MessageStrategy;
  /** Registers the refusals; call once, when the connection stands. */
  guard(connection: Connection): void;
}

export function lifeCycle(): LifeCycle {
  let phase: Phase = "before";
  return {
    messageStrategy: {
      handleMessage(message, next) {
        if (!("method" in message)) return next(message);
        const { method } = message as { method: string };
        const isRequest = "id" in message;
        const refused = refusalOf(phase, method);
        if (refused) {
          if (isRequest) next({ ...message, method: refused } as typeof message);
          return;
        }
        if (method === "initialize") phase = "running";
        if (method === "shutdown") phase = "after";
        next(message);
      },
    },
    guard(connection) {
      for (const [method, [code, text]] of Object.entries(refusals)) connection.onRequest(method, () => new ResponseError(code, text));
    },
  };
}

function refusalOf(phase: Phase, method: string): keyof typeof refusals | undefined {
  if (method === "exit") return undefined;
  if (phase === "before") return method === "initialize" ? undefined : "mutchkin/refusedBefore";
  if (phase === "after") return "mutchkin/refusedAfter";
  return method === "initialize" ? "mutchkin/refusedAgain" : undefined;
}
