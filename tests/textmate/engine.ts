/** The editor's own tokeniser, with the grammar as it is shipped. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import oniguruma from "vscode-oniguruma";
import textmate from "vscode-textmate";

const grammarFile = new URL("../../grammar/mutchkin.tmLanguage.json", import.meta.url);

/** A stretch of a line and its innermost scope, without the language's own ending; "" where it has none. */
export interface Token {
  readonly text: string;
  readonly scope: string;
}

export async function loadGrammar(): Promise<textmate.IGrammar> {
  const wasm = readFileSync(createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm"));
  await oniguruma.loadWASM(wasm);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarFile, "utf8"), "mutchkin.tmLanguage.json"),
  });
  const grammar = await registry.loadGrammar("source.mutchkin");
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
