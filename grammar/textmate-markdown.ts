/**
 * The colours inside a fence tagged `drink` in a Markdown text, and of directives: an injection into the editor's Markdown
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

const name = "[A-Za-z][\\w-]*";
const label = "(\\[)((?:[^\\[\\]\\\\]|\\\\.|\\[[^\\[\\]]*\\])*)(\\])";
const attributes = "(\\{)((?:[^{}\"']|\"[^\"]*\"|'[^']*')*)(\\})";

const mark = { name: "punctuation.definition.directive.mutchkin" };
const inBraces: readonly TextMateRule[] = [
  {
    match: `(${name})(?:(=)("[^"]*"|'[^']*'|[^\\s"'{}]+))?`,
    captures: {
      "1": { name: "entity.other.attribute-name.mutchkin" },
      "2": { name: "punctuation.separator.key-value.mutchkin" },
      "3": { name: "string.unquoted.value.mutchkin" },
    },
  },
];

/** What the groups of a directive are: its colons, its name, its label, its attributes. */
const parts = {
  "1": mark,
  "2": { name: "entity.name.tag.directive.mutchkin" },
  "3": mark,
  "4": { name: "entity.name.type.reference.mutchkin" },
  "5": mark,
  "6": mark,
  "7": { patterns: inBraces },
  "8": mark,
};

/** One stands on one line; in a sentence a colon alone is none (`grammar/directives.ts` reads them). */
const directives: readonly TextMateRule[] = [
  { match: `(?:^|\\G)[ \\t]*(::)(${name})(?:${label})?(?:${attributes})?[ \\t]*$`, captures: parts },
  { match: `(?<![:\\\\])(:)(${name})(?=[\\[{])(?:${label})?(?:${attributes})?(?<=[\\]}])`, captures: parts },
];

export function markdownInjection(): Injection {
  return {
    information_for_contributors: ["Made by `npm run docs` from grammar/textmate-markdown.ts: change that, not this file."],
    scopeName: "markdown.mutchkin.codeblock",
    // What is quoted as code says nothing, nor does what is left out as a comment.
    injectionSelector: "L:text.html.markdown - markup.fenced_code - markup.raw - markup.inline.raw - meta.embedded - comment",
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
      ...directives,
    ],
  };
}
