/**
 * The colours inside a fence tagged `drink` in a Markdown text: an injection into the editor's Markdown
 * grammar, in the shape that VS Code's guide to syntax highlighting gives for embedded languages.
 * Printed to `mutchkin-in-markdown.tmLanguage.json` by `npm run docs`.
 */
import type { TextMateRule } from "./textmate.ts";

export interface Injection {
  readonly information_for_contributors: readonly string[];
  readonly scopeName: string;
  readonly injectionSelector: string;
  readonly patterns: readonly TextMateRule[];
}

/** How editors know the text inside, so that comments, brackets and snippets are the spec's there. */
export const embeddedScope = "meta.embedded.block.mutchkin";

export function markdownInjection(): Injection {
  return {
    information_for_contributors: ["Made by `npm run docs` from grammar/textmate-markdown.ts: change that, not this file."],
    scopeName: "markdown.mutchkin.codeblock",
    injectionSelector: "L:text.html.markdown",
    patterns: [
      {
        name: "markup.fenced_code.block.markdown",
        begin: "(?:^|\\G)(\\s*)(`{3,}|~{3,})[ \\t]*(drink)(?=\\s|$)([^`]*)$",
        end: "(?:^|\\G)(?:\\1|\\s{0,3})(\\2)\\s*$",
        beginCaptures: {
          "2": { name: "punctuation.definition.markdown" },
          "3": { name: "fenced_code.block.language.markdown" },
          "4": { name: "fenced_code.block.language.attributes.markdown" },
        },
        endCaptures: { "1": { name: "punctuation.definition.markdown" } },
        patterns: [
          {
            // The rest of the fence's own line, so that what follows is read line by line.
            begin: "(?:^|\\G)\\s*.*",
            while: "(?:^|\\G)(?!\\s*(?:`{3,}|~{3,})\\s*$)",
            contentName: embeddedScope,
            patterns: [{ include: "source.mutchkin" }],
          },
        ],
      },
    ],
  };
}
