import { expect, test } from "vitest";
import type { CodeLens } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const card = nowhere("card.drink");
const text = "stock gin\n  kind: spirit\n  abv: 40 %\n\ndrink Slip\n  method: stir 20 s\n  60 ml gin\n\ndrink Egg\n  1 egg white\n";

const batchIn = async (uri: string, languageId: string, opened: string) => {
  const client = await start({ params: { capabilities: {} } });
  await client.open(uri, opened, 1, languageId);
  return (line: number, to: string) =>
    client.request<{ title?: string; text?: string; problem?: string } | null>("mutchkin/batch", {
      textDocument: { uri },
      position: { line, character: 2 },
      to,
      made: "2026-11-28",
    });
};

test("a drink is mixed ahead for what is typed, as a page to show", async () => {
  const batch = await batchIn(card, "mutchkin", text);
  const page = await batch(6, "20");
  expect(page!.title).toBe("Slip, 20 serves");
  expect(page!.text).toMatch(/^Slip: a batch for 20 serves {2}card\.drink:5\n\nIn the bottle/);
  expect(page!.text).toMatch(/^gin +1200 ml/m);
  expect(page!.text).toContain("Made 2026-11-28");
  expect((await batch(4, "700 ml bottle"))!.text).toContain("1 bottle of 700 ml");
  expect((await batch(4, "bottle"))!.text).toContain("1 bottle of 700 ml");
  expect((await batch(4, "5 l"))!.text).toMatch(/^Comes to +50\d\d ml|^Comes to +499\d ml|^Comes to +5000 ml/m);
});

test.each([
  [0, "4", "Put the cursor in a drink first."],
  [6, "a lot", "“a lot” is no size. Write one, such as `8` serves or `700 ml`."],
  [6, "8 bottle", "“8” is no size of a bottle. Write one, such as `700 ml`."],
  [9, "4", "Nothing of Egg stands in a bottle: egg white (egg spoils, and foams only when it is fresh)."],
])("on line %d for “%s” it says why not", async (line, to, problem) => {
  expect(await (await batchIn(card, "mutchkin", text))(line, to)).toEqual({ problem });
});

test("in a block of a Markdown file too", async () => {
  const chapter = `# One\n\n- here:\n\n  \`\`\`drink\n${text.replace(/^/gm, "  ")}\n  \`\`\`\n`;
  const batch = await batchIn(nowhere("chapter.md"), "markdown", chapter);
  expect((await batch(11, "20"))!.title).toBe("Slip, 20 serves");
  expect(await batch(0, "20")).toBeNull();
});

test("a lens above each drink, for a client that lists the command", async () => {
  const lenses = async (commands: string[]) => {
    const client = await start({ params: { capabilities: { experimental: { commands } } } });
    await client.open(card, text);
    const found = await client.request<CodeLens[]>("textDocument/codeLens", { textDocument: { uri: card } });
    const resolved = await Promise.all(found.map((lens) => client.request<CodeLens>("codeLens/resolve", lens)));
    return resolved.filter(({ command }) => command!.title === "batch…");
  };
  const found = await lenses(["mutchkin.batch"]);
  expect(found.map(({ command }) => [command!.command, command!.arguments])).toEqual([
    ["mutchkin.batch", [{ uri: card, line: 4, shows: "batch" }]],
    ["mutchkin.batch", [{ uri: card, line: 8, shows: "batch" }]],
  ]);
  expect(await lenses(["mutchkin.showReferences"])).toEqual([]);
});
