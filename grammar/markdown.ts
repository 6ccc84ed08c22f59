/**
 * A Markdown text with specs: its fenced blocks tagged `drink`, wherever they are nested, and the
 * directives in what is written around them.
 *
 * It is read as one tree that has as many lines as the text. A block's line stands under its own
 * number, without what the list or the quote around it puts before it (its margin); a line of running
 * text stands there whole, and whatever else Markdown may hold reads as blank. So a place in the tree
 * is the place in the text but for the margin.
 */
import MarkdownIt, { type Token } from "markdown-it";
import { indentWidth } from "./characters.ts";
import { directiveAt, mayHoldDirectives, moved } from "./directives.ts";
import { type PartLine, readParts, splitLines } from "./read.ts";
import type { BlankLine, Directive, TextLine, Tree } from "./tree.ts";

/**
 * For each line of the text what stands before the spec's line, often nothing; absent where the line is in no
 * block. Null is running text right behind a block that nobody closed: what a block says of the line behind it,
 * where its fence closes, is not said of that.
 */
export type Margins = readonly (string | null | undefined)[];

export interface MarkdownSpecs {
  readonly tree: Tree;
  readonly margins: Margins;
}

/** The reader of all Markdown here. A directive is a token of type `directive`, with what it says in its `meta` and as it is written in its `content`. */
export const markdown = new MarkdownIt("commonmark").enable("table");
markdown.inline.ruler.before("link", "directive", (state, silent) => {
  const found = directiveAt(state.src, state.pos, false);
  if (!found) return false;
  if (!silent) {
    const token = state.push("directive", "", 0);
    [token.meta, token.content] = [found, state.src.slice(found.start, found.end)];
  }
  state.pos = found.end;
  return true;
});
markdown.block.ruler.before(
  "paragraph",
  "directive",
  (state, line, _end, silent) => {
    const start = state.bMarks[line]! + state.tShift[line]!;
    const text = state.src.slice(start, state.eMarks[line]).trimEnd();
    const found = directiveAt(text, 0, true);
    if (!found || found.end !== text.length || state.sCount[line]! - state.blkIndent >= 4) return false;
    if (silent) return true;
    const token = state.push("directive", "", 0);
    [token.meta, token.content, token.map, token.block] = [found, text, [line, line + 1], true];
    state.line = line + 1;
    return true;
  },
  { alt: ["paragraph", "reference", "blockquote"] },
);

