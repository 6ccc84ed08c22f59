/** The wiring: what the client sends, to the workspace; what it asks for, to the features. One line for each feature. */
import {
  type CancellationToken,
  type ClientCapabilities,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  MessageType,
  ShowMessageNotification,
  TextDocumentSyncKind,
  WatchKind,
} from "vscode-languageserver";
import { URI } from "vscode-uri";
import { houseFiles } from "../house/house-files.ts";
import type { Environment } from "./environment.ts";
import { earlierHouse } from "./past.ts";
import { Publisher } from "./publisher.ts";
import { Refresher } from "./refresher.ts";
import { requests } from "./requests.ts";
import { defaultEditorSettings, type EditorSettings, ownSection, readSettings } from "./settings.ts";
import { TokenResults } from "./token-results.ts";
import { turns } from "./turns.ts";
import { canonical, Workspace } from "./workspace.ts";

export function serve(connection: Connection, environment: Environment, version: string): void {
  const workspace = new Workspace(environment);
  const log = (what: string, cause: unknown) =>
    connection.console.error(`${what}: ${cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)}`);
  const report = (code: string, cause: unknown) => log(`The rule “${code}” failed; the other rules go on`, cause);
  const settings = new SettingsOfFolders();
  const publisher = new Publisher({
    connection,
    workspace,
    environment,
    settingsFor: (uri) => settings.of(uri),
    report,
    touched: (documents) => refresher.touched(documents),
  });
  const refresher = new Refresher(
    connection,
    () => capabilities,
    (uri) => workspace.isOpen(uri),
  );
  const tokens = new TokenResults();
  const earlier = earlierHouse();
  let capabilities: ClientCapabilities = {};
  let folders: string[] = [];

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    capabilities = params.capabilities;
    folders = foldersOf(params);
    publisher.pulled = asksForFindings(params);
    settings.given = ownSection(params.initializationOptions);
    return {
      serverInfo: { name: "Mutchkin", version },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        ...(publisher.pulled && {
          diagnosticProvider: { identifier: "mutchkin", interFileDependencies: true, workspaceDiagnostics: true },
        }),
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        ...Object.assign({}, ...requests.map(({ announces }) => announces(capabilities))),
      },
    };
  });

  connection.onInitialized(async () => {
    const { didChangeConfiguration, didChangeWatchedFiles } = capabilities.workspace ?? {};
    const refused = (cause: unknown) => log("The client refused to tell of changes", cause);
    if (didChangeConfiguration?.dynamicRegistration) {
      await connection.client.register(DidChangeConfigurationNotification.type, { section: "mutchkin" }).catch(refused);
    }
    if (didChangeWatchedFiles?.dynamicRegistration) {
      await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }).catch(refused);
    }
    if (capabilities.workspace?.workspaceFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(async ({ added, removed }) => {
        const gone = new Set(removed.map(({ uri }) => uri));
        folders = [...folders.filter((uri) => !gone.has(uri)), ...added.map(({ uri }) => uri)];
        await load();
      });
    }
    await load();
    publisher.release();
  });

  const load = async () => {
    publisher.hold();
    await readSettingsAgain();
    const canReport = capabilities.window?.workDoneProgress === true && folders.length > 0;
    const progress = canReport ? await connection.window.createWorkDoneProgress().catch(() => undefined) : undefined; // A client may not show it.
    progress?.begin("Reading the house", 0, undefined, true);
    try {
      await workspace.setFolders(folders, {
        report: (done, all) => progress?.report(Math.round((100 * done) / all), `${done} of ${all} files`),
        get cancelled() {
          return progress?.token.isCancellationRequested ?? false;
        },
      });
    } catch (cause) {
      log("A folder could not be read", cause);
    } finally {
      progress?.done();
    }
    publisher.release();
    publisher.askAgain();
  };

  const readSettingsAgain = async () => {
    const scopes = [undefined, ...folders];
    let asked: unknown[] = [];
    if (capabilities.workspace?.configuration) {
      const items = scopes.map((scopeUri) => ({ section: "mutchkin", ...(scopeUri && { scopeUri }) }));
      asked = await connection.workspace.getConfiguration(items).catch(() => []); // A client may not answer after all.
    }
    // Some clients can be asked, and know nothing but what they sent along.
    const values = scopes.map((_, index) => asked[index] ?? settings.given);
    for (const message of settings.take(scopes, values)) {
      // Not as a request: some editors stop and ask the person to choose among no answers.
      void connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Warning, message });
    }
  };

  connection.onDidChangeConfiguration(async ({ settings: given }) => {
    settings.given = ownSection(given) ?? settings.given;
    await readSettingsAgain();
    publisher.forgetAll();
    refresher.all();
  });
  connection.onDidOpenTextDocument(({ textDocument }) => {
    workspace.openText(textDocument);
    publisher.schedule();
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version: number }, contentChanges }) => {
    workspace.changeText(uri, number, contentChanges);
    publisher.schedule();
  });
  connection.onDidCloseTextDocument(async ({ textDocument: { uri } }) => {
    tokens.forget(canonical(uri));
    earlier.forget(canonical(uri));
    publisher.hold();
    await workspace.closeText(uri).finally(() => publisher.release());
  });
  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    publisher.hold();
    await workspace.takeEvents(changes).finally(() => publisher.release());
    publisher.askAgain();
  });
  connection.languages.diagnostics.on(
    (params, token) => publisher.documentReport(params.textDocument.uri, params.previousResultId, token) as never,
  );
  connection.languages.diagnostics.onWorkspace((params, token) => publisher.workspaceReport(params, token) as never);
  connection.onShutdown(() => refresher.stop());
  const context = {
    workspace,
    log,
    report,
    settingsFor: (uri: string) => settings.of(uri),
    spelling: (uri: string) => workspace.spelling(uri),
    turns: () => turns(environment),
    settled: (token: CancellationToken) => publisher.settled(token),
    client: () => capabilities,
    rulesPage: environment.rulesPage,
    revisions: environment.revisions,
    earlier,
    tokens,
  };
  for (const { register } of requests) register(connection, context);
}

