/** Servers and folders for one test: both are gone when it ends, however it ends. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { onTestFinished } from "vitest";
import { type Client, type Start, startServer, type Transport } from "./client.ts";

/** A server to which nothing was said. */
export function startSilent(transport: Transport = "stdio"): Client {
  const client = startServer(transport);
  onTestFinished(() => client.end());
  return client;
}

/** A server that has been initialized. */
export async function start(how: Start = {}, transport: Transport = "stdio"): Promise<Client> {
  const client = startSilent(transport);
  await client.initialize(how);
  return client;
}

/** A folder on the disk with these texts by path. */
export function layOut(files: Readonly<Record<string, string>>) {
  const root = mkdtempSync(join(tmpdir(), "mutchkin-test-"));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  const write = (path: string, text: string | Uint8Array) => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  };
  for (const [path, text] of Object.entries(files)) write(path, text);
  const uriOf = (path: string) => pathToFileURL(join(root, path)).href;
  return {
    write,
    remove: (path: string) => rmSync(join(root, path)),
    uriOf,
    /** The folder, or one in it, as the protocol names it. */
    folder: (path = "") => ({ uri: uriOf(path).replace(/\/$/, ""), name: path || "house" }),
  };
}

/** Nothing is on the disk here. */
export const nowhere = (path: string) => `file:///halyard/${path}`;
