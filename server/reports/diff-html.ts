/** `mutchkin diff` as a page of its own: nothing is fetched, it prints, and it reads aloud in order. */
import MarkdownIt from "markdown-it";
import { diffMarkdown } from "./diff-markdown.ts";
import type { DiffReport } from "./diff-schema.ts";

export function diffHtml(report: DiffReport): string {
  const markdown = new MarkdownIt("commonmark", { html: false });
  const { escapeHtml } = markdown.utils;
  const title = escapeHtml(`Drinks: ${report.before} → ${report.after}`);
  const body = markdown.render(diffMarkdown(report)).replaceAll(/<(\/?)h(\d)>/g, (_, slash, level) => `<${slash}h${Number(level) - 1}>`);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>
:root { color-scheme: light dark; }
body { font: 1rem/1.5 system-ui, sans-serif; max-width: 46rem; margin: 2rem auto; padding: 0 1rem; color: CanvasText; background: Canvas; }
h1 { font-size: 1.5rem; line-height: 1.25; }
h2 { font-size: 1.15rem; margin-top: 2rem; border-top: 1px solid; padding-top: 1rem; }
h3 { font-size: 1rem; margin: 1.25rem 0 0.25rem; }
ul { margin: 0; padding-left: 1.25rem; }
li { break-inside: avoid; }
h1, h2, h3 { break-after: avoid; }
@media print { body { font-size: 10pt; margin: 0; max-width: none; } }
</style>
</head>
<body>
<main>
${body}</main>
</body>
</html>
`;
}
