/** Clients that can less than the editor that our own client is for, or say it in another way. The protocol (3.17) promises none of it. */
import { describe, expect, test } from "vitest";
import {
  type ClientCapabilities,
  type CompletionItem,
  type CompletionList,
  ErrorCodes,
  type InitializeParams,
  type MarkupKind,
  ResponseError,
  type WorkspaceEdit,
} from "vscode-languageserver/node";
import { has, lacks } from "./findings.ts";
import { layOut, nowhere, start, startSilent } from "./start.ts";

const shelf = "stock harbour rum\n  kind: spirit\n  abv: 40 %\n";
const slip = "drink Slip\n  60 ml harbour rum, frozen\n";
const lamp = "drink Lantern\n  50 ml lamp oil\n";
const quiet = { severity: { "unknown-ingredient": "off" } };
const configuration: ClientCapabilities = { workspace: { configuration: true } };

describe("edits of the workspace", () => {
  const [stock, card] = [nowhere("stock.drink"), nowhere("card.drink")];
  const renamed = async (workspaceEdit?: NonNullable<ClientCapabilities["workspace"]>["workspaceEdit"]) => {
    const client = await start({ params: { capabilities: { workspace: { ...(workspaceEdit && { workspaceEdit }) } } } });
    await client.open(stock, shelf);
    await client.open(card, slip);
    const at = { textDocument: { uri: card }, position: { line: 1, character: 12 } };
    return client.request<WorkspaceEdit>("textDocument/rename", { ...at, newName: "ferry rum" });
  };
  const changes = {
    [stock]: [{ range: { start: { line: 0, character: 6 }, end: { line: 0, character: 17 } }, newText: "ferry rum" }],
    [card]: [{ range: { start: { line: 1, character: 8 }, end: { line: 1, character: 19 } }, newText: "ferry rum" }],
  };

  test("a client that says nothing of them gets `changes` alone", async () => expect(await renamed()).toEqual({ changes }));
  test("so does one that makes files, but takes no versions", async () =>
    expect(await renamed({ resourceOperations: ["create", "rename", "delete"] })).toEqual({ changes }));
  test("one that takes versions gets them", async () => {
    const { documentChanges, changes: plain } = await renamed({ documentChanges: true });
    expect(plain).toBeUndefined();
    expect(documentChanges).toContainEqual({ textDocument: { uri: card, version: 1 }, edits: changes[card] });
  });

  test("several edits of one file stand together, in Markdown with its margins", async () => {
    const book = nowhere("book.md");
    const client = await start({ params: { capabilities: {} } });
    await client.open(book, "> ```drink\n> drink Slip\n>   60 ml harbour rum\n>   5 ml harbour rum, floated\n> ```\n", 1, "markdown");
    await client.open(stock, shelf);
    const at = { textDocument: { uri: stock }, position: { line: 0, character: 8 } };
    const edit = await client.request<WorkspaceEdit>("textDocument/rename", { ...at, newName: "ferry rum" });
    expect(edit.changes?.[book]?.map(({ range }) => [range.start.line, range.start.character])).toEqual([
      [2, 10],
      [3, 9],
    ]);
  });

  test.each<[string, NonNullable<ClientCapabilities["workspace"]>["workspaceEdit"]]>([
    ["changes", {}],
    ["documentChanges", { documentChanges: true }],
  ])("what goes into new files is edits of files that are not there, where none can be made: %s", async (form, workspaceEdit) => {
    const client = await start({ params: { capabilities: { workspace: { workspaceEdit } } } });
    const asked = { folder: nowhere("harbour"), name: "The Lamp Room", country: "GB" };
    const { edit } = await client.request<{ edit: WorkspaceEdit }>("mutchkin/newHouse", asked);
    expect(Object.keys(edit)).toEqual([form]);
    const files =
      edit.changes ?? Object.fromEntries(edit.documentChanges!.map((one) => ("edits" in one ? [one.textDocument.uri, one.edits] : [])));
    expect(Object.keys(files).sort()).toEqual(["drinks", "house", "menu"].map((name) => nowhere(`harbour/${name}.drink`)));
    expect(JSON.stringify(Object.values(files))).toContain("house The Lamp Room");
  });
});

describe("a client with one language for all files of a server", () => {
  const prose = "# Slack Water\n\ndrink deep\n\n```drink\ndrink Lantern\n  50 ml lamp oil\n```\n";
  test.each(["mutchkin", "markdown"])("%s", async (languageId) => {
    const [book, card] = [nowhere("book.md"), nowhere("card.drink")];
    const client = await start({ params: { capabilities: {} } });
    await client.open(book, prose, 1, languageId);
    await client.open(card, lamp, 1, languageId);
    const linesOf = async (uri: string) => (await client.diagnosticsOf(uri, 1)).diagnostics.map(({ range }) => range.start.line);
    expect(new Set(await linesOf(card))).toEqual(new Set([0, 1]));
    expect(new Set(await linesOf(book))).toEqual(new Set([5, 6]));
  });
  test("a text without a file is of the language that is said", async () => {
    const client = await start({ params: { capabilities: {} } });
    await client.open("untitled:Untitled-1", prose, 1, "markdown");
    const { diagnostics } = await client.diagnosticsOf("untitled:Untitled-1", has("unknown-ingredient"));
    expect(Math.min(...diagnostics.map(({ range }) => range.start.line))).toBe(5);
  });
});

