/** Which files are a book's chapters: those that its `chapters:` lists, else every Markdown text beside it. */
import type { Entry, Words } from "../../../grammar/tree.ts";
import { folderOf } from "../document.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";

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
  const file = pathFrom(bookUri, uri);
  return file !== undefined && isChapterFile(book, file);
}

/** Where a text lies from the folder of the book on, as `chapters:` names it; absent for one that lies elsewhere. */
export function pathFrom(bookUri: string, uri: string): string | undefined {
  const folder = `${folderOf(bookUri)}/`;
  if (!uri.startsWith(folder)) return undefined;
  try {
    return decodeURIComponent(uri.slice(folder.length));
  } catch {
    return undefined;
  }
}

/** Tells of a URI whether it is a chapter of one of a house's books, as they are now. */
export function chaptersOf(house: House): (uri: string) => boolean {
  const books = [...house.documents()].flatMap(({ uri, tree }) =>
    tree.entries.flatMap((book) => (book.kind === "book" ? [{ book, uri }] : [])),
  );
  return (uri) => books.some((one) => isChapterUri(one.book, one.uri, uri));
}
