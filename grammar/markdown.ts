/**
 * The specs inside a Markdown text: its fenced blocks tagged `drink`, wherever they are nested.
 *
 * They are read as one tree that has as many lines as the text: a block's line stands under its own
 * number, without what the list or the quote around it puts before it (its margin), and every other
 * line reads as blank. So a place in the tree is the place in the text but for the margin.
 */
import MarkdownIt from "markdown-it";
import { indentWidth } from "./characters.ts";
import { readParts, splitLines } from "./read.ts";
import type { Tree } from "./tree.ts";

/** For each line of the text what stands before the spec's line, often nothing; absent where the line is in no block. */
export type Margins = readonly (string | undefined)[];

export interface MarkdownSpecs {
  readonly tree: Tree;
  readonly margins: Margins;
}

/** Only the blocks of a text are looked for, not what is in a paragraph. */
const markdown = new MarkdownIt("commonmark");
markdown.core.ruler.enableOnly(["normalize", "block"]);

/** Whether a text may hold a spec: quick, and never wrong when it says no. */
export function mayHoldSpecs(text: string): boolean {
  return /(?:```|~~~)[ \t]*drink\b/.test(text);
}

/** Reads any Markdown text. Never throws. */
export function readMarkdown(text: string): MarkdownSpecs {
  const raw: { text: string; eol: string }[] = [];
  splitLines(text, (line, eol) => raw.push({ text: line, eol }));
  const margins: (string | undefined)[] = raw.map(() => undefined);
  const fences = mayHoldSpecs(text) ? markdown.parse(text, {}).filter(isSpec) : [];
  for (const { content, map } of fences) {
    const [opening, end] = map!;
    const lines = content === "" ? [] : content.replace(/\n$/, "").split("\n");
    for (const [index, line] of lines.entries()) {
      const at = opening + 1 + index;
      margins[at] = raw[at]!.text.slice(0, startOf(line, raw[at]!.text));
    }
    // The line being begun under a block that nobody has closed yet is the block's.
    const isClosed = opening + 1 + lines.length < end;
    if (!isClosed && end === raw.length - 1 && (margins[end - 1] ?? "") === "") margins[end] = "";
  }
  const lines = raw.map(({ text, eol }, line) => ({ text: text.slice(margins[line]?.length ?? text.length), eol }));
  return { tree: readBetween(lines, margins), margins };
}

/** Reads the lines of such a tree again, after an edit that added none and took none away. */
export function readWithin(text: string, margins: Margins): Tree {
  const lines: { text: string; eol: string }[] = [];
  splitLines(text, (line, eol) => lines.push({ text: line, eol }));
  return readBetween(lines, margins);
}

/** A fence's own line is in no block, so that two blocks never touch. */
function readBetween(lines: readonly { readonly text: string; readonly eol: string }[], margins: Margins): Tree {
  return readParts(lines, (line) => (margins[line] === undefined) !== (margins[line - 1] === undefined));
}

function isSpec({ type, info }: { type: string; info: string }): boolean {
  return type === "fence" && /^drink(?!\S)/.test(info.trim());
}

/** Where a block's line starts in the text's line. Tabs that a list takes part of are blanks in the block. */
function startOf(line: string, text: string): number {
  if (text.endsWith(line)) return text.length - line.length;
  const width = indentWidth(line);
  let start = text.length - line.trimStart().length;
  while (start > 0 && /[ \t]/.test(text[start - 1]!) && indentWidth(text.slice(start)) < width) start--;
  return start;
}
