/**
 * Whatever was opened, typed, closed, written, moved or deleted, in whatever order its readings arrived:
 * the server knows what one knows that is started on the same files and open texts.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { MessageConnection } from "vscode-jsonrpc";
import { FileChangeType, type FileEvent, type WorkspaceDiagnosticReport } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { type Disk, environmentOf, startHere } from "./in-process.ts";

const roots = ["file:///quay", "file:///pier"];
const files = [
  ...["house.drink", "card.drink", "sub/house.drink", "sub/card.drink", "book.md", "sub/rope.md"].map((path) => `${roots[0]}/${path}`),
  ...["card.drink", "sub/card.drink"].map((path) => `${roots[1]}/${path}`),
];
const texts = [
  "",
  "house The Halyard Room\n  country: GB\n  units: ml\n",
  "house The Slip\n  units: oz\n\nstock gin\n  kind: spirit\n  abv: 50 %\n",
  "stock brine\n  kind: salt\n  salt: 20 g/100 ml\n\nprep pier syrup\n  1 part sugar\n  1 part water\n  parts by: weight\n",
  "stock brine\n  kind: spirit\n  abv: 40 %\n",
  "drink Rope\n  method: shake 12 s\n  50 ml gin\n  20 ml pier syrup\n  5 ml brine\n",
  "drink Rope, Short\n  from: Rope\n  without brine\n\nmenu Card\n  - Rope 12.50\n  - Knot 11.00\n",
  "drink Knot\n  50 ml rum\n  2 dashes nosuch\n\ndrink Rope\n  from: Knot\n",
  "# Slack Water\n\n```drink\ndrink Knot\n  50 ml gin\n  5 ml brine\n```\n",
  "No spec in it\n",
  "book Slack Water\n  avoid: knot\n  recipes have: glass, headnote\n  tools: muddler\n",
  '# Rope\n\nIt is :strength[Rope] strong, after a :see[Knot] with :pour[gin]{in="Knot"} and 30 ml of gin.\n\n::spec[Rope]\n',
  "> - ```drink\n>   house The Ferry\n>     units: cl\n>\n>   stock brine\n>     kind: acid\n>     acid: 5 g/100 ml as citric\n>\n>   drink Splice\n>     50 ml gin\n>     5 ml brine\n",
  "50 ml homeless\ndrnk Slip\n  60 ml gin\n",
];

type Op = (world: World) => Promise<unknown> | unknown;

/** What an editor does and what happens on the disk, with what the editor tells the server of it. */
class World {
  readonly disk: Disk = new Map();
  readonly open = new Map<string, TextDocument>();
  folders: string[] = [roots[0]!];
  client!: MessageConnection;
  private untold: FileEvent[] = [];
  private version = 1;

  write(uri: string, text: string) {
    this.untold.push({ uri, type: this.disk.has(uri) ? FileChangeType.Changed : FileChangeType.Created });
    this.disk.set(uri, text);
  }
  remove(uri: string) {
    if (this.disk.delete(uri)) this.untold.push({ uri, type: FileChangeType.Deleted });
  }
  /** As a folder is moved: only the folder is told of. */
  moveFolder(from: string, to: string) {
    for (const [uri, text] of [...this.disk]) {
      if (!uri.startsWith(`${from}/`)) continue;
      this.disk.delete(uri);
      this.disk.set(to + uri.slice(from.length), text);
    }
    this.untold.push({ uri: from, type: FileChangeType.Deleted }, { uri: to, type: FileChangeType.Created });
  }
  async tell() {
    const changes = this.untold.splice(0);
    if (changes.length > 0) await this.client.sendNotification("workspace/didChangeWatchedFiles", { changes });
  }
  async show(uri: string, client = this.client) {
    if (client === this.client && this.open.has(uri)) return;
    const languageId = uri.endsWith(".md") ? "markdown" : "mutchkin";
    const document = this.open.get(uri) ?? TextDocument.create(uri, languageId, this.version++, this.disk.get(uri) ?? "");
    this.open.set(uri, document);
    const textDocument = { uri, languageId, version: document.version, text: document.getText() };
    await client.sendNotification("textDocument/didOpen", { textDocument });
  }
  /** The `nth` open text. */
  private opened(nth: number) {
    return [...this.open.values()][nth % Math.max(1, this.open.size)];
  }
  async type(nth: number, at: number, remove: number, text: string) {
    const document = this.opened(nth);
    if (!document) return;
    const { uri } = document;
    const start = at % (document.getText().length + 1);
    const range = { start: document.positionAt(start), end: document.positionAt(start + remove) };
    const version = this.version++;
    TextDocument.update(document, [{ range, text }], version);
    await this.client.sendNotification("textDocument/didChange", { textDocument: { uri, version }, contentChanges: [{ range, text }] });
  }
  async close(nth: number) {
    const uri = this.opened(nth)?.uri;
    if (uri && this.open.delete(uri)) await this.client.sendNotification("textDocument/didClose", { textDocument: { uri } });
  }
  async toggleFolder(uri: string) {
    const [folder] = [{ uri, name: uri }];
    const isOpen = this.folders.includes(uri);
    this.folders = isOpen ? this.folders.filter((one) => one !== uri) : [...this.folders, uri];
    const event = { added: isOpen ? [] : [folder], removed: isOpen ? [folder] : [] };
    await this.client.sendNotification("workspace/didChangeWorkspaceFolders", { event });
  }
  /** Makes the server compute something in between; the answer is of no interest. */
  ask(uri: string, line: number) {
    void this.client.sendRequest("textDocument/hover", { textDocument: { uri }, position: { line, character: 4 } });
    void this.client.sendRequest("textDocument/diagnostic", { textDocument: { uri } });
  }
}

