/** The editor's own tokeniser, with the grammar as it is shipped. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import oniguruma from "vscode-oniguruma";
import textmate from "vscode-textmate";

const files = {
  "source.mutchkin": "../../grammar/mutchkin.tmLanguage.json",
  "markdown.mutchkin.codeblock": "../../grammar/mutchkin-in-markdown.tmLanguage.json",
  "text.html.markdown": "./containers.tmLanguage.json",
} as const;

/** A stretch of a line and its innermost scope, without the language's own ending; "" where it has none. */
export interface Token {
  readonly text: string;
  readonly scope: string;
}

/** Of specs, or of Markdown with ours injected. */
export async function loadGrammar(
  scope: "source.mutchkin" | "text.html.markdown" = "source.mutchkin",
  configuration: textmate.IGrammarConfiguration = {},
): Promise<textmate.IGrammar> {
  const wasm = readFileSync(createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm"));
  await oniguruma.loadWASM(wasm);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (name) => {
      const file = new URL(files[name as keyof typeof files], import.meta.url);
      return textmate.parseRawGrammar(readFileSync(file, "utf8"), file.pathname);
    },
    getInjections: (name) => (name === "text.html.markdown" ? ["markdown.mutchkin.codeblock"] : undefined),
  });
  const grammar = await registry.loadGrammarWithConfiguration(scope, 1, configuration);
  if (!grammar) throw new Error("The grammar does not load.");
  return grammar;
}

/** Every token of a text, line by line; white space is left out, neighbours of one scope are joined. */
export function tokenize(grammar: textmate.IGrammar, text: string): Token[][] {
  let state = textmate.INITIAL;
  return text.split(/\r\n|\r|\n/).map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    const read: Token[] = [];
    for (const { startIndex, endIndex, scopes } of tokens) {
      const written = line.slice(startIndex, endIndex).trim();
      const scope = (scopes.at(-1) ?? "").replace(/\.mutchkin$/, "").replace(/^source$/, "");
      const before = read.at(-1);
      if (written === "") continue;
      if (before?.scope === scope) read[read.length - 1] = { text: `${before.text} ${written}`, scope };
      else read.push({ text: written, scope });
    }
    return read;
  });
}
