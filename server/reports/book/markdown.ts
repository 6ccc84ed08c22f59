/**
 * A book as plain Markdown, for any other toolchain: the author's text to the letter, with what its
 * directives and fences stand for in their place.
 */
import { isSpec } from "../../../grammar/markdown.ts";
import type { Book, Chapter } from "../../house/book/book.ts";
import { meaningOfToken } from "../../house/book/meaning.ts";
import type { Block, Section, Words } from "./blocks.ts";
import { type Linking, plain, recipeLines, tableLines, wordsIn } from "./markdown-recipe.ts";
import { backSections, frontSection, partBlocks } from "./parts.ts";

/** The name of a file and its text. */
export interface MarkdownFile {
  readonly name: string;
  readonly text: string;
}

/** What stands before the chapters: the title, and the contents unless a chapter has them. */
export function frontMarkdown(book: Book): MarkdownFile {
  const { title, subtitle, author, rights } = book;
  const lines = [`# ${plain(title)}`, subtitle && `*${plain(subtitle)}*`, author && plain(author), rights && plain(rights)];
  const contents = frontSection(book);
  const name = freeName(book, frontFile);
  const blocks = lines.flatMap((line) => (line ? [line] : []));
  return { name, text: joined([...blocks, ...(contents ? sectionLines(contents, linking(book, name), 2) : [])]) };
}

/** What stands behind them; absent where everything is in its place. */
export function backMarkdown(book: Book): MarkdownFile | undefined {
  const sections = backSections(book);
  if (sections.length === 0) return undefined;
  const name = freeName(book, backFile);
  return { name, text: joined(sections.flatMap((section) => sectionLines(section, linking(book, name), 1))) };
}

const [frontFile, backFile] = ["front-matter.md", "back-matter.md"];

/** A chapter may be called so already. */
function freeName(book: Book, name: string): string {
  return book.chapters.some(({ file }) => file === name) ? freeName(book, `book-${name}`) : name;
}

/** A chapter's text. Whatever is no directive and no fence of specs is as it was, to the byte. */
export function chapterMarkdown(book: Book, chapter: Chapter): string {
  const lines = linesOf(chapter.text);
  const eol = lines.find((line) => line.eol)?.eol ?? "\n";
  const link = linking(book, chapter.file);
  // The last on a line first, so that the others stay where they are.
  for (const { line, start, end, text, id } of [...chapter.said].reverse()) {
    const one = lines[line]!;
    one.text = one.text.slice(0, start) + wordsIn([id ? { text, to: id } : text], link) + one.text.slice(end);
  }
  // A byte order mark stays first, and is no margin of the block behind it.
  const mark = /^\uFEFF?/.exec(lines[0]!.text)![0];
  lines[0]!.text = lines[0]!.text.slice(mark.length);
  let level = 1;
  for (const token of chapter.tokens) {
    if (token.type === "heading_open") level = Number(token.tag.slice(1));
    const meaning = meaningOfToken(token);
    const isHidden = isSpec(token);
    if (token.map && (meaning.recipes || meaning.part || isHidden)) {
      const blocks = meaning.part
        ? partBlocks(book, meaning.part).flatMap((block) => blockLines(block, link, level + 1))
        : (meaning.recipes ?? []).flatMap((printed) => recipeLines(printed, link));
      putBlock(lines, token.map, blocks, eol);
    }
  }
  return mark + lines.map((line) => (line.gone ? "" : line.text + line.eol)).join("");
}

interface Line {
  text: string;
  eol: string;
  gone?: boolean;
}

function linesOf(text: string): Line[] {
  return [...text.matchAll(/([^\r\n]*)(\r\n|\r|\n|$)/g)].map(([, line, eol]) => ({ text: line!, eol: eol! }));
}

/** Puts blocks in the place of lines, inside whatever list or quote holds these. */
function putBlock(lines: Line[], [start, end]: [number, number], blocks: readonly string[], eol: string): void {
  const first = /^[\s>]*(?:[-*+]\s+|\d+[.)]\s+)*/.exec(lines[start]!.text)?.[0] ?? "";
  const further = first.replace(/[^\s>]/g, " ");
  const [before, after] = [lines[start - 1], lines[end]];
  const apart = (line: Line | undefined) => line !== undefined && line.text.replace(/^[\s>]*/, "") !== "";
  const text = joined(blocks).trimEnd().split("\n");
  const written = text.map((line, index) => ((index === 0 ? first : further) + line).trimEnd());
  const all = [
    ...(apart(before) && first === further ? [further.trimEnd()] : []),
    ...written,
    ...(apart(after) ? [further.trimEnd()] : []),
  ];
  const ending = lines[end - 1]!.eol;
  for (let line = start; line < end; line++) lines[line]!.gone = true;
  lines[start] = blocks.length === 0 ? { text: "", eol: "", gone: true } : { text: all.join(eol), eol: ending };
}

function sectionLines({ title, blocks }: Section, link: Linking, level: number): string[] {
  return [heading(level, title), ...blocks.flatMap((block) => blockLines(block, link, level + 1))];
}

/** Each of the texts is a block of Markdown. */
function blockLines(block: Block, link: Linking, level: number): string[] {
  switch (block.kind) {
    case "heading":
      return [heading(level, block.text)];
    case "paragraph":
      return [wordsIn(block.words, link)];
    case "contents":
    case "list":
      return [listLines(block.items, link, "").join("\n")];
    case "index":
      return [block.entries.map(({ term, words }) => `- ${plain(term)}${words.length > 0 ? `: ${several(words, link)}` : ""}`).join("\n")];
    case "table":
      return [
        `**${plain(block.caption)}**`,
        tableLines(
          block.columns,
          block.rows.map((row) => row.map((words) => wordsIn(words, link))),
        ),
      ];
    case "recipe":
      return recipeLines(block.printed, link);
  }
}

function listLines(items: Extract<Block, { kind: "list" }>["items"], link: Linking, indent: string): string[] {
  return items.flatMap(({ words, items: below }) => [`${indent}- ${wordsIn(words, link)}`, ...listLines(below ?? [], link, `${indent}  `)]);
}

function several(words: readonly Words[], link: Linking): string {
  return words.map((one) => wordsIn(one, link)).join(", ");
}

function heading(level: number, text: string): string {
  return `${"#".repeat(Math.min(6, level))} ${plain(text)}`;
}

function joined(blocks: readonly string[]): string {
  return `${blocks.join("\n\n")}\n`;
}

/** Links go to the file that holds what they mean, unless it is this one. */
function linking(book: Book, from: string): Linking {
  const to = (id: string) => {
    const file = fileOf(book, id);
    return file === undefined || file === from ? `#${id}` : `${relative(from, file)}#${id}`;
  };
  return { book, to };
}

function fileOf(book: Book, id: string): string | undefined {
  const chapter = book.chapters.find((one) => one.id === id || one.recipes.some((printed) => printed.id === id) || holds(one, id));
  return (
    chapter?.file ??
    (backSections(book).some((section) => section.id === id) || book.recipes.some((one) => one.id === id)
      ? freeName(book, backFile)
      : undefined)
  );
}

function holds({ tokens }: Chapter, id: string): boolean {
  return tokens.some((token) => token.type === "heading_open" && meaningOfToken(token).id === id);
}

function relative(from: string, to: string): string {
  const up = from
    .split("/")
    .slice(1)
    .map(() => "../")
    .join("");
  return up + to.split("/").map(encodeURIComponent).join("/");
}
