/** Specs in Markdown have their colours inside the fence, in lists and quotes too, and prose has none of them. */
import { expect, test } from "vitest";
import { loadGrammar, tokenize } from "./engine.ts";

const spec = ["drink Slip", "  story: Named", "    for the ferry.", "  glass: coupe", "  50 ml gin # cold", "drink Rope"];

test.each([
  ["at the margin", "", ""],
  ["in a quote", "> ", "> "],
  ["in a list", "- ", "  "],
  ["in a list in a quote", "> - ", ">   "],
])("%s", async (_where, first, rest) => {
  const own = tokenize(await loadGrammar(), spec.join("\n"));
  const text = ["drink deep 50 ml", "", `${first}\`\`\`drink`, ...spec.map((line) => rest + line), `${rest}\`\`\``, "", "drink 50 ml gin"];
  const lines = tokenize(await loadGrammar("text.html.markdown"), text.join("\n"));
  // In a list the editor's grammar takes more blanks than the list does, and with them the depth of prose.
  const inList = first.includes("-");
  for (const [index, tokens] of own.entries()) {
    const found = lines[3 + index]!.filter(({ text }) => !/^[>\s]*$/.test(text));
    if (!(inList && index === 2)) expect(found).toEqual(tokens);
  }
  const scopes = (line: number) => lines.at(line)!.map(({ scope }) => scope);
  expect(scopes(0)).toEqual(["meta.paragraph.markdown"]);
  expect(scopes(-1)).toEqual(["meta.paragraph.markdown"]);
});

test("a fence with another tag is left alone", async () => {
  const lines = tokenize(await loadGrammar("text.html.markdown"), "```drinks\ndrink Slip\n```\n");
  expect(lines.flat().every(({ scope }) => !scope.includes("entry"))).toBe(true);
});
