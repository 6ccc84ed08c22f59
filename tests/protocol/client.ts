/**
 * A language client for tests: starts one server as a child process, speaks the protocol with it over
 * its pipes or over IPC, and keeps whatever the server says. It knows the protocol and no drink.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { resolve } from "node:path";
import {
  type CancellationToken,
  createMessageConnection,
  IPCMessageReader,
  IPCMessageWriter,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import type {
  ClientCapabilities,
  DocumentDiagnosticReport,
  FileChangeType,
  InitializeParams,
  InitializeResult,
  PublishDiagnosticsParams,
  Registration,
  ServerCapabilities,
  TextDocumentContentChangeEvent,
  WorkspaceDiagnosticReport,
  WorkspaceFolder,
} from "vscode-languageserver/node";
import { until, within } from "./wait.ts";

export type Transport = "stdio" | "ipc";

export interface Exit {
  /** `null` where a signal ended the process. */
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
}

export interface Start {
  readonly folders?: readonly WorkspaceFolder[];
  /** Diagnostics are asked for by the client instead of being pushed. */
  readonly pull?: boolean;
  /** What `workspace/configuration` is answered: one object for a section, whatever the scope. */
  readonly settings?: Settings;
  readonly params?: Partial<InitializeParams>;
}

/** The answer to one asked item; the scope is a folder's or a document's URI. */
export type Settings = (section: string | undefined, scope: string | undefined) => unknown;

/** The server as it is shipped. Tests and the benchmark run in the project's folder. */
export const ourServer = resolve("dist/server.js");

export type Client = ReturnType<typeof startServer>;

/**
 * Starts a server; nothing is sent yet. Every client must be ended, with `end` or by the server's own
 * exit; `end` is safe to call twice and touches no other process.
 */
export function startServer(transport: Transport = "stdio", script = ourServer) {
  const child = spawnServer(script, transport);
  const connection = connect(child, transport);
  const kept = keepWhatIsSaid(child, connection);
  const exited = new Promise<Exit>((settle, reject) => {
    child.once("error", (cause) => reject(new Error(`The server could not be started: ${cause.message}`)));
    // Not "close": it does not come where the client itself has closed the IPC channel.
    child.once("exit", (code, signal) => settle({ code, signal }));
  });
  exited.catch(() => undefined); // whoever waits for it gets the rejection
  const fail = (what: string) => `${what}; the server wrote on stderr: ${kept.stderr().trim().slice(-2000) || "nothing"}`;
  let settings: Settings = () => null;
  let capabilities: ServerCapabilities = {};

  connection.onRequest("workspace/configuration", (asked: { items: { section?: string; scopeUri?: string }[] }) =>
    asked.items.map((item) => settings(item.section, item.scopeUri) ?? null),
  );

  const request = async <R>(method: string, params: object | null = null, token?: CancellationToken): Promise<R> =>
    within(
      token ? connection.sendRequest<R>(method, params, token) : connection.sendRequest<R>(method, params),
      () => fail(`${method} was not answered`),
      exited,
    );
  const notify = (method: string, params: object | null = null) => connection.sendNotification(method, params);

  return {
    pid: child.pid,
    child,
    connection,
    request,
    notify,
    exited: () => within(exited, () => fail("The server did not exit")),
    stderr: kept.stderr,
    messages: kept.messages,
    registrations: kept.registrations,
    /** What the server said it can do. */
    capabilities: () => capabilities,

    /** `initialize`, then `initialized`. */
    async initialize(start: Start = {}): Promise<InitializeResult> {
      settings = start.settings ?? settings;
      const result = await request<InitializeResult>("initialize", initializeParams(start));
      capabilities = result.capabilities;
      await notify("initialized", {});
      return result;
    },

    /** Changes what `workspace/configuration` is answered, and says so to the server. */
    async configure(changed: Settings, pushed: object | null = null) {
      settings = changed;
      await notify("workspace/didChangeConfiguration", { settings: pushed });
    },

    open: (uri: string, text: string, version = 1, languageId = "mutchkin") =>
      notify("textDocument/didOpen", { textDocument: { uri, languageId, version, text } }),
    change: (uri: string, version: number, contentChanges: readonly TextDocumentContentChangeEvent[]) =>
      notify("textDocument/didChange", { textDocument: { uri, version }, contentChanges }),
    close: (uri: string) => notify("textDocument/didClose", { textDocument: { uri } }),
    filesChanged: (changes: readonly { uri: string; type: FileChangeType }[]) => notify("workspace/didChangeWatchedFiles", { changes }),

    /** What was last pushed for the document. */
    pushed: (uri: string) => kept.diagnostics.get(uri),
    /** Waits for a push that fits; the default: one of this version (or of any). */
    async diagnosticsOf(uri: string, fits?: number | ((push: PublishDiagnosticsParams) => boolean)): Promise<PublishDiagnosticsParams> {
      const test = typeof fits === "function" ? fits : (push: PublishDiagnosticsParams) => fits === undefined || push.version === fits;
      const found = await until(
        () => {
          const push = kept.diagnostics.get(uri);
          return push && test(push) ? push : undefined;
        },
        kept.onNews,
        () => fail(`No such diagnostics came for ${uri}; the last were ${JSON.stringify(kept.diagnostics.get(uri)) ?? "none at all"}`),
      );
      return found;
    },
    /** The first message, logged or shown, that fits. */
    said: (fits: RegExp) =>
      until(
        () => kept.messages.find(({ message }) => fits.test(message)),
        kept.onNews,
        () => fail(`Nothing was said like ${fits}`),
      ),
    /** The server's next request that diagnostics be pulled again. */
    refreshed() {
      const before = kept.refreshes();
      return until(
        () => (kept.refreshes() > before ? true : undefined),
        kept.onNews,
        () => fail("Nothing asked for a refresh"),
      );
    },
    pull: (uri: string, previousResultId?: string, token?: CancellationToken) =>
      request<DocumentDiagnosticReport>("textDocument/diagnostic", { textDocument: { uri }, previousResultId }, token),
    pullWorkspace: (previousResultIds: readonly { uri: string; value: string }[] = [], token?: CancellationToken) =>
      request<WorkspaceDiagnosticReport>("workspace/diagnostic", { previousResultIds }, token),

    /** `shutdown`, `exit`, and how the process ended. */
    async shutDown(): Promise<Exit> {
      await request("shutdown");
      await notify("exit");
      return within(exited, () => fail("The server did not exit after shutdown and exit"));
    },

    /** Ends the child, whatever state it is in. */
    async end() {
      if (child.pid !== undefined && child.exitCode === null && child.signalCode === null) child.kill("SIGKILL");
      await exited.catch(() => undefined);
      connection.dispose();
    },
  };
}