const file = fc.constantFrom(...files);
const text = fc.constantFrom(...texts);
const op: fc.Arbitrary<Op> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.tuple(file, text).map(
      ([uri, text]): Op =>
        (world) =>
          world.write(uri, text),
    ),
  },
  {
    weight: 2,
    arbitrary: file.map(
      (uri): Op =>
        (world) =>
          world.remove(uri),
    ),
  },
  { weight: 3, arbitrary: fc.constant<Op>((world) => world.tell()) },
  {
    weight: 3,
    arbitrary: file.map(
      (uri): Op =>
        (world) =>
          world.show(uri),
    ),
  },
  {
    weight: 4,
    arbitrary: fc
      .tuple(
        fc.nat(9),
        fc.nat(300),
        fc.nat(20),
        fc.constantFrom("", "x", "\n", "\n  20 ml gin", "```", "drink Knot\n", "house H\n", "# Knot\n", "::spec[Rope]\n"),
      )
      .map(
        ([uri, at, remove, text]): Op =>
          (world) =>
            world.type(uri, at, remove, text),
      ),
  },
  {
    weight: 2,
    arbitrary: fc.nat(9).map(
      (nth): Op =>
        (world) =>
          world.close(nth),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...roots).map(
      (uri): Op =>
        (world) =>
          world.toggleFolder(uri),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...roots).map(
      (root): Op =>
        (world) =>
          world.moveFolder(`${root}/sub`, `${root === roots[0] ? roots[1] : roots[0]}/sub`),
    ),
  },
  {
    // Another branch: every file is another one or gone.
    weight: 1,
    arbitrary: fc.array(fc.option(text), { minLength: files.length, maxLength: files.length }).map(
      (all): Op =>
        async (world) => {
          for (const [index, uri] of files.entries()) all[index] == null ? world.remove(uri) : world.write(uri, all[index]);
          await world.tell();
        },
    ),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(file, fc.nat(12)).map(
      ([uri, line]): Op =>
        (world) =>
          world.ask(uri, line),
    ),
  },
);

/** All that a person could see: findings, what is declared, and what every line comes to. */
async function known(client: MessageConnection, open: Iterable<TextDocument>) {
  const { items } = await client.sendRequest<WorkspaceDiagnosticReport>("workspace/diagnostic", { previousResultIds: [] });
  const findings = items.flatMap((item) => ("items" in item ? [[item.uri, JSON.stringify(item.items)]] : [])).sort();
  const symbols = await client.sendRequest<{ name: string; location: { uri: string } }[]>("workspace/symbol", { query: "" });
  const names = symbols.map(({ name, location }) => `${location.uri} ${name}`).sort();
  const hovers: unknown[] = [];
  for (const document of open) {
    for (let line = 0; line < document.lineCount; line++) {
      const asked = { textDocument: { uri: document.uri }, position: { line, character: 8 } };
      hovers.push(await client.sendRequest("textDocument/hover", asked));
    }
  }
  return { findings, names, hovers };
}

test("after any events the server knows what a fresh one knows", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(op, { minLength: 1, maxLength: 40, size: "max" }), fc.infiniteStream(fc.nat(6)), async (ops, pauses) => {
      const world = new World();
      const { client, stop } = await startHere(
        environmentOf(world.disk, () => pauses.next().value),
        world.folders,
      );
      world.client = client;
      for (const one of ops) await one(world);
      await world.tell();
      // Whoever starts anew opens what is open.
      const open = [...world.open.values()].sort((one, other) => (one.uri < other.uri ? -1 : 1));
      const fresh = await startHere(
        environmentOf(world.disk, () => 0),
        world.folders,
      );
      for (const { uri } of open) await world.show(uri, fresh.client);
      expect(await known(client, open)).toEqual(await known(fresh.client, open));
      stop();
      fresh.stop();
    }),
    { numRuns: 150 },
  );
});

test("a reading that was begun earlier and arrives later does not count", async () => {
  const world = new World();
  const pauses = [0, 400, 0];
  const { client, stop } = await startHere(
    environmentOf(world.disk, () => pauses.shift() ?? 0),
    world.folders,
  );
  world.client = client;
  await known(client, []);
  world.write(files[1]!, "drink Early\n");
  await world.tell();
  await new Promise((resolve) => setTimeout(resolve, 0));
  world.write(files[1]!, "drink Late\n");
  await world.tell();
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect((await known(client, [])).names).toEqual([`${files[1]} Late`]);
  stop();
});