/** The client's folders, in whichever of the protocol's three ways it names them. */
function foldersOf({ workspaceFolders, rootUri, rootPath }: InitializeParams): string[] {
  if (workspaceFolders && workspaceFolders.length > 0) return workspaceFolders.map(({ uri }) => uri);
  if (rootUri) return [rootUri];
  return rootPath ? [URI.file(rootPath).toString()] : [];
}

/**
 * Whether a client asks for findings whenever there may be others. One that cannot be told to ask again would miss what a
 * setting or the disk changes; Neovim (0.12) asks for the text that is edited alone, and not for those that hang on it.
 */
function asksForFindings({ capabilities: { textDocument, workspace }, clientInfo }: InitializeParams): boolean {
  return textDocument?.diagnostic !== undefined && workspace?.diagnostics?.refreshSupport === true && clientInfo?.name !== "Neovim";
}

/** A folder that comes or goes may be told of alone, whatever is in it. */
const anything = { globPattern: "**/*", kind: WatchKind.Create | WatchKind.Delete };
const watchers = [...houseFiles.endings.map((ending) => ({ globPattern: `**/*${ending}` })), anything];

/** The editor's settings for each open folder, and without a folder. */
class SettingsOfFolders {
  /** As sent with `initialize` or a change, for where a client has no answer. */
  given: unknown;
  private byFolder: { folder: string; settings: EditorSettings }[] = [];
  private general = defaultEditorSettings;
  private told = new Set<string>();

  /** Takes in the values of the scopes; answers what is wrong with them and has not been told yet. */
  take(scopes: readonly (string | undefined)[], values: readonly unknown[]): string[] {
    const wrong: string[] = [];
    this.byFolder = [];
    for (const [index, scope] of scopes.entries()) {
      const read = readSettings(values[index]);
      wrong.push(...read.wrong);
      if (scope === undefined) this.general = read.settings;
      else this.byFolder.push({ folder: canonical(scope).replace(/\/$/, ""), settings: read.settings });
    }
    this.byFolder.sort((one, other) => other.folder.length - one.folder.length);
    const news = [...new Set(wrong)].filter((sentence) => !this.told.has(sentence));
    this.told = new Set(wrong);
    return news;
  }

  of(uri: string): EditorSettings {
    return this.byFolder.find(({ folder }) => uri.startsWith(`${folder}/`))?.settings ?? this.general;
  }
}
