import fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { SelectionRange } from "vscode-languageserver-types";
import { read } from "../../grammar/read.ts";
import { selectionRanges } from "../../server/features/selection.ts";
import { anyText } from "../grammar/texts.ts";

/** The texts around the cursor `<>`, the narrowest first. */
function around(marked: string): string[] {
  const text = marked.replace("<>", "");
  const document = TextDocument.create("a", "mutchkin", 0, text);
  const position = document.positionAt(marked.indexOf("<>"));
  const texts: string[] = [];
  for (let at: SelectionRange | undefined = selectionRanges({ uri: "a", version: 1, tree: read(text) }, [position])[0]; at; at = at.parent)
    texts.push(document.getText(at.range));
  return texts;
}

test("in a method: word, part, item, value, line, entry, text", () => {
  expect(around("# x\ndrink Slip\n  method: shake 12 s, ha<>rd; strain\n")).toEqual([
    "hard",
    "shake 12 s, hard",
    "shake 12 s, hard; strain",
    "method: shake 12 s, hard; strain",
    "drink Slip\n  method: shake 12 s, hard; strain",
    "# x\ndrink Slip\n  method: shake 12 s, hard; strain\n",
  ]);
});

test("in a pour: word, name, pour", () => {
  expect(around("drink Slip\n  50 ml aged r<>um").slice(0, 3)).toEqual(["rum", "aged rum", "50 ml aged rum"]);
});

test("on any text each range lies within the next and holds the cursor", () => {
  fc.assert(
    fc.property(anyText, fc.nat(400), (text, offset) => {
      const document = TextDocument.create("a", "mutchkin", 0, text);
      const position = document.positionAt(offset);
      let [at] = selectionRanges({ uri: "a", version: 1, tree: read(text) }, [position]) as [SelectionRange | undefined];
      for (; at?.parent; at = at.parent) {
        const inner = [document.offsetAt(at.range.start), document.offsetAt(at.range.end)] as const;
        const outer = [document.offsetAt(at.parent.range.start), document.offsetAt(at.parent.range.end)] as const;
        expect(outer[0]).toBeLessThanOrEqual(inner[0]);
        expect(outer[1]).toBeGreaterThanOrEqual(inner[1]);
        expect(inner[0]).toBeLessThanOrEqual(document.offsetAt(position));
        expect(inner[1]).toBeGreaterThanOrEqual(document.offsetAt(position));
      }
    }),
    { numRuns: 500 },
  );
});
