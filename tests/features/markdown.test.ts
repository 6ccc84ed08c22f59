import fc from "fast-check";
import MarkdownIt from "markdown-it";
import { expect, test } from "vitest";
import { hover } from "../../server/features/hover.ts";
import { asText, bold, code, lineBreak, paragraphs, table, withoutMarks } from "../../server/features/markdown.ts";
import { houseIn } from "../house/make.ts";

test("without its marks a text is what was put in, whatever that was", () =>
  fc.assert(
    fc.property(fc.string({ unit: "grapheme" }), (typed) => {
      const text = typed.replace(/\s+/g, " ").trim();
      expect(withoutMarks(asText(text))).toBe(text);
      expect(withoutMarks(bold(text))).toBe(text);
      expect(withoutMarks(code(text.replaceAll("`", "'")))).toBe(text.replaceAll("`", "'"));
    }),
  ));

test("a table stands in columns, and lines and paragraphs where they stood", () => {
  const figures = table(
    ["", "in the glass"],
    [
      ["strength", bold("16 | 17 %")],
      ["é 🍋", ""],
    ],
  );
  expect(withoutMarks(paragraphs(`${bold("Slip")}${lineBreak}on *ice*`, figures, "- `5 ml` \\*"))).toBe(
    "Slip\non ice\n\n          in the glass\nstrength  16 | 17 %\né 🍋\n\n- 5 ml *",
  );
});

// markdown-it reads Markdown as CommonMark has it, with tables.
test("every hover of the demo house reads without its marks as it does with them", () => {
  const house = houseIn("samples/halyard-room");
  const reader = new MarkdownIt();
  const read = (markdown: string): string =>
    reader
      .parse(markdown, {})
      .flatMap(({ type, children }) => (type === "hr" ? ["---"] : (children ?? []).map(({ content }) => content)))
      .join("");
  const bare = (text: string) => text.replace(/^- /gm, "").replace(/\s/g, "");
  let seen = 0;
  for (const document of house.documents()) {
    if (house.isLarder(document.tree.entries[0]!)) continue;
    for (let line = 0; line < document.tree.lineCount; line++) {
      const contents = hover(house, document, { line, character: 9 })?.contents as { value: string } | undefined;
      if (!contents) continue;
      expect(bare(withoutMarks(contents.value))).toBe(bare(read(contents.value)));
      seen++;
    }
  }
  expect(seen).toBeGreaterThan(100);
});
