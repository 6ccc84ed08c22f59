/** Prints a book in the forms that were asked for; chapters that print as before are not printed again. */
import type { Book, Chapter } from "../house/book/book.ts";
import { slugOf } from "../house/book/slugs.ts";
import { bookHtml, chapterHtml } from "../reports/book/html.ts";
import { backMarkdown, chapterMarkdown, frontMarkdown } from "../reports/book/markdown.ts";
import { whatPrints } from "../reports/book/what-prints.ts";
import type { OutputFile } from "./book-output.ts";
import { printPdf } from "./browser-pdf.ts";

export const bookForms = ["md", "html", "docx", "pdf"] as const;
export type BookForm = (typeof bookForms)[number];

export interface PrintedBook {
  readonly files: readonly OutputFile[];
  /** How many chapters were printed; the others are as they were. */
  readonly chapters: number;
}

interface PrintedChapter {
  readonly from: string;
  readonly html: string;
  readonly markdown: string;
}

/** A printer that remembers the chapters it printed last. */
export function bookPrinter(forms: readonly BookForm[]): (book: Book) => Promise<PrintedBook> {
  const known = new Map<string, PrintedChapter>();
  return async (book) => {
    let count = 0;
    const chapters = book.chapters.map((chapter) => {
      const from = whatPrints(book, chapter);
      const before = known.get(chapter.file);
      if (before?.from === from) return before;
      count++;
      const printed = { from, html: chapterHtml(book, chapter), markdown: chapterMarkdown(book, chapter) };
      known.set(chapter.file, printed);
      return printed;
    });
    return { files: await filesOf(book, chapters, forms), chapters: count };
  };
}

/** The first day that a zip file can note: a book must not differ by when it was made. */
const noDay = new Date(Date.UTC(1980, 0, 1));

async function filesOf(book: Book, chapters: readonly PrintedChapter[], forms: readonly BookForm[]): Promise<OutputFile[]> {
  const name = slugOf(book.title) || "book";
  const html = bookHtml(
    book,
    chapters.map((chapter) => chapter.html),
  );
  const made: Record<BookForm, () => OutputFile[] | Promise<OutputFile[]>> = {
    md: () => markdownFiles(book, chapters),
    html: () => [{ name: `${name}.html`, content: html }],
    docx: async () => {
      // Only this needs the library, which is slow to load.
      const { bookDocx } = await import("../reports/book/docx.ts");
      return [{ name: `${name}.docx`, content: await bookDocx(book, noDay) }];
    },
    pdf: async () => [{ name: `${name}.pdf`, content: await printPdf(html, "write the page with `--to html`") }],
  };
  const files: OutputFile[] = [];
  for (const form of bookForms) if (forms.includes(form)) files.push(...(await made[form]()));
  return files;
}

/** A folder of its own, laid out as the author's is, so that links and pictures hold. */
function markdownFiles(book: Book, chapters: readonly PrintedChapter[]): OutputFile[] {
  const back = backMarkdown(book);
  const texts = [
    frontMarkdown(book),
    ...book.chapters.map(({ file }: Chapter, index) => ({ name: file, text: chapters[index]!.markdown })),
    ...(back ? [back] : []),
  ];
  return [
    ...texts.map(({ name, text }) => ({ name: `markdown/${name}`, content: text })),
    ...[...book.pictures].map(([file, content]) => ({ name: `markdown/${file}`, content })),
  ];
}
