/** The servers that are compared, and what each must be told before it can check a document. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { type Client, ourServer, startServer } from "../protocol/client.ts";
import type { HouseFile } from "./house.ts";
import { printJson, printSpecs, schemaFor } from "./print.ts";
import { shared } from "./stock.ts";

export interface Contender {
  readonly name: "Mutchkin" | "bare" | "JSON" | "JSON as from npm";
  /** What node runs. */
  readonly script: string;
  readonly format: "specs" | "json";
  /** Reads a folder's files from the disk by itself; the others are handed every file by the client. */
  readonly readsFolders: boolean;
}

export const ours: Contender = { name: "Mutchkin", script: ourServer, format: "specs", readsFolders: true };
export const bare: Contender = {
  name: "bare",
  script: resolve(".bench/bare-server.js"),
  format: "specs",
  readsFolders: false,
};
export const json: Contender = { name: "JSON", script: resolve(".bench/json-server.js"), format: "json", readsFolders: false };
export const jsonFromNpm: Contender = {
  ...json,
  name: "JSON as from npm",
  script: resolve(".bench/node_modules/vscode-langservers-extracted/bin/vscode-json-language-server"),
};
export const contenders = [ours, bare, json] as const;

export interface Document {
  readonly uri: string;
  readonly text: string;
}

export const languageOf = ({ format }: Contender) => (format === "specs" ? "mutchkin" : "json");

/** The house as this server's documents, with URIs in the folder. */
export function documentsFor({ format }: Contender, files: readonly HouseFile[], folder: string): Document[] {
  const [print, ending] = format === "specs" ? [printSpecs, "drink"] : [printJson, "json"];
  return files.map(({ path, entries }) => ({ uri: pathToFileURL(join(folder, `${path}.${ending}`)).href, text: print(entries) }));
}

/** A process that has answered `initialize` with this folder open, and has been told its settings. */
export async function startIn(contender: Contender, files: readonly HouseFile[], folder: string): Promise<Client> {
  const client = startServer("stdio", contender.script);
  await client.initialize({ pull: true, folders: [{ uri: pathToFileURL(folder).href, name: "house" }] });
  await tellSettings(client, contender, files);
  return client;
}

export async function tellSettings(client: Client, { format }: Contender, files: readonly HouseFile[]) {
  if (format !== "json") return;
  const schema = schemaFor(
    shared,
    files.flatMap((file) => file.entries),
  );
  const schemas = [{ fileMatch: ["*.json"], url: "bench:///house.schema.json", schema }];
  await client.notify("workspace/didChangeConfiguration", { settings: { json: { validate: { enable: true }, schemas } } });
}

const laid: string[] = [];
process.once("exit", () => {
  for (const folder of laid) rmSync(folder, { recursive: true, force: true });
});

/** A temporary folder holding the specs; without files, an empty one. Removed when the program ends. */
export function layOnDisk(files: readonly HouseFile[] = []): string {
  const folder = mkdtempSync(join(tmpdir(), "mutchkin-bench-"));
  laid.push(folder);
  writeHouse(files, folder);
  return folder;
}

export function writeHouse(files: readonly HouseFile[], folder: string) {
  for (const { path, entries } of files) {
    const file = join(folder, `${path}.drink`);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, printSpecs(entries));
  }
}
