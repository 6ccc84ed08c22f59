/**
 * Tells the client to ask again for what it shows in open texts, where something declared elsewhere changed
 * it: tokens, hints and lenses know no other way. Once typing rests, never for each key.
 */
import { type ClientCapabilities, CodeLensRefreshRequest, type Connection } from "vscode-languageserver";
import type { SpecDocument } from "../house/document.ts";

/** So long nothing may have changed. */
const restMs = 600;

export class Refresher {
  private readonly seen = new WeakSet<SpecDocument>();
  private timer: ReturnType<typeof setTimeout> | undefined;
  private elsewhere = false;

  constructor(
    private readonly connection: Connection,
    private readonly client: () => ClientCapabilities,
    private readonly isOpen: (uri: string) => boolean,
  ) {}

  /** Documents that may show something else now. One that was not itself edited was touched from elsewhere. */
  touched(documents: readonly SpecDocument[]): void {
    for (const document of documents) {
      if (this.seen.has(document) && this.isOpen(document.uri)) this.elsewhere = true;
      this.seen.add(document);
    }
    if (documents.length > 0) this.wait();
  }

  /** Everything is to be asked for again: a setting changed. */
  all(): void {
    this.elsewhere = true;
    this.wait();
  }

  stop(): void {
    clearTimeout(this.timer);
  }

  private wait(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.ask(), restMs);
  }

  private ask(): void {
    const { workspace } = this.client();
    const { languages } = this.connection;
    const may = (asking: Promise<void>) => void asking.catch(() => undefined); // A client may not take it.
    // Who is on a menu or poured somewhere is told by texts that the open one does not depend on.
    if (workspace?.codeLens?.refreshSupport) may(this.connection.sendRequest(CodeLensRefreshRequest.type));
    if (!this.elsewhere) return;
    this.elsewhere = false;
    if (workspace?.semanticTokens?.refreshSupport) may(languages.semanticTokens.refresh());
    if (workspace?.inlayHint?.refreshSupport) may(languages.inlayHint.refresh());
  }
}
