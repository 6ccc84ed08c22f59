/**
 * What is measured over the protocol, the same way for every server: the client sends, asks for the
 * diagnostics (a pull), and takes the time until the answer is there. Times are milliseconds.
 */
import { readFileSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";
import type { DocumentDiagnosticReport, WorkspaceDiagnosticReport } from "vscode-languageserver/node";
import { type Client, startServer } from "../protocol/client.ts";
import type { HouseFile } from "./house.ts";
import { findPours } from "./print.ts";
import { type Contender, type Document, documentsFor, languageOf, layOnDisk, startIn, tellSettings } from "./servers.ts";

export interface ColdStart {
  /** Process started → `initialize` answered. */
  readonly answered: number;
  /** Process started → the first document's diagnostics. */
  readonly diagnosed: number;
}

export async function coldStart(contender: Contender, files: readonly HouseFile[], folder: string): Promise<ColdStart> {
  const [document] = documentsFor(contender, files, folder);
  const start = performance.now();
  const client = startServer("stdio", contender.script);
  try {
    await client.initialize({ pull: true });
    const answered = performance.now() - start;
    await tellSettings(client, contender, files);
    await open(client, contender, document!);
    countOf(await pull(client, document!.uri));
    return { answered, diagnosed: performance.now() - start };
  } finally {
    await client.end();
  }
}

export interface Opened {
  /** First `didOpen` sent → last document's diagnostics. */
  readonly ms: number;
  readonly findings: number;
  readonly rssMb: number;
}

/** Every file handed over with `didOpen`, then the diagnostics of each. The folder on the disk is empty. */
export async function openAll(contender: Contender, files: readonly HouseFile[]): Promise<Opened> {
  const folder = layOnDisk();
  const documents = documentsFor(contender, files, folder);
  const client = await startIn(contender, files, folder);
  try {
    const start = performance.now();
    const findings = await openAndPull(client, contender, documents);
    return { ms: performance.now() - start, findings, rssMb: rssOf(client) };
  } finally {
    await client.end();
  }
}

/** A folder with the house on the disk and nothing open: process started → the whole house's diagnostics. */
export async function readFolder(contender: Contender, folder: string): Promise<Opened> {
  const start = performance.now();
  const client = await startIn(contender, [], folder);
  try {
    const { items }: WorkspaceDiagnosticReport = await client.pullWorkspace();
    const findings = items.reduce((sum, item) => sum + countOf(item), 0);
    return { ms: performance.now() - start, findings, rssMb: rssOf(client) };
  } finally {
    await client.end();
  }
}

/** A server with the whole house known to it and one document being edited. */
export class Session {
  readonly times: number[] = [];
  private version = 1;
  private constructor(
    readonly contender: Contender,
    readonly client: Client,
    private document: Document,
  ) {}

  /** `folder` holds the house's specs; the document edited is the first one with a pour, after the shared file. */
  static async start(contender: Contender, files: readonly HouseFile[], folder: string): Promise<Session> {
    const documents = documentsFor(contender, files, folder);
    const edited = documents.slice(Math.min(1, documents.length - 1)).find(({ text }) => findPours(text, contender.format).length > 0);
    if (!edited) throw new Error("The generated house has no drink to edit");
    const client = await startIn(contender, files, folder);
    await openAndPull(client, contender, contender.readsFolders ? [edited] : documents);
    return new Session(contender, client, edited);
  }

  get rssMb(): number {
    return rssOf(this.client);
  }

  /**
   * So many edits: in a pour somewhere in the document, a letter too many in the ingredient's name and
   * away again, then a digit too many in the amount and away again. A check after each pair makes sure
   * that the diagnostics followed.
   */
  async edit(count: number, random: () => number) {
    for (let done = 0; done < count; done += 4) {
      const pours = findPours(this.document.text, this.contender.format);
      const pour = pours[Math.floor(random() * pours.length)]!;
      await this.typeAndDelete(pour.name, "q", true);
      // A bare search has no opinion on amounts.
      await this.typeAndDelete(pour.number, "9", this.contender.name !== "bare");
    }
  }

  end = () => this.client.end();

  private async typeAndDelete(offset: number, typed: string, isFound: boolean) {
    const before = this.document.text;
    const withIt = await this.replace(offset, "", typed);
    const without = await this.replace(offset, typed, "");
    if (this.document.text !== before) throw new Error("The edits did not take each other back");
    if (isFound && withIt === without)
      throw new Error(`${this.contender.name}: the edit at ${offset} changed no diagnostics of ${this.document.uri}`);
  }

  /** Times one edit; returns the diagnostics as text, to compare. */
  private async replace(offset: number, old: string, text: string): Promise<string> {
    const { uri, text: before } = this.document;
    this.document = { uri, text: before.slice(0, offset) + text + before.slice(offset + old.length) };
    const line = before.slice(0, offset).split("\n");
    const start = { line: line.length - 1, character: line.at(-1)!.length };
    const end = { line: start.line, character: start.character + old.length };
    await sleep(10); // a server may tidy up between two keys, as it can at a desk

    const began = performance.now();
    const sent = this.client.change(uri, ++this.version, [{ range: { start, end }, text }]);
    const report = await pull(this.client, uri);
    this.times.push(performance.now() - began);
    await sent;
    return JSON.stringify("items" in report ? report.items : []);
  }
}

async function openAndPull(client: Client, contender: Contender, documents: readonly Document[]): Promise<number> {
  for (const document of documents) void open(client, contender, document);
  const reports = await Promise.all(documents.map(({ uri }) => pull(client, uri)));
  return reports.reduce((sum, report) => sum + countOf(report), 0);
}

const open = (client: Client, contender: Contender, { uri, text }: Document) => client.open(uri, text, 1, languageOf(contender));

/** Straight over the connection: the test client's time limits would be measured too. */
const pull = ({ connection }: Client, uri: string) =>
  connection.sendRequest<DocumentDiagnosticReport>("textDocument/diagnostic", { textDocument: { uri } });

const countOf = (report: DocumentDiagnosticReport | WorkspaceDiagnosticReport["items"][number]): number =>
  report.kind === "full" ? report.items.length : 0;

/** Resident memory of the server's process, MB; NaN where the system does not tell (it is Linux that does). */
function rssOf({ pid }: Client): number {
  try {
    return Number(/VmRSS:\s*(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))![1]) / 1024;
  } catch {
    return Number.NaN;
  }
}
