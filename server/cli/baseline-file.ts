/** `mutchkin check --baseline`: a file of old findings that are let stand, read and written. */
import { dirname, relative, resolve, sep } from "node:path";
import { showCount } from "../house/show.ts";
import { baselineText, type Old, readBaseline, withoutOld } from "../reports/baseline.ts";
import type { Checked } from "../reports/check.ts";
import { Unreadable } from "./files.ts";
import type { Sieve } from "./sieve.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { writeText } from "./write-text.ts";

/** Lets the findings of a baseline file stand. Throws a `UsageError` where that file is none. */
export function baselineSieve(name: string, { files, currentFolder }: Terminal): Sieve {
  const path = resolve(currentFolder, name);
  const olds = baselineIn(files.kindOf(path) === "file" ? readText(files, path, name) : undefined, name);
  const fileOf = ({ file }: Old) => resolve(dirname(path), file);
  return (checked) => {
    const { fresh, gone } = withoutOld(checked.findings, olds);
    const looked = new Set(checked.files.map((file) => resolve(currentFolder, file)));
    // Of a file that was not asked for nothing is known, but that it is no more.
    const lost = [...gone].filter((old) => looked.has(fileOf(old)) || !files.kindOf(fileOf(old))).length;
    return { findings: fresh, notes: baselineNotes(checked.findings.length - fresh.length, lost, name) };
  };
}

function baselineNotes(stood: number, lost: number, name: string): string[] {
  const again = `Write it again with \`--write-baseline ${name}\`, so that ${lost === 1 ? "it stays" : "they stay"} away.`;
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
    severity: finding.severity,
    finding: fingerprint,
  }));
  writeText(files, path, name, baselineText(olds));
}
