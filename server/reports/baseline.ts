/** Old findings that are let stand: a small file that is written once and only ever gets shorter. */
import { type Severity, severities } from "../house/settings.ts";
import type { Located } from "./check.ts";

/** What is known of a finding from an earlier look. */
export interface Known {
  readonly finding: string;
  /** How grave it was; a file that says nothing of that lets it stand however grave it is. */
  readonly severity?: Severity;
}

/** One finding of a baseline. */
export interface Old extends Known {
  /** From the folder of the baseline, with forward slashes; only to say where it was. */
  readonly file: string;
}

/** One line each and in order, so that a change of it is read in a review, and two branches seldom meet in a line. */
export function baselineText(olds: readonly Old[]): string {
  const order = ({ file, finding }: Old) => `${file}\n${finding}`;
  const sorted = [...olds].sort((one, other) => (order(one) < order(other) ? -1 : 1));
  const rows = sorted.map(({ file, severity, finding }) => `\n    ${JSON.stringify({ file, severity, finding })}`);
  return `{\n  "baseline": 1,\n  "findings": [${rows.join(",")}${rows.length > 0 ? "\n  " : ""}]\n}\n`;
}

/** Absent where the text is no baseline. */
export function readBaseline(text: string): readonly Old[] | undefined {
  try {
    const { baseline, findings } = JSON.parse(text) as { baseline?: unknown; findings?: unknown };
    if (baseline !== 1 || !Array.isArray(findings)) return undefined;
    const isOld = ({ file, finding, severity }: Record<string, unknown>) =>
      typeof file === "string" && typeof finding === "string" && (severity === undefined || severities.includes(severity as Severity));
    return findings.every(isOld) ? findings : undefined;
  } catch {
    return undefined;
  }
}

/** Takes out what is old: each of `olds` stands for one finding that is no graver. `gone` are those of which nothing is found any more. */
export function withoutOld<T extends Known>(findings: readonly Located[], olds: readonly T[]) {
  const left = new Map<string, T[]>();
  for (const old of olds) left.set(old.finding, [...(left.get(old.finding) ?? []), old]);
  for (const same of left.values()) same.sort((one, other) => gravityOf(one) - gravityOf(other));
  const fresh = findings.filter(({ finding: { severity }, fingerprint }) => {
    const same = left.get(fingerprint) ?? [];
    const index = same.findIndex((old) => gravityOf(old) >= severities.indexOf(severity));
    if (index >= 0) same.splice(index, 1);
    return index < 0;
  });
  const still = new Set(fresh.map(({ fingerprint }) => fingerprint));
  return { fresh, gone: new Set([...left.values()].flat().filter(({ finding }) => !still.has(finding))) };
}

function gravityOf({ severity }: Known): number {
  return severity === undefined ? severities.length : severities.indexOf(severity);
}
