/** What completion is told of the client and of the day. */
import type { ClientCapabilities } from "vscode-languageserver";
import type { CompletionOptions } from "../features/completion/offer.ts";

export function completionOptions({ textDocument }: ClientCapabilities): CompletionOptions {
  const item = textDocument?.completion?.completionItem;
  return {
    snippets: item?.snippetSupport === true,
    insertReplace: item?.insertReplaceSupport === true,
    labelDetails: item?.labelDetailsSupport === true,
    today: isoDay(new Date()),
  };
}

/** The day where the server runs, not in Greenwich. */
function isoDay(date: Date): string {
  const two = (number: number) => String(number).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