test.each<[string, MarkupKind[] | undefined]>([
  ["markdown", undefined],
  ["markdown", ["plaintext", "markdown"]],
  ["plaintext", ["plaintext"]],
])("a hover is %s where the client takes %j", async (kind, contentFormat) => {
  const card = nowhere("card.drink");
  const client = await start({ params: { capabilities: { textDocument: { hover: { ...(contentFormat && { contentFormat }) } } } } });
  await client.open(card, slip.replace("harbour rum", "aged rum"));
  const at = { textDocument: { uri: card }, position: { line: 0, character: 8 } };
  const { contents } = await client.request<{ contents: { kind: string; value: string } }>("textDocument/hover", at);
  expect(contents.kind).toBe(kind);
  expect(contents.value).toContain("Slip");
  expect(/\*\*|\| :--/.test(contents.value)).toBe(kind === "markdown");
});

describe("the folder", () => {
  const named = async (names: (uri: string, path: string) => Partial<InitializeParams>) => {
    const house = layOut({ "stock.drink": shelf, "card.drink": slip });
    const uri = house.folder().uri;
    const client = startSilent();
    const params = { processId: null, rootUri: null, capabilities: {}, ...names(uri, decodeURIComponent(new URL(uri).pathname)) };
    await client.request("initialize", params);
    await client.notify("initialized", {});
    await client.open(house.uriOf("card.drink"), slip);
    return client.diagnosticsOf(house.uriOf("card.drink"), 1);
  };
  test.each<[string, (uri: string, path: string) => Partial<InitializeParams>]>([
    ["`rootUri`", (rootUri) => ({ rootUri })],
    ["`rootUri`, and `null` folders", (rootUri) => ({ rootUri, workspaceFolders: null })],
    ["`rootUri`, and no folder in the list", (rootUri) => ({ rootUri, workspaceFolders: [] })],
    ["`rootPath`", (_, rootPath) => ({ rootPath })],
  ])("named by %s is read", async (_, names) => expect(lacks("unknown-ingredient")(await named(names))).toBe(true));

  test("where there is none, what else stands on the disk is not known", async () =>
    expect(has("unknown-ingredient")(await named(() => ({ workspaceFolders: null })))).toBe(true));
});

test("files are opened without a folder, and belong together", async () => {
  const house = layOut({ "stock.drink": shelf, "card.drink": slip });
  const client = await start({ params: { workspaceFolders: null, capabilities: {} } });
  const card = house.uriOf("card.drink");
  await client.open(card, slip);
  await client.diagnosticsOf(card, has("unknown-ingredient"));
  await client.open(house.uriOf("stock.drink"), shelf);
  await client.diagnosticsOf(card, lacks("unknown-ingredient"));
  expect(client.registrations).toEqual([]);
});

describe("settings", () => {
  const card = nowhere("card.drink");
  const sent: [string, unknown][] = [
    ["ours alone", quiet],
    ["under our name", { mutchkin: quiet }],
    ["with dots", { "mutchkin.severity": quiet.severity, "other.severity": {} }],
  ];

  test.each(sent)("as `initializationOptions`: %s", async (_, initializationOptions) => {
    const client = await start({ params: { capabilities: {}, initializationOptions } });
    await client.open(card, lamp);
    expect(lacks("unknown-ingredient")(await client.diagnosticsOf(card, 1))).toBe(true);
  });

  test.each(sent)("sent when they change: %s", async (_, settings) => {
    const client = await start({ params: { capabilities: {} } });
    await client.open(card, lamp);
    await client.diagnosticsOf(card, has("unknown-ingredient"));
    await client.configure(() => null, settings as object);
    await client.diagnosticsOf(card, lacks("unknown-ingredient"));
  });

  test("sent along count where a client that is asked has no answer", async () => {
    const client = await start({ settings: () => null, params: { capabilities: configuration, initializationOptions: quiet } });
    await client.open(card, lamp);
    expect(lacks("unknown-ingredient")(await client.diagnosticsOf(card, 1))).toBe(true);
  });

  test("its answer counts before them", async () => {
    const client = await start({ settings: () => ({}), params: { capabilities: configuration, initializationOptions: quiet } });
    await client.open(card, lamp);
    await client.diagnosticsOf(card, has("unknown-ingredient"));
  });

  test("somebody else's change leaves ours", async () => {
    const client = await start({ params: { capabilities: {}, initializationOptions: quiet } });
    await client.configure(() => null, { other: { severity: {} } });
    await client.open(card, lamp);
    expect(lacks("unknown-ingredient")(await client.diagnosticsOf(card, 1))).toBe(true);
  });

  test("a client that refuses to be asked is served all the same", async () => {
    const settings = () => {
      throw new Error("Nobody may ask.");
    };
    const client = await start({ settings, params: { capabilities: configuration } });
    await client.open(card, lamp);
    await client.diagnosticsOf(card, has("unknown-ingredient"));
  });

  test("a wrong one is said, and nobody has to answer", async () => {
    const client = await start({ params: { capabilities: {}, initializationOptions: { units: "thimbles" } } });
    expect(await client.said(/thimbles/)).toMatchObject({ method: "window/showMessage", type: 2 });
  });
});

