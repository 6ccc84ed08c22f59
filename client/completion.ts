/** What was accepted and ends in a blank, or in a label to fill in, wants something there: that is offered at once, as if it had been typed. */
import * as vscode from "vscode";
import type { CompletionMiddleware } from "vscode-languageclient";

/** As the editor would ask by itself: where there is nothing to offer it says nothing. */
const askAgain: vscode.Command = { title: "Offer what comes next", command: "editor.action.triggerSuggest", arguments: [{ auto: true }] };

export const goOn: CompletionMiddleware = {
  async provideCompletionItem(document, position, context, token, next) {
    const offered = await next(document, position, context, token);
    for (const item of Array.isArray(offered) ? offered : (offered?.items ?? [])) {
      const text = item.insertText ?? item.label;
      const wants =
        text instanceof vscode.SnippetString ? /[["]\$1[\]"]/.test(text.value) : /\s$/.test(typeof text === "string" ? text : text.label);
      if (wants) item.command ??= askAgain;
    }
    return offered;
  },
  async resolveCompletionItem(item, token, next) {
    const resolved = await next(item, token);
    if (resolved && item.command) resolved.command ??= item.command;
    return resolved;
  },
};
