/** A chapter as it will print, with what is typed and not saved. The book's texts are read for it, so it answers later than a feature. */
import type { TextDocumentIdentifier } from "vscode-languageserver";
import { pathFrom } from "../house/book/chapter-files.ts";
import { bookIn } from "../house/book/style.ts";
import { folderOf } from "../house/document.ts";
import { type Preview, previewOf } from "../reports/book/preview.ts";
import { longRequest } from "./long-request.ts";
import type { Context } from "./request.ts";

interface Params {
  readonly textDocument: TextDocumentIdentifier;
}

export const previewRequest = longRequest<Params>("mutchkin/preview", {
  does: "our own: a chapter of a book as it will print, as a `title`, a `css` and a `body` of HTML with the `problems` in it; else a `problem`",
  empty: { problem: "The preview failed; the output says why." },
  answer: preview,
});

async function preview({ textDocument: { uri } }: Params, { workspace }: Context): Promise<Preview | { readonly problem: string }> {
  const before = workspace.document(uri);
  if (!before) return { problem: "Open this text in a folder first: only there is it known which book it belongs to." };
  const { house } = workspace;
  const book = bookIn(house, house.scopeOf(before));
  const bookUri = book && house.getDocumentOf(book).uri;
  const texts = bookUri === undefined ? [] : await workspace.markdownIn(folderOf(bookUri));
  const named = texts.flatMap((one) => {
    const file = pathFrom(bookUri!, one.uri);
    return file === undefined ? [] : [{ ...one, file }];
  });
  // Meanwhile more may have been typed.
  return previewOf(house, workspace.document(uri) ?? before, named);
}
