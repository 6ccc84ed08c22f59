/** Where the editor offers words while one types: by default neither in strings nor in comments (`editor.quickSuggestions`). */
import { expect, test } from "vitest";
import textmate from "vscode-textmate";
import manifest from "../../package.json" with { type: "json" };
import { loadGrammar } from "./engine.ts";

// As the editor numbers its standard token types, with the bits of a token's attributes that hold it.
const types = { other: 0, comment: 1, string: 2 };
const typeOf = (attributes: number) => (attributes >> 8) & 3;

const tokenTypes = manifest.contributes.grammars.flatMap((one) => Object.entries(one.tokenTypes ?? {}));
const configuration = { tokenTypes: Object.fromEntries(tokenTypes.map(([scope, type]) => [scope, types[type as keyof typeof types]])) };

/** The type of what stands in front of the bar. */
async function typeAt(marked: string): Promise<number | undefined> {
  const grammar = await loadGrammar("source.mutchkin", configuration);
  const lines = marked.split("\n");
  let state = textmate.INITIAL;
  for (const line of lines) {
    const column = line.indexOf("|");
    const { tokens, ruleStack } = grammar.tokenizeLine2(line.replace("|", ""), state);
    state = ruleStack;
    if (column < 0) continue;
    for (let at = tokens.length - 2; at >= 0; at -= 2) if (tokens[at]! < column) return typeOf(tokens[at + 1]!);
  }
  return undefined;
}

test.each([
  "drink A\n  glass: cou|",
  "drink A\n  garnish: lem|",
  "drink A\n  garnish: lemon zest, expr|",
  "drink A\n  method: shake 12 s with cra|",
  "drink A\n  50 ml aged rum, fro|",
  "drink A\n  tags: win|",
  "stock a\n  kind: spi|",
  "stock a\n  acid: 6 g/100 ml as cit|",
  "house H\n  country: G|",
])("words are offered at %j", async (marked) => {
  expect(await typeAt(marked)).toBe(types.other);
});

test.each([
  ["drink A\n  story: The lamp|", types.string],
  ["drink A\n  story: The lamp\n    on the slip|", types.string],
  ["drink A\n  50 ml aged rum # as ever|", types.comment],
])("and none at %j", async (marked, type) => {
  expect(await typeAt(marked)).toBe(type);
});
