/** The last semantic tokens of each open text, so that after an edit only what changed goes over the wire. */
import type { SemanticTokens, SemanticTokensDelta } from "vscode-languageserver";
import { tokenEdits } from "../features/semantic-tokens.ts";

/** More texts than these are hardly looked at in turn; whichever was answered longest ago is sent whole again. */
const most = 100;

export class TokenResults {
  private readonly latest = new Map<string, SemanticTokens>();
  private ids = 0;

  /** The whole, remembered under a new name. */
  full(uri: string, data: number[]): SemanticTokens {
    const tokens = { resultId: String(++this.ids), data };
    this.latest.delete(uri);
    this.latest.set(uri, tokens);
    const [oldest] = this.latest.keys();
    if (this.latest.size > most && oldest !== undefined) this.latest.delete(oldest);
    return tokens;
  }

  /** What changed since an answer; the whole where that is not the last one. */
  since(uri: string, previous: string, data: number[]): SemanticTokens | SemanticTokensDelta {
    const before = this.latest.get(uri);
    const after = this.full(uri, data);
    return before?.resultId === previous ? { resultId: after.resultId!, edits: tokenEdits(before.data, data) } : after;
  }

  forget(uri: string): void {
    this.latest.delete(uri);
  }
}
