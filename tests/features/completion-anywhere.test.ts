/** Whatever stands on a line and wherever the cursor is in it. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { CompletionItem, Range, TextEdit } from "vscode-languageserver-types";
import { InsertReplaceEdit } from "vscode-languageserver-types";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import { completion, resolveCompletion } from "../../server/features/completion.ts";
import { houseOf, root } from "../house/make.ts";
import { editOf } from "./completing.ts";

const uri = `${root}/spec.drink`;

/** Pieces that lines are made of, so that half of one meets half of another. */
const pieces = fc.constantFrom(
  ..."drink |prep |stock |menu |house |glass |Slip|  |    |\t|50 ml |22.5|½ |1 |to |top |rinse |or |swap |without |all | for |gin|lemon juice|lem".split(
    "|",
  ),
  ...'"12 year rye"|"un|“é”|, |,|; |: |glass|method: |shake 12 s|with |over |cracked ice|at |-18 C|garnish: |from: |family: |ratio: |price: |%'.split(
    "|",
  ),
  ...["# ", "# allow ", "salty", ": ", "- ", "12.50", "/", "allergens: ", "milk", "story: ", "severity: ", "🍋", "é", "$", "}", "\\"],
);
const indented = fc.array(pieces, { maxLength: 6 }).map((all) => `  ${all.join("")}`);
const line = fc.oneof(
  { weight: 5, arbitrary: indented },
  fc.array(pieces, { maxLength: 5 }).map((all) => all.join("")),
  fc.string({ unit: "grapheme", maxLength: 30 }),
);
/** Somewhere in the text; mostly at its end, where one types. */
const cursor = fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, fc.nat(400));
const heads = fc.constantFrom(
  "drink Slip",
  "prep Mix",
  "stock gin",
  "menu Late",
  "house H",
  "glass g",
  "ice i",
  "family f",
  "word nobody",
  "",
);
const house =
  "=== house.drink\nhouse The Slip\n\nstock 12 year rye\n  kind: spirit\n\ndrink Fog\n  50 ml dry gin\n  10 ml lemon juice\n  5 ml lemon juice\n=== spec.drink\n";

interface Found {
  readonly item: CompletionItem;
  readonly text: string;
  readonly at: { readonly line: number; readonly character: number };
}

function foundIn(head: string, lines: readonly string[], where: number | null, options = {}): Found[] {
  const text = [head, ...lines].join("\n").replaceAll("===", "==");
  const all = houseOf(`${house}${text}`);
  const document = all.document(uri);
  if (!document) return [];
  const whole = print(document.tree);
  const file = TextDocument.create(uri, "mutchkin", 0, whole);
  const at = file.positionAt(where === null ? whole.length : where % (whole.length + 1));
  const { items } = completion(all, document, at, { today: "2026-11-28", ...options });
  for (const item of items.slice(0, 3)) resolveCompletion(all, item);
  return items.map((item) => ({ item, text: whole, at }));
}

function holdsCursor({ start, end }: Range, at: Found["at"]): boolean {
  return start.line === at.line && end.line === at.line && start.character <= at.character && at.character <= end.character;
}

test("nothing throws, and every edit is on the cursor's line and around the cursor", () =>
  fc.assert(
    fc.property(heads, fc.array(line, { minLength: 1, maxLength: 3 }), cursor, fc.boolean(), (head, lines, where, insertReplace) => {
      for (const { item, at } of foundIn(head, lines, where, { insertReplace })) {
        const edit = item.textEdit!;
        const ranges = InsertReplaceEdit.is(edit) ? [edit.insert, edit.replace] : [edit.range];
        for (const range of ranges) expect(holdsCursor(range, at)).toBe(true);
        if (InsertReplaceEdit.is(edit)) expect(edit.insert.start).toEqual(edit.replace.start);
        expect(edit.newText).not.toMatch(/[\r\n]/);
      }
    }),
    { numRuns: 250 },
  ));

/** What stands alone once it is taken: the rest leads on to something that is still to be typed. */
const whole = new Set([
  "unit",
  "ingredient",
  "drink",
  "modifier",
  "glass word",
  "family",
  "glass",
  "ice",
  "technique",
  "step",
  "choice",
  "country",
]);

test("what is taken makes no line worse to read, and changes no other line", () =>
  fc.assert(
    fc.property(heads, fc.array(line, { minLength: 1, maxLength: 3 }), cursor, (head, lines, where) => {
      for (const { item, text, at } of foundIn(head, lines, where).filter((_, index) => index % 5 === 0)) {
        const { what, name } = item.data as { what: string; name: string };
        const edit = editOf(item);
        // A name alone at the start of a line, and what goes out of a swap, wait for an amount or for what comes in.
        if (!whole.has(what) || name === "at" || isBare(item, edit, linesOf(text)[at.line]!.text) || edit.newText.endsWith(" for "))
          continue;
        // A unit that nothing stands behind waits for what it measures.
        const edits = what === "unit" ? [{ ...edit, newText: `${edit.newText} gin` }] : [edit];
        const after = TextDocument.applyEdits(TextDocument.create(uri, "mutchkin", 0, text), edits);
        const [before, now] = [linesOf(text), linesOf(after)];
        expect(now.map((one) => one.text).filter((_, number) => number !== at.line)).toEqual(
          before.map((one) => one.text).filter((_, number) => number !== at.line),
        );
        const [problem, fresh] = [before[at.line]?.problem, now[at.line]?.problem];
        if (fresh && !problem) expect(`${fresh.code} in ${now[at.line]!.text}, from ${before[at.line]!.text}`).toBe("");
      }
    }),
    { numRuns: 250 },
  ));

function isBare({ label }: CompletionItem, { newText, range }: TextEdit, line: string): boolean {
  return line.slice(0, range.start.character).trim() === "" && newText.trim().replace(/^"(.*)"$/, "$1") === label;
}

function linesOf(text: string) {
  return read(text).entries.flatMap(({ lines }) => lines);
}
