/** One chapter as it will print, for a page beside it in the editor. */
import { type Book, type Chapter, readBook } from "../../house/book/book.ts";
import type { ChapterText } from "../../house/book/chapters.ts";
import { meaningOfToken } from "../../house/book/meaning.ts";
import { bookIn } from "../../house/book/style.ts";
import type { SpecDocument } from "../../house/document.ts";
import type { House } from "../../house/house.ts";
import { escapeHtml } from "../html.ts";
import { chapterHtml } from "./html.ts";
import { bookCss } from "./html-style.ts";

export interface Preview {
  readonly title: string;
  /** A style and a body: plain HTML without a script, in which everything is escaped. */
  readonly css: string;
  readonly body: string;
  /** What prints nothing, or not as it is meant, with the line it stands on, counted from 0. */
  readonly problems: readonly { readonly text: string; readonly line: number }[];
}

/** `texts`: the book's Markdown texts, this one among them. Pictures are told by their words: no file is read for a preview. */
export function previewOf(house: House, document: SpecDocument, texts: readonly ChapterText[]): Preview | { readonly problem: string } {
  const entry = bookIn(house, house.scopeOf(document));
  if (!entry)
    return { problem: "This text belongs to no book, so nothing says how it prints. Write `book` and a title into a spec file beside it." };
  const book = readBook(house, entry, { texts });
  const file = texts.find(({ uri }) => uri === document.uri)?.file;
  const chapter = book.chapters.find((one) => one.file === file);
  if (!chapter) return { problem: `“${file}” is no chapter of ${book.title}: name it in the book's \`chapters:\`.` };
  return { title: chapter.title, css: bookCss(book.style), body: bodyOf(book, chapter), problems: problemsOf(book, chapter) };
}

/** With the lines, counted from 0, that its blocks stand on. */
function bodyOf(book: Book, chapter: Chapter): string {
  for (const token of chapter.tokens) if (token.map && token.nesting === 1) token.attrSet("data-line", String(token.map[0]));
  const html = chapterHtml(book, chapter);
  const named = chapter.tokens.flatMap((token) => {
    const { id } = token.type === "heading_open" ? meaningOfToken(token) : {};
    return id && token.map ? [{ id, line: token.map[0] }] : [];
  });
  const recipes = chapter.recipes.map(({ id, line }) => ({ id, line: line - 1 }));
  return [...named, ...recipes].reduce((text, { id, line }) => {
    const written = `id="${escapeHtml(id)}"`;
    return text.replace(written, () => `${written} data-line="${line}"`);
  }, html);
}

function problemsOf({ problems }: Book, { file }: Chapter): Preview["problems"] {
  return problems.flatMap((one) => (one.file === file ? [{ text: `${one.what} ${one.todo}`, line: one.line - 1 }] : []));
}
