/** `mutchkin check`: what the rules find, and whether that is too much. */
import { showCount } from "../house/show.ts";
import { type Checked, check, reportOf } from "../reports/check.ts";
import { baselineSieve, writeBaseline } from "./baseline-file.ts";
import { changedSieve } from "./changed-since.ts";
import { type CheckFormat, checkFormats } from "./check-formats.ts";
import { exitCodes } from "./exit-codes.ts";
import { fixFiles } from "./fix.ts";
import { openHouse } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface CheckOptions {
  readonly format: CheckFormat;
  /** Warnings that are let pass. */
  readonly maxWarnings: number;
  /** Put right first what can be without asking. */
  readonly fix?: boolean;
  /** A revision: only what is new since. */
  readonly changedSince?: string;
  /** A file of findings that are let stand. */
  readonly baseline?: string;
  /** The file that all findings are written to instead. */
  readonly writeBaseline?: string;
}

/** Prints the findings; answers the exit code. */
export function checkCommand(paths: readonly string[], options: CheckOptions, terminal: Terminal): number {
  const { format, maxWarnings, fix, changedSince, baseline } = options;
  if (options.writeBaseline !== undefined && (baseline ?? changedSince) !== undefined) {
    throw new UsageError("A baseline is written of all that is found.", "Leave `--baseline` and `--changed-since` out.");
  }
  // Both are looked at before the long work: what is wrong with them is said at once.
  const sieves = [
    ...(baseline === undefined ? [] : [baselineSieve(baseline, terminal)]),
    ...(changedSince === undefined ? [] : [changedSieve(changedSince, paths, terminal)]),
  ];
  const session = openHouse(paths, terminal);
  const { documents, notes: fixed } = fix ? fixFiles(session, terminal) : { ...session, notes: [] };
  const all = check(session.house, documents, { ...session, progress: (done) => session.progress(done, documents.length) });
  if (options.writeBaseline !== undefined) {
    const complete = session.finish();
    // Without the findings of what could not be read it would be no baseline.
    if (!complete) return exitCodes.failed;
    writeBaseline(options.writeBaseline, all, terminal);
    terminal.print(`${[...fixed, `${showCount(all.findings.length, "finding")} written to ${options.writeBaseline}.`].join("\n")}\n`);
    return exitCodes.clean;
  }
  let checked: Checked = all;
  const notes: string[] = [];
  for (const sieve of sieves) {
    const sieved = sieve(checked);
    checked = { ...checked, findings: sieved.findings };
    notes.push(...sieved.notes);
  }
  const complete = session.finish();
  const say = format === "text" ? terminal.print : terminal.complain;
  for (const note of fixed) say(`${note}\n`);
  terminal.print(checkFormats[format](checked, { terminal, complete }));
  for (const note of notes) say(`${note}\n`);
  const { errors, warnings } = reportOf(checked).summary;
  return !complete ? exitCodes.failed : errors > 0 || warnings > maxWarnings ? exitCodes.findings : exitCodes.clean;
}
