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

const colours = async (line: string) =>
  tokenize(await loadGrammar("text.html.markdown"), line)[0]!.map(({ text, scope }) => [text, scope.replace(/^.*\.(?=[a-z-]+$)/, "")]);

const paragraph = (text: string) => [text, "markdown"];

test("a directive in a sentence has its name, its label and its attributes", async () => {
  expect(await colours('Pour :pour[lemon juice]{in="Lantern Sour" words} into it.')).toEqual([
    paragraph("Pour"),
    [":", "directive"],
    ["pour", "directive"],
    ["[", "directive"],
    ["lemon juice", "reference"],
    ["] {", "directive"],
    ["in", "attribute-name"],
    ["=", "key-value"],
    ['"Lantern Sour"', "value"],
    ["words", "attribute-name"],
    ["}", "directive"],
    paragraph("into it."),
  ]);
});

test.each([
  "::spec[Lantern Sour]",
  "> ::spec[Lantern Sour]",
  "- ::index{by=family}",
  "::contents",
  "A :see[Sour [dry]].",
  "Note:strength[Sour]",
])("%j is coloured", async (line) => expect((await colours(line)).map(([, scope]) => scope)).toContain("directive"));

// As `grammar/directives.ts` reads them.
test.each([
  "At 12:30[1] it left: nobody",
  "A :smile: and :name alone",
  "It says ::spec[Sour] here",
  ":see[Sour",
  ":::spec[S]",
  "\\:see[S]",
])("%j is running text", async (line) => expect((await colours(line)).map(([, scope]) => scope)).not.toContain("directive"));

test("what is quoted as code is left alone", async () => {
  const lines = tokenize(await loadGrammar("text.html.markdown"), "```drink\n:see[Sour]\n::spec[Sour]\n```\n\n::spec[Sour]");
  expect(lines.map((tokens) => tokens.some(({ scope }) => scope.includes("directive")))).toEqual([false, false, false, false, false, true]);
});
