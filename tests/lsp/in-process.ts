/** A whole server in this process, on files that are in memory and arrive when they like. */
import { PassThrough } from "node:stream";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import type { Environment } from "../../server/lsp/environment.ts";
import { serve } from "../../server/lsp/server.ts";

/** The files of a disk by their URIs. */
export type Disk = Map<string, string>;

/** `pauses` says after how many turns each next reading of the disk arrives; it is what it was when it was begun. */
export function environmentOf(disk: Disk, pauses: () => number): Environment {
  const later = async <T>(value: T): Promise<T> => {
    for (let turns = pauses(); turns > 0; turns--) await new Promise(setImmediate);
    return value;
  };
  return {
    list: (folder) => later([...disk.keys()].filter((uri) => uri.startsWith(`${folder}/`))),
    read: (uri) => later(disk.get(uri)),
    now: () => performance.now(),
    nextTurn: () => new Promise(setImmediate),
  };
}

export async function startHere(environment: Environment, folders: readonly string[]) {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const server = createConnection(ProposedFeatures.all, new StreamMessageReader(up), new StreamMessageWriter(down));
  serve(server, environment, "0");
  server.listen();
  const client = createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  client.onRequest("workspace/configuration", ({ items }: { items: unknown[] }) => items.map(() => null));
  client.onRequest("workspace/diagnostic/refresh", () => null);
  client.onRequest("client/registerCapability", () => null);
  client.listen();
  await client.sendRequest("initialize", {
    processId: null,
    rootUri: null,
    workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
    capabilities: { workspace: { workspaceFolders: true, configuration: true }, textDocument: { diagnostic: {} } },
  });
  await client.sendNotification("initialized", {});
  const stop = () => {
    client.dispose();
    server.dispose();
  };
  return { client, stop };
}
