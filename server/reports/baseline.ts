/** Old findings that are let stand: a small file that is written once and only ever gets shorter. */
import type { Located } from "./check.ts";

/** One finding of a baseline. */
export interface Old {
  /** From the folder of the baseline, with forward slashes; only to say where it was. */
  readonly file: string;
  readonly finding: string;
}

/** One line each and in order, so that a change of it is read in a review, and two branches seldom meet in a line. */
export function baselineText(olds: readonly Old[]): string {
  const order = ({ file, finding }: Old) => `${file}\n${finding}`;
  const sorted = [...olds].sort((one, other) => (order(one) < order(other) ? -1 : 1));
  const rows = sorted.map(({ file, finding }) => `\n    ${JSON.stringify({ file, finding })}`);
  return `{\n  "baseline": 1,\n  "findings": [${rows.join(",")}${rows.length > 0 ? "\n  " : ""}]\n}\n`;
}

/** Absent where the text is no baseline. */
export function readBaseline(text: string): readonly Old[] | undefined {
  try {
    const { baseline, findings } = JSON.parse(text) as { baseline?: unknown; findings?: unknown };
    if (baseline !== 1 || !Array.isArray(findings)) return undefined;
    return findings.every(({ file, finding }) => typeof file === "string" && typeof finding === "string") ? findings : undefined;
  } catch {
    return undefined;
  }
}

/** Takes out what is old: each key of `olds` stands for one finding only. `gone` counts the keys that no finding has. */
export function withoutOld(findings: readonly Located[], olds: readonly string[], keyOf: (found: Located) => string) {
  const left = new Map<string, number>();
  for (const old of olds) left.set(old, (left.get(old) ?? 0) + 1);
  const fresh = findings.filter((found) => {
    const count = left.get(keyOf(found)) ?? 0;
    if (count > 0) left.set(keyOf(found), count - 1);
    return count === 0;
  });
  return { fresh, gone: left };
}
