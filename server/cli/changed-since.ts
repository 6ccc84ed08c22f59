/** `mutchkin check --changed-since`: what a piece of work brought about, beside what it found. */
import { resolve } from "node:path";
import { bareText } from "../house/compare/written.ts";
import { showCount } from "../house/show.ts";
import { withoutOld } from "../reports/baseline.ts";
import { check } from "../reports/check.ts";
import { rules } from "../rules/all.ts";
import { filesAt } from "./files-at.ts";
import { gather } from "./gather.ts";
import { gitIn } from "./git.ts";
import type { Sieve } from "./sieve.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Lets stand what was found before the work that started from a revision: what is new against the commit where the two
 * parted is kept, wherever it stands, and everything in an entry that has been touched. Throws a `UsageError` where there is no such revision.
 */
export function changedSieve(revision: string, paths: readonly string[], terminal: Terminal): Sieve {
  const { currentFolder } = terminal;
  const git = gitIn(currentFolder);
  if (git.isUnborn && revision === "HEAD") {
    return ({ findings }) => ({ findings, notes: ["Nothing is committed here yet, so all of it is new."] });
  }
  const since = git.commit(revision);
  const parted = git.isUnborn ? undefined : git.mergeBase(since, git.commit("HEAD"));
  const apart = parted ? [] : [`No commit is common to ${revision} and this branch here: it is compared with ${revision} as it is now.`];
  return (checked) => {
    terminal.progress(`Reading ${revision}`);
    const files = filesAt(git, parted ?? since, currentFolder);
    const there = (paths.length > 0 ? paths : ["."]).filter((path) => files.kindOf(resolve(currentFolder, path)));
    const before = there.length > 0 ? gathered(() => gather(files, currentFolder, there, () => undefined)) : undefined;
    if (!before) return { findings: checked.findings, notes: apart };
    const { house, documents, pathOf } = before;
    const progress = (done: number) => terminal.progress(`Computing ${revision}: ${done} of ${documents.length}`);
    const old = check(house, documents, { rules, pathOf, report: () => undefined, progress });
    const untouched = new Set(documents.flatMap(({ tree }) => tree.entries.map(bareText)));
    const known = old.findings.map(({ finding: { severity }, fingerprint }) => ({ finding: fingerprint, severity }));
    const fresh = new Set(withoutOld(checked.findings, known).fresh);
    const findings = checked.findings.filter((found) => fresh.has(found) || !untouched.has(bareText(found.entry)));
    const stood = checked.findings.length - findings.length;
    return {
      findings,
      notes: [
        ...apart,
        ...(stood > 0 ? [`${showCount(stood, "finding")} from before the change ${stood === 1 ? "is" : "are"} not shown.`] : []),
      ],
    };
  };
}

/** Absent where there were no specs at that time: then all of it is new. */
function gathered<T>(gathering: () => T): T | undefined {
  try {
    return gathering();
  } catch (cause) {
    if (cause instanceof UsageError) return undefined;
    throw cause;
  }
}
