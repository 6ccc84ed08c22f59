/**
 * Brings findings to the client: pushed with versions, or pulled where the client asks for them. Only
 * documents whose findings may have changed are looked at again; a long round gives way to messages.
 */
import {
  type CancellationToken,
  type Connection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  DocumentDiagnosticReportKind,
  LSPErrorCodes,
  ResponseError,
  type WorkspaceDiagnosticParams,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import { outward } from "../features/margins.ts";
import type { SpecDocument } from "../house/document.ts";
import type { Report } from "../rules/run.ts";
import { diagnosticsOf } from "./diagnostics.ts";
import type { Environment } from "./environment.ts";
import type { EditorSettings } from "./settings.ts";
import { turns } from "./turns.ts";
import type { Workspace } from "./workspace.ts";

interface Latest {
  readonly id: string;
  readonly diagnostics: Diagnostic[];
  /** As text, to tell whether anything changed. */
  readonly text: string;
}

export interface PublisherOptions {
  readonly connection: Connection;
  readonly workspace: Workspace;
  readonly environment: Environment;
  readonly settingsFor: (uri: string) => EditorSettings;
  readonly report: Report;
  /** Told of the documents that something changed for, once each time. */
  readonly touched: (documents: readonly SpecDocument[]) => void;
}

/** Texts that arrive in a burst are taken in first, for so long at most. */
const burstMs = 150;

export class Publisher {
  /** The client asks for diagnostics itself; nothing is pushed. */
  pulled = false;
  private readonly options: PublisherOptions;
  private readonly latest = new Map<string, Latest>();
  private readonly pending = new Set<string>();
  private readonly waiting = new Set<() => void>();
  private arrivals = 0;
  private scheduled = false;
  /** How many still read what the findings are to be of. */
  private holds = 1;
  private ids = 0;

  constructor(options: PublisherOptions) {
    this.options = options;
  }

  /** Until it is released nothing is pushed and pulls wait: half a house would be full of unknown names. */
  hold(): void {
    this.holds++;
  }

  /** At the start it is held once. */
  release(): void {
    this.holds--;
    if (this.holds > 0) return;
    this.schedule();
    this.wake();
  }

  /** Something changed: looks again at what that touches, after what is waiting has been taken in. */
  schedule(): void {
    this.arrivals++;
    if (this.scheduled || this.holds > 0) return;
    this.scheduled = true;
    void this.afterBurst().then(() => {
      this.scheduled = false;
      return this.flush();
    });
  }

  /** Waits until a turn has passed in which nothing arrived, or the burst has been long enough. */
  private async afterBurst(): Promise<void> {
    const { now, nextTurn } = this.options.environment;
    const first = now();
    let seen: number;
    do {
      seen = this.arrivals;
      await nextTurn();
    } while (this.arrivals !== seen && now() - first < burstMs);
  }

  /** The findings of every document are to be looked at again: a setting changed. */
  forgetAll(): void {
    for (const document of this.options.workspace.house.documents()) this.pending.add(document.uri);
    this.schedule();
    this.askAgain();
  }

  /** A client that pulls looks at an open document again only when it is told to, or when that is edited. */
  askAgain(): void {
    if (this.pulled) this.options.connection.languages.diagnostics.refresh().catch(() => undefined); // A client may not take it.
  }

  /** Resolves once nothing holds it, or the token is cancelled; absent where nothing does. */
  settled(token: CancellationToken): Promise<void> | undefined {
    return this.holds === 0 ? undefined : this.untilReleased(token);
  }

  private async untilReleased(token: CancellationToken): Promise<void> {
    while (this.holds > 0 && !token.isCancellationRequested) await this.changed(token);
  }

  async documentReport(
    uri: string,
    previous: string | undefined,
    token: CancellationToken,
  ): Promise<DocumentDiagnosticReport | ResponseError<void>> {
    await this.settled(token);
    if (token.isCancellationRequested) return cancelled();
    const document = this.options.workspace.document(uri);
    if (!document) return { kind: DocumentDiagnosticReportKind.Full, items: [] };
    const { id, diagnostics } = this.look(document);
    if (id === previous) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: id };
    return { kind: DocumentDiagnosticReportKind.Full, resultId: id, items: diagnostics };
  }

  /** Answers when there is something new to tell; until then the request is held, as the protocol suggests. */
  async workspaceReport(
    params: WorkspaceDiagnosticParams,
    token: CancellationToken,
  ): Promise<WorkspaceDiagnosticReport | ResponseError<void>> {
    await this.settled(token);
    const previous = new Map(params.previousResultIds.map(({ uri, value }) => [uri, value]));
    for (let first = true; ; first = false) {
      const items = await this.newsSince(previous, token);
      if (token.isCancellationRequested) return cancelled();
      if (items.length > 0 || (first && previous.size === 0)) return { items };
      await this.changed(token);
    }
  }

  private async newsSince(previous: ReadonlyMap<string, string>, token: CancellationToken): Promise<WorkspaceDocumentDiagnosticReport[]> {
    const { workspace } = this.options;
    const items: WorkspaceDocumentDiagnosticReport[] = [];
    const gone = new Set(previous.keys());
    const turn = turns(this.options.environment);
    for (const document of [...workspace.house.documents()]) {
      const uri = workspace.spelling(document.uri);
      const { id, diagnostics } = this.look(workspace.house.document(document.uri) ?? document);
      gone.delete(uri);
      if (id !== previous.get(uri) && (diagnostics.length > 0 || previous.has(uri))) {
        items.push({ kind: DocumentDiagnosticReportKind.Full, uri, version: document.version, resultId: id, items: diagnostics });
      }
      await turn();
      if (token.isCancellationRequested) return items;
    }
    for (const uri of gone) {
      if (previous.get(uri) !== "gone")
        items.push({ kind: DocumentDiagnosticReportKind.Full, uri, version: null, resultId: "gone", items: [] });
    }
    return items;
  }

  private async flush(): Promise<void> {
    this.takeStale();
    if (this.pulled) return this.wake();
    const { connection, workspace } = this.options;
    const turn = turns(this.options.environment);
    // What a person is looking at comes first.
    const order = [...this.pending].sort((one, other) => Number(workspace.isOpen(other)) - Number(workspace.isOpen(one)));
    for (const uri of order) {
      if (!this.pending.has(uri)) continue;
      const before = this.latest.get(uri);
      const document = workspace.house.document(uri);
      if (document) {
        const { id, diagnostics } = this.look(document);
        const news = document.version !== null || id !== before?.id;
        if (news && (document.version !== null || before !== undefined || diagnostics.length > 0)) {
          void connection.sendDiagnostics({
            uri: workspace.spelling(uri),
            ...(document.version !== null && { version: document.version }),
            diagnostics,
          });
        }
      } else {
        this.pending.delete(uri);
        this.latest.delete(uri);
        void connection.sendDiagnostics({ uri: workspace.spelling(uri), diagnostics: [] });
      }
      if (await turn()) this.takeStale();
    }
  }

  /** The newest findings of a document, made only if something they depend on changed. */
  private look(document: SpecDocument): Latest {
    this.takeStale();
    const known = this.latest.get(document.uri);
    if (known && !this.pending.has(document.uri)) return known;
    this.pending.delete(document.uri);
    const { workspace, settingsFor, report, environment } = this.options;
    const found = diagnosticsOf(workspace.house, document, settingsFor(document.uri), {
      report,
      rulesPage: environment.rulesPage,
      spelling: (uri) => workspace.spelling(uri),
    });
    const diagnostics = outward(found, document.margins, workspace);
    const text = JSON.stringify(diagnostics);
    if (known?.text === text) return known;
    const latest = { id: String(++this.ids), diagnostics, text };
    this.latest.set(document.uri, latest);
    return latest;
  }

  private takeStale(): void {
    const { house } = this.options.workspace;
    const stale = house.takeStale();
    for (const document of stale) this.pending.add(document.uri);
    this.options.touched(stale);
    for (const uri of house.takeGone()) this.pending.add(uri);
  }

  private wake(): void {
    for (const resolve of this.waiting) resolve();
    this.waiting.clear();
  }

  private changed(token: CancellationToken): Promise<void> {
    return new Promise((resolve) => {
      this.waiting.add(resolve);
      token.onCancellationRequested(() => {
        this.waiting.delete(resolve);
        resolve();
      });
    });
  }
}

function cancelled(): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestCancelled, "The request was cancelled.");
}
