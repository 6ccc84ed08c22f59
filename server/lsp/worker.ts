/** The server as a web worker, for an editor that runs in a browser. All files come from the editor. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection, ProposedFeatures } from "vscode-languageserver/browser";
import { version } from "../../package.json";
import { filesOfEditor } from "./editor.ts";
import { lifeCycle } from "./lifecycle.ts";
import { serve } from "./server.ts";

/** The worker itself. The types that all is checked with are Node's, which do not know it. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0] & { postMessage(message: string): void; close(): void };

/** As a browser has it. */
interface Port {
  onmessage: (() => void) | null;
  postMessage(message: null): void;
}

const cycle = lifeCycle();
const reader = new BrowserMessageReader(self);
const writer = new BrowserMessageWriter(self);
const connection = createConnection(ProposedFeatures.all, reader, writer, { messageStrategy: cycle.messageStrategy });
cycle.guard(connection);
connection.onExit(() => self.close());
serve(
  connection,
  { ...filesOfEditor(connection), now: () => performance.now(), nextTurn: nextTurn(), rulesPage: "mutchkin:/rules.md" },
  version,
);
// The client waits for this, since a worker that does not come up would say nothing for ever.
self.postMessage("up");
connection.listen();

/** A timer would wait for four milliseconds each time, which a message to oneself does not. */
function nextTurn(): () => Promise<void> {
  const { port1, port2 } = new MessageChannel() as unknown as Record<"port1" | "port2", Port>;
  const waiting: (() => void)[] = [];
  port1.onmessage = () => waiting.shift()?.();
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      port2.postMessage(null);
    });
}
