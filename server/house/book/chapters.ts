/** Which texts are a book's chapters, and what is read off each before anything is put in its place. */
import type { Token } from "markdown-it";
import { isSpec, markdown } from "../../../grammar/markdown.ts";
import type { Directive, Entry } from "../../../grammar/tree.ts";
import { fileNameOf, type SpecDocument } from "../document.ts";
import type { House } from "../house.ts";
import { fold } from "../names.ts";
import { capital } from "../show.ts";
import { isChapterFile, listedChapters } from "./chapter-files.ts";
import type { BookProblem } from "./problems.ts";
import { meaningOf } from "./saying.ts";

/** A Markdown text beside the book, with or without specs in it. */
export interface ChapterText {
  /** From the book's folder, with forward slashes. */
  readonly file: string;
  readonly uri: string;
  readonly text: string;
}

/** A recipe where a chapter prints it. */
export interface Place {
  readonly entry: Entry;
  /** The token that stands for it: a fence may hold several. */
  readonly token: Token;
  /** Of the file, counted from 1. */
  readonly line: number;
  /** The level of heading that its name has, 1 to 6. */
  readonly level: number;
  /** The author's heading that names it, where one does: its name is not printed again. */
  readonly heading?: Token;
}

export interface ReadChapter extends ChapterText {
  readonly document: SpecDocument | undefined;
  readonly tokens: Token[];
  readonly places: readonly Place[];
}

/** The texts of the chapters in the book's order. */
export function chapterTexts(entry: Entry, bookFile: string, bookLine: number, texts: readonly ChapterText[], problems: BookProblem[]) {
  const sorted = [...texts].sort((one, other) => (one.file < other.file ? -1 : 1));
  const listed = listedChapters(entry);
  if (listed.length === 0) return sorted.filter(({ file }) => isChapterFile(entry, file));
  const chosen: ChapterText[] = [];
  for (const { file: name, words, line } of listed) {
    const found = texts.find(({ file }) => file === name);
    const at = { file: bookFile, line: bookLine + line, column: words.start + 1 };
    if (found && !chosen.includes(found)) chosen.push(found);
    else if (found) problems.push({ ...at, what: `“${words.text}” is a chapter already.`, todo: "Name each chapter once." });
    else {
      const names = sorted.map(({ file }) => file).join(", ");
      const todo = names ? `The Markdown files here are ${names}.` : "No Markdown file lies beside the book.";
      problems.push({ ...at, what: `There is no chapter “${words.text}” beside the book.`, todo });
    }
  }
  return chosen;
}

/** Reads a chapter: its blocks, and the recipes in it in the order of print. */
export function readChapter(house: House, given: ChapterText): ReadChapter {
  const document = house.document(given.uri);
  // A byte order mark is no part of what is said; in the text it stays, since places count it.
  const tokens = markdown.parse(given.text.replace(/^\uFEFF/, ""), {});
  const places: Place[] = [];
  let heading: { token: Token; level: number; text: string } | undefined;
  for (const [index, token] of tokens.entries()) {
    if (token.type === "heading_open") {
      heading = { token, level: Number(token.tag.slice(1)), text: tokens[index + 1]?.content ?? "" };
    }
    for (const { entry, line } of recipesAt(house, document, token)) {
      const isNamed =
        heading !== undefined && fold(heading.text) === fold(entry.name!.text) && places.every((one) => one.heading !== heading?.token);
      const level = isNamed ? heading!.level : Math.min(6, (heading?.level ?? 1) + (isUnderRecipe(places, heading?.token) ? 0 : 1));
      places.push({ entry, token, line, level, ...(isNamed && { heading: heading!.token }) });
    }
  }
  return { ...given, document, tokens, places };
}

/** Behind a recipe whose name is a heading, the next one without a heading is its neighbour, not a part of it. */
function isUnderRecipe(places: readonly Place[], heading: Token | undefined): boolean {
  return heading !== undefined && places.some((one) => one.heading === heading);
}

function recipesAt(house: House, document: SpecDocument | undefined, token: Token): { entry: Entry; line: number }[] {
  if (!document || !token.map) return [];
  const [start, end] = token.map;
  if (token.type === "directive" && (token.meta as Directive).name.text === "spec") {
    const meant = meaningOf(house, house.scopeOf(document), token.meta as Directive);
    return "row" in meant && meant.recipe?.name ? [{ entry: meant.recipe, line: start + 1 }] : [];
  }
  if (!isSpec(token)) return [];
  return document.tree.entries.flatMap((entry, index) => {
    const line = document.tree.starts[index]!;
    const isRecipe = (entry.kind === "drink" || entry.kind === "prep") && entry.name;
    return isRecipe && line > start && line < end ? [{ entry, line: line + 1 }] : [];
  });
}

/** What a chapter without a heading is called. */
export function titleOfFile(uri: string): string {
  return capital(
    fileNameOf(uri)
      .replace(/\.\w+$/, "")
      .replace(/^[\d\s._-]+(?=\D)/, "")
      .replaceAll(/[-_]+/g, " "),
  );
}