describe("findings", () => {
  const card = nowhere("card.drink");

  test.each<[string, Partial<InitializeParams>]>([
    ["cannot be told to ask again", { capabilities: { textDocument: { diagnostic: {} } } }],
    [
      "asks only for what is edited, as Neovim 0.12 does,",
      {
        clientInfo: { name: "Neovim", version: "0.12.0" },
        capabilities: { textDocument: { diagnostic: {} }, workspace: { diagnostics: { refreshSupport: true } } },
      },
    ],
  ])("a client that asks for them but %s has them pushed", async (_, params) => {
    const client = await start({ params });
    expect(client.capabilities().diagnosticProvider).toBeUndefined();
    await client.open(card, slip);
    await client.diagnosticsOf(card, has("unknown-ingredient"));
    // Of the text that nobody edits, too.
    await client.open(nowhere("stock.drink"), shelf);
    await client.diagnosticsOf(card, lacks("unknown-ingredient"));
  });

  test("a client that asks and can be told to ask again is not pushed any", async () => {
    const client = await start({ pull: true });
    expect(client.capabilities().diagnosticProvider).toBeDefined();
    await client.open(card, lamp);
    const report = await client.pull(card);
    expect(report.kind === "full" && has("unknown-ingredient")({ diagnostics: report.items })).toBe(true);
    expect(client.pushed(card)).toBeUndefined();
  });

  test("a client that refuses whatever it is asked has them all the same", async () => {
    const house = layOut({ "card.drink": lamp, "stock.drink": shelf });
    const client = startSilent();
    for (const method of ["client/registerCapability", "window/workDoneProgress/create", "workspace/configuration"])
      client.connection.onRequest(method, () => new ResponseError(ErrorCodes.MethodNotFound, "Not here."));
    await client.initialize({ folders: [house.folder()] });
    await client.diagnosticsOf(house.uriOf("card.drink"), has("unknown-ingredient"));
    await client.shutDown();
  });

  test("a client that would rather count bytes is told places in UTF-16, which every client reads", async () => {
    const client = await start({ params: { capabilities: { general: { positionEncodings: ["utf-8", "utf-32", "utf-16"] } } } });
    expect(client.capabilities().positionEncoding ?? "utf-16").toBe("utf-16");
    await client.open(card, "drink Lantern\n  50 ml é 🍋 oil\n");
    const { diagnostics } = await client.diagnosticsOf(card, has("unknown-ingredient"));
    expect(diagnostics.find(({ code }) => code === "unknown-ingredient")?.range).toEqual({
      start: { line: 1, character: 8 },
      end: { line: 1, character: 16 },
    });
  });

  test("a client without work-done progress is not asked for it", async () => {
    const house = layOut({ "card.drink": lamp });
    const client = await start({ folders: [house.folder()], params: { capabilities: {} } });
    await client.diagnosticsOf(house.uriOf("card.drink"), has("unknown-ingredient"));
    expect(client.messages).toEqual([]);
  });
});

test("completion without snippets has no tab stops", async () => {
  const client = await start({ params: { capabilities: {} } });
  const card = nowhere("card.drink");
  const text = "drink Lantern\n  \n  me\n  60 ml \n";
  await client.open(card, text);
  for (const [line, character] of [
    [1, 2],
    [2, 4],
    [3, 8],
  ]) {
    const answer = await client.request<CompletionList | CompletionItem[]>("textDocument/completion", {
      textDocument: { uri: card },
      position: { line, character },
    });
    const items = Array.isArray(answer) ? answer : answer.items;
    expect(items.length).toBeGreaterThan(0);
    expect(items.filter(({ insertTextFormat }) => insertTextFormat === 2)).toEqual([]);
    expect(JSON.stringify(items)).not.toMatch(/\$\{?\d/);
    // Neither replace-or-insert edits nor lists of defaults were said to be taken.
    expect(items.filter(({ textEdit }) => textEdit && !("range" in textEdit))).toEqual([]);
  }
});
