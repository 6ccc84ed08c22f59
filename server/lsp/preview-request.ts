/** A chapter as it will print, with what is typed and not saved. The book's texts are read for it, so it answers later than a feature. */
import type { CancellationToken, Connection, TextDocumentIdentifier } from "vscode-languageserver";
import { bookFolder, type Preview, previewOf } from "../reports/book/preview.ts";
import type { Context, RequestRow } from "./request.ts";

const method = "mutchkin/preview";

interface Params {
  readonly textDocument: TextDocumentIdentifier;
}

export const previewRequest: RequestRow = {
  method,
  does: "our own: a chapter of a book as it will print, as a `title`, a `css` and a `body` of HTML with the `problems` in it; else a `problem`",
  announces: () => ({}),
  register: (connection: Connection, context) =>
    connection.onRequest(method, async (params: Params, token: CancellationToken) => {
      try {
        await context.settled(token);
        return await preview(params, context);
      } catch (cause) {
        context.log(`${method} failed on ${params.textDocument.uri} and was answered empty`, cause);
        return { problem: "The preview failed; the output says why." };
      }
    }),
};

async function preview({ textDocument: { uri } }: Params, { workspace }: Context): Promise<Preview | { readonly problem: string }> {
  const before = workspace.document(uri);
  if (!before) return { problem: "Open this text in a folder first: only there is it known which book it belongs to." };
  const folder = bookFolder(workspace.house, before);
  const texts = folder === undefined ? [] : await workspace.markdownIn(folder);
  // Meanwhile more may have been typed.
  const document = workspace.document(uri) ?? before;
  const named = texts.map((one) => ({ ...one, file: decodeURIComponent(one.uri.slice(folder!.length + 1)) }));
  return previewOf(workspace.house, document, named);
}
