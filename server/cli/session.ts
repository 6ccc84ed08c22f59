/** What `check` and `assess` share: the house read for some paths, how far they are, and what went wrong on the way. */
import { rules } from "../rules/all.ts";
import type { Rule } from "../rules/rule.ts";
import type { Report } from "../rules/run.ts";
import { type Gathered, gather } from "./gather.ts";
import type { Terminal } from "./terminal.ts";

export interface Session extends Gathered {
  readonly rules: readonly Rule[];
  readonly report: Report;
  /** Tells how far the work is, to somebody who watches. */
  progress(done: number, total: number): void;
  /** Ends the work: says what could not be done. Answers whether everything could. */
  finish(): boolean;
}

/** Throws a `UsageError` for paths that cannot be read as asked. */
export function openHouse(paths: readonly string[], terminal: Terminal): Session {
  const telling = (doing: string) => (done: number, total: number) => terminal.progress(`${doing} ${done} of ${total}`);
  const faults = new Map<string, unknown>();
  const gathered = gather(terminal.files, terminal.currentFolder, paths, telling("Reading"));
  return {
    ...gathered,
    rules,
    report: (code, cause) => faults.set(code, cause),
    progress: telling("Computing"),
    finish() {
      terminal.progress("");
      for (const { path, why } of gathered.unread) terminal.complain(`“${path}” could not be read: ${why}.\n`);
      for (const [code, cause] of faults) {
        const where = terminal.debug && cause instanceof Error ? `\n${cause.stack}` : "";
        terminal.complain(`The rule “${code}” failed, so it found nothing here; the others went on. Please report it.${where}\n`);
      }
      return gathered.unread.length + faults.size === 0;
    },
  };
}
