/** `mutchkin diff`: what changed between two states, as drinks. */
import { diff } from "../reports/diff.ts";
import { diffHtml } from "../reports/diff-html.ts";
import { diffMarkdown } from "../reports/diff-markdown.ts";
import type { DiffReport } from "../reports/diff-schema.ts";
import { diffText } from "../reports/diff-text.ts";
import { exitCodes } from "./exit-codes.ts";
import { sidesOf } from "./sides.ts";
import type { Terminal } from "./terminal.ts";

const formats = {
  text: (report: DiffReport, { look }: Terminal) => diffText(report, look),
  markdown: (report: DiffReport) => diffMarkdown(report),
  html: (report: DiffReport) => diffHtml(report),
  json: (report: DiffReport) => `${JSON.stringify(report, null, 2)}\n`,
};

export type DiffFormat = keyof typeof formats;
export const diffFormats = Object.keys(formats) as DiffFormat[];

/** Prints the comparison; answers the exit code. That something changed is no fault. */
export function diffCommand(asked: readonly string[], { format }: { readonly format: DiffFormat }, terminal: Terminal): number {
  const { before, after, names, pathOf, wanted, unread } = sidesOf(terminal.files, terminal.currentFolder, asked);
  const progress = (done: number, all: number) => terminal.progress(`Comparing ${done} of ${all}`);
  const report = diff({ before, after }, { ...names, pathOf, wanted, progress });
  terminal.progress("");
  for (const { path, why } of unread) terminal.complain(`“${path}” could not be read: ${why}.\n`);
  terminal.print(formats[format](report, terminal));
  return unread.length > 0 ? exitCodes.failed : exitCodes.clean;
}