function spawnServer(script: string, transport: Transport): ChildProcess {
  return transport === "ipc"
    ? spawn(process.execPath, [script, "--node-ipc"], { stdio: ["ignore", "pipe", "pipe", "ipc"] })
    : spawn(process.execPath, [script, "--stdio"], { stdio: "pipe" });
}

function connect(child: ChildProcess, transport: Transport): MessageConnection {
  if (transport === "ipc") return createMessageConnection(new IPCMessageReader(child), new IPCMessageWriter(child));
  // A server that is already gone makes a write fail with EPIPE; its exit says so better.
  child.stdin!.on("error", () => undefined);
  return createMessageConnection(new StreamMessageReader(child.stdout!), new StreamMessageWriter(child.stdin!));
}

/** Collects pushes, messages, registrations and stderr, and answers what a server may ask of a client. */
function keepWhatIsSaid(child: ChildProcess, connection: MessageConnection) {
  const diagnostics = new Map<string, PublishDiagnosticsParams>();
  const messages: { method: string; type: number; message: string }[] = [];
  const registrations: Registration[] = [];
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listener of listeners) listener();
  };
  let stderr = "";
  let refreshes = 0;
  child.stderr!.setEncoding("utf8").on("data", (text: string) => {
    stderr += text;
  });

  connection.onNotification("textDocument/publishDiagnostics", (push: PublishDiagnosticsParams) => {
    diagnostics.set(push.uri, push);
    tell();
  });
  for (const method of ["window/logMessage", "window/showMessage"])
    connection.onNotification(method, (said: { type: number; message: string }) => {
      messages.push({ method, ...said });
      tell();
    });
  connection.onRequest("window/showMessageRequest", (said: { type: number; message: string }) => {
    messages.push({ method: "window/showMessageRequest", ...said });
    tell();
    return null;
  });
  connection.onRequest("client/registerCapability", (asked: { registrations: Registration[] }) => {
    registrations.push(...asked.registrations);
    return null;
  });
  connection.onRequest("workspace/diagnostic/refresh", () => {
    refreshes++;
    tell();
    return null;
  });
  connection.onRequest("window/workDoneProgress/create", () => null);
  connection.onError(() => undefined);
  connection.listen();

  return {
    diagnostics,
    messages,
    registrations,
    stderr: () => stderr,
    refreshes: () => refreshes,
    onNews(listener: () => void) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function initializeParams({ folders, pull, params }: Start): InitializeParams {
  return {
    processId: process.pid,
    clientInfo: { name: "protocol test" },
    rootUri: folders?.[0]?.uri ?? null,
    workspaceFolders: folders ? [...folders] : null,
    capabilities: { ...clientCapabilities, textDocument: { ...clientCapabilities.textDocument, ...(pull ? { diagnostic: {} } : {}) } },
    ...params,
  };
}

const clientCapabilities: ClientCapabilities = {
  general: { positionEncodings: ["utf-16"] },
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    diagnostics: { refreshSupport: true },
    workspaceEdit: { documentChanges: true, resourceOperations: ["create", "rename", "delete"] },
  },
  textDocument: {
    synchronization: { didSave: true },
    publishDiagnostics: { versionSupport: true, codeDescriptionSupport: true, relatedInformation: true },
    hover: { contentFormat: ["markdown", "plaintext"] },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix", "refactor", "source"] } },
      isPreferredSupport: true,
    },
  },
  window: { showMessage: {}, workDoneProgress: true },
};
