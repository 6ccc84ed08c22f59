/** What keeps findings from being shown: those that were there before. */
import { dirname, relative, resolve, sep } from "node:path";
import type { Entry } from "../../grammar/tree.ts";
import { showCount } from "../house/show.ts";
import { baselineText, type Old, readBaseline, withoutOld } from "../reports/baseline.ts";
import { type Checked, check, type Located } from "../reports/check.ts";
import { rules } from "../rules/all.ts";
import { Unreadable } from "./files.ts";
import { filesAt } from "./files-at.ts";
import { gather } from "./gather.ts";
import { gitIn } from "./git.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { writeText } from "./write-text.ts";

/** Takes findings away, and says in sentences how many. */
export type Sieve = (checked: Checked) => { readonly findings: readonly Located[]; readonly notes: readonly string[] };

/** Lets the findings of a baseline file stand. Throws a `UsageError` where that file is none. */
export function baselineSieve(name: string, { files, currentFolder }: Terminal): Sieve {
  const path = resolve(currentFolder, name);
  const olds = baselineIn(files.kindOf(path) === "file" ? readText(files, path, name) : undefined, name);
  const fileOf = ({ file }: Old) => resolve(dirname(path), file);
  return (checked) => {
    const { fresh, gone } = withoutOld(
      checked.findings,
      olds.map(({ finding }) => finding),
    );
    const looked = new Set(checked.files.map((file) => resolve(currentFolder, file)));
    // Of a file that was not asked for nothing is known, but that it is no more.
    const lost = olds.filter((old) => {
      const left = gone.get(old.finding) ?? 0;
      const isLost = left > 0 && (looked.has(fileOf(old)) || !files.kindOf(fileOf(old)));
      if (isLost) gone.set(old.finding, left - 1);
      return isLost;
    }).length;
    return { findings: fresh, notes: baselineNotes(checked.findings.length - fresh.length, lost, name) };
  };
}

function baselineNotes(stood: number, lost: number, name: string): string[] {
  const again = `Write it again with \`--write-baseline ${name}\`, so that they stay away.`;
  return [
    ...(stood > 0 ? [`${showCount(stood, "old finding")} let stand by ${name}.`] : []),
    ...(lost > 0 ? [`${showCount(lost, "finding")} of ${name} ${lost === 1 ? "is" : "are"} gone. ${again}`] : []),
  ];
}

function readText(files: Terminal["files"], path: string, name: string): string {
  try {
    return files.read(path);
  } catch (cause) {
    if (!(cause instanceof Unreadable)) throw cause;
    throw new UsageError(`“${name}” could not be read: ${cause.message}.`, writeIt(name));
  }
}

function baselineIn(text: string | undefined, name: string): readonly Old[] {
  if (text === undefined) throw new UsageError(`There is no file “${name}”.`, writeIt(name));
  const olds = readBaseline(text);
  if (!olds) throw new UsageError(`“${name}” is not a baseline of findings.`, writeIt(name));
  return olds;
}

function writeIt(name: string): string {
  return `\`mutchkin check --write-baseline ${name}\` writes one of what is found now.`;
}

/** Puts all that was found into a baseline file. Throws a `UsageError` where it cannot be written. */
export function writeBaseline(name: string, { findings }: Checked, { files, currentFolder }: Terminal): void {
  const path = resolve(currentFolder, name);
  const folder = dirname(path);
  if (files.kindOf(folder) !== "folder") throw new UsageError(`There is no folder for “${name}”.`, "Make the folder first.");
  const olds = findings.map(({ finding, fingerprint }) => ({
    file: relative(folder, resolve(currentFolder, finding.file)).split(sep).join("/"),
    finding: fingerprint,
  }));
  writeText(files, path, name, baselineText(olds));
}

/**
 * Lets stand what was found before the work that started from a revision: what is new against the commit where the two
 * parted is kept, wherever it stands, and everything in an entry that has been touched. Throws a `UsageError` where there is no such revision.
 */
export function changedSieve(revision: string, paths: readonly string[], terminal: Terminal): Sieve {
  const { currentFolder } = terminal;
  const git = gitIn(currentFolder);
  const since = git.commit(revision);
  const parted = git.mergeBase(since, git.commit("HEAD")) ?? since;
  return (checked) => {
    terminal.progress(`Reading ${revision}`);
    const files = filesAt(git, parted, currentFolder);
    const there = (paths.length > 0 ? paths : ["."]).filter((path) => files.kindOf(resolve(currentFolder, path)));
    const before = there.length > 0 ? gathered(() => gather(files, currentFolder, there, () => undefined)) : undefined;
    if (!before) return { findings: checked.findings, notes: [] };
    const { house, documents, pathOf } = before;
    const progress = (done: number) => terminal.progress(`Computing ${revision}: ${done} of ${documents.length}`);
    const old = check(house, documents, { rules, pathOf, report: () => undefined, progress });
    const untouched = new Set(documents.flatMap(({ tree }) => tree.entries.map(textOf)));
    const fresh = new Set(
      withoutOld(
        checked.findings,
        old.findings.map(({ fingerprint }) => fingerprint),
      ).fresh,
    );
    const findings = checked.findings.filter((found) => fresh.has(found) || !untouched.has(textOf(found.entry)));
    const stood = checked.findings.length - findings.length;
    return {
      findings,
      notes: stood > 0 ? [`${showCount(stood, "finding")} from before the change ${stood === 1 ? "is" : "are"} not shown.`] : [],
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

/** Line breaks and what blank lines follow are no matter: an entry that only moved is the same. */
function textOf({ lines }: Entry): string {
  return lines
    .map(({ text }) => text.trimEnd())
    .join("\n")
    .trimEnd();
}
