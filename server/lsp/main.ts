/** The server as a program: `--stdio`, or over the channel of the editor that started it. */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { version } from "../../package.json";
import { diskEnvironment } from "./disk.ts";
import { filesOfEditor } from "./editor.ts";
import { lifeCycle } from "./lifecycle.ts";
import { serve } from "./server.ts";

const cycle = lifeCycle();
const connection = createConnection(ProposedFeatures.all, { messageStrategy: cycle.messageStrategy });
cycle.guard(connection);
serve(connection, diskEnvironment(filesOfEditor(connection)), version);
connection.listen();
// The library watches a pipe's end and the client's process, but not the end of an IPC channel.
process.once("disconnect", () => process.exit(1));
