/** Which files are a book's chapters: those that its `chapters:` lists, else every Markdown text beside it. */
import type { Entry, Words } from "../../../grammar/tree.ts";
import { folderOf } from "../document.ts";
import { findFieldIn } from "../entry.ts";

export interface ListedChapter {
  /** From the book's folder, with forward slashes. */
  readonly file: string;
  /** As it is written, on this line of the book. */
  readonly words: Words;
  readonly line: number;
}

/** The chapters that a book lists, in its order; none where it lists none. */
export function listedChapters(book: Entry): readonly ListedChapter[] {
  const found = findFieldIn(book, "chapters");
  return (found?.field.items ?? []).map((words) => ({ file: words.text.replace(/^\.\//, ""), words, line: found!.line }));
}

/** Whether a file, given by its path from the book's folder, is a chapter. */
export function isChapterFile(book: Entry, file: string): boolean {
  const listed = listedChapters(book);
  return listed.length === 0 ? !file.includes("/") : listed.some((one) => one.file === file);
}

/** Whether a text is a chapter of the book that another declares. */
export function isChapterUri(book: Entry, bookUri: string, uri: string): boolean {
  const folder = `${folderOf(bookUri)}/`;
  if (!uri.startsWith(folder)) return false;
  try {
    return isChapterFile(book, decodeURIComponent(uri.slice(folder.length)));
  } catch {
    return false;
  }
}