/** Whether a text may hold a spec or a directive: quick, and never wrong when it says no. */
export function mayHoldSpecs(text: string): boolean {
  return /(?:```|~~~)[ \t]*drink\b/.test(text) || mayHoldDirectives(text);
}

/** Reads any Markdown text. Never throws. */
export function readMarkdown(text: string): MarkdownSpecs {
  const raw = linesOf(text);
  const margins: (string | null | undefined)[] = raw.map(() => undefined);
  const outside: (TextLine | undefined)[] = raw.map(() => undefined);
  const blocks = blocksOf(text);
  let row: [number, number] | null = null;
  for (const [index, block] of blocks.entries()) {
    if (block.type === "tr_open") row = block.map;
    // A cell knows no line, its row does.
    const map = block.map ?? row;
    if (isSpec(block)) takeSpec(block, raw, margins);
    else if (block.type === "directive") takeDirectives([block.meta], block.map![0], 0, raw, outside);
    else if (block.type === "inline" && map) takeText(block, map[0], levelOf(blocks[index - 1]), raw, outside);
  }
  for (const line of outside.keys()) if (outside[line] && typeof margins[line - 1] === "string") margins[line] ??= null;
  const lines = raw.map(({ text, eol }, line) => ({ text: text.slice(margins[line]?.length ?? 0), eol }));
  return { tree: readBetween(lines, margins, outside), margins };
}

/** Reads the lines of such a tree again, after an edit that added none and took none away. */
export function readWithin(text: string, { tree, margins }: MarkdownSpecs): Tree {
  const lines = linesOf(text);
  const before = tree.entries.flatMap((entry) => entry.lines.map(({ content }) => (content.kind === "text" ? content : undefined)));
  const outside = before.map((line) => line && { ...line, directives: [] as readonly Directive[] });
  for (const [line, there] of before.entries()) takeDirectives(there?.directives ?? [], line, 0, lines, outside);
  return readBetween(lines, margins, outside);
}

/** Whether a token is a block of specs. */
export function isSpec({ type, info }: Pick<Token, "type" | "info">): boolean {
  return type === "fence" && /^drink(?!\S)/.test(info.trim());
}

const blank: BlankLine = { kind: "blank" };

/** A fence's own line is in no block, so that two blocks never touch. */
function readBetween(lines: readonly PartLine[], margins: Margins, outside: readonly (TextLine | undefined)[]): Tree {
  return readParts(
    lines.map(({ text, eol }, line): PartLine => {
      if (typeof margins[line] === "string") return { text, eol };
      const content = outside[line];
      return content ? { text, eol, outside: content } : { text: "", eol, outside: blank };
    }),
  );
}

function linesOf(text: string): PartLine[] {
  const raw: PartLine[] = [];
  splitLines(text, (line, eol) => raw.push({ text: line, eol }));
  return raw;
}

/** The blocks alone: what is in a paragraph is looked at where there may be a directive. */
function blocksOf(text: string): Token[] {
  const tokens: Token[] = [];
  // A byte order mark is nothing, but takes a place.
  markdown.block.parse(
    text
      .replace(/^\uFEFF/, " ")
      .replaceAll(/\r\n?/g, "\n")
      .replaceAll("\0", "\uFFFD"),
    markdown,
    {},
    tokens,
  );
  return tokens;
}

function takeSpec({ content, map }: Token, raw: readonly PartLine[], margins: (string | null | undefined)[]): void {
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

function levelOf(opening: Token | undefined): number | undefined {
  return opening?.type === "heading_open" ? Number(opening.tag.slice(1)) : undefined;
}

function takeText(
  { content }: Token,
  first: number,
  level: number | undefined,
  raw: readonly PartLine[],
  outside: (TextLine | undefined)[],
): void {
  const parts = content.split("\n");
  for (const index of parts.keys()) outside[first + index] ??= { kind: "text", ...(index === 0 && level && { level }), directives: [] };
  if (!mayHoldDirectives(content)) return;
  let [line, start] = [0, 0];
  for (const directive of directivesIn(content)) {
    while (start + parts[line]!.length < directive.start) start += parts[line++]!.length + 1;
    takeDirectives([moved(directive, -start)], first + line, Math.max(0, raw[first + line]!.text.indexOf(parts[line]!)), raw, outside);
  }
}

/** A paragraph that stays as it is while another is typed in is not read again. */
const known = new Map<string, readonly Directive[]>();
const mostKnown = 10_000;

function directivesIn(content: string): readonly Directive[] {
  const before = known.get(content);
  if (before) return before;
  const tokens: Token[] = [];
  markdown.inline.parse(content, markdown, {}, tokens);
  const found = tokens.flatMap(({ type, meta }) => (type === "directive" ? [meta as Directive] : []));
  if (known.size >= mostKnown) known.clear();
  known.set(content, found);
  return found;
}

/** Puts directives on a line, found so far behind its start; a cell of a table may say them elsewhere. */
function takeDirectives(
  directives: readonly Directive[],
  line: number,
  offset: number,
  raw: readonly PartLine[],
  outside: (TextLine | undefined)[],
): void {
  const { text } = raw[line]!;
  for (const directive of directives) {
    const there = outside[line] ?? { kind: "text", directives: [] };
    const after = Math.max(directive.start + offset, there.directives.at(-1)?.end ?? 0);
    const opening = `${directive.block ? "::" : ":"}${directive.name.text}`;
    const start = text.startsWith(opening, after) ? after : text.indexOf(opening, after);
    const found = start < 0 ? undefined : directiveAt(text, start, directive.block);
    if (found) outside[line] = { ...there, directives: [...there.directives, found] };
  }
}

/** Where a block's line starts in the text's line. Tabs that a list takes part of are blanks in the block. */
function startOf(line: string, text: string): number {
  if (text.endsWith(line)) return text.length - line.length;
  const width = indentWidth(line);
  let start = text.length - text.trimStart().length;
  while (start > 0 && /[ \t]/.test(text[start - 1]!) && indentWidth(text.slice(start)) < width) start--;
  return start;
}
