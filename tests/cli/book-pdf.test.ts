/** Where no browser prints the PDF of a book, what to do is said in the book's own options. */
import { expect, onTestFinished, test } from "vitest";
import { bookPrinter } from "../../server/cli/book-printer.ts";
import { bookOf, ferryBook } from "../reports/book/books.ts";

test("a book without a browser is told of `--to html`, not of a card's options", async () => {
  const before = process.env.CHROME_PATH;
  onTestFinished(() => {
    if (before === undefined) delete process.env.CHROME_PATH;
    else process.env.CHROME_PATH = before;
  });
  process.env.CHROME_PATH = "/no browser";
  await expect(bookPrinter(["pdf"])(bookOf(ferryBook))).rejects.toMatchObject({
    message: "CHROME_PATH names “/no browser”, and nothing stands there.",
    todo: "Set CHROME_PATH to the browser's program, or write the page with `--to html`: opened in any browser, it prints the same.",
  });
});
