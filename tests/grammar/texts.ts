/** Texts for property tests: lines as people write them, lines as nobody does, and changes to them. */
import fc from "fast-check";
import type { TextChange } from "../../grammar/edit.ts";
import { entryKinds, fields } from "../../grammar/fields.ts";
import { units } from "../../grammar/units.ts";

const numeral = fc.constantFrom(
  "50",
  "1.5",
  ".5",
  "1/2",
  "1 1/2",
  "1½",
  "1 ½",
  "1⁄2",
  "1-1/2",
  "2,5",
  "1,000",
  "10-15",
  "10 to 15",
  "15–10",
  "-18",
  "−5",
  "about 3",
);
const unit = fc.constantFrom("", ...units.flatMap(({ id, also }) => [id, ...also]));
const name = fc.constantFrom(
  "aged rum",
  "egg white",
  "Blend #4",
  '"Blend # 4, red"',
  "“clove bitters”",
  '"open',
  "12 year rye",
  "7up",
  "crème 🍋 e\u0301lan",
  "lime, juiced",
  "for for for",
  "oil, 2 for 1",
  "",
);
const tail = fc.constantFrom(
  "",
  ", frozen",
  ", to taste",
  " # a note",
  "  # allow too-weak: it is meant",
  " # allow too-weak",
  " #",
  "; and more",
);
const gap = fc.constantFrom("", " ", "  ", "\t", "\u00a0", "\u2009");
const amount = fc.tuple(numeral, gap, unit).map((parts) => parts.join(""));
const pour = fc
  .tuple(fc.constantFrom("", "top ", "top to ", "to ", "rinse ", "some "), fc.oneof(amount, fc.constant("")), gap, name, tail)
  .map((parts) => parts.join(""));
const field = fc
  .tuple(
    fc.constantFrom(...fields.map((row) => row.name), "Lemon juice", "sugr"),
    fc.constantFrom(":", ": ", ""),
    fc.oneof(pour, amount, name),
    tail,
  )
  .map((parts) => parts.join(""));
const head = fc.tuple(fc.constantFrom(...entryKinds, "drnk", "Lantern", "dri"), gap, name, tail).map((parts) => parts.join(""));
const price = fc.constantFrom("", " 12.50", " £12", " 12.50 / 45.00 carafe", " GBP 9", " 1,250", " 9,50");
const menu = fc.tuple(fc.constantFrom("- ", "-", "section "), name, price, tail).map((parts) => parts.join(""));
const keyworded = fc
  .tuple(
    fc.constantFrom("or ", "swap ", "without ", "without all ", "or", "swap", "without"),
    pour,
    fc.constantFrom("", " for ", " for top "),
    pour,
  )
  .map((parts) => parts.join(""));
const comment = fc.constantFrom("# a comment", "#", "# allow", "# allow x: y", "# allow the syrup to cool");
const noise = fc.string({ unit: "binary", maxLength: 20 }).map((text) => text.replaceAll(/[\r\n]/g, ""));
const punctuation = fc.string({
  unit: fc.constantFrom("#", '"', "“", "”", ",", ";", ":", "-", "/", " ", "1", "a", "½", "£", "\ufeff", "%", "."),
  maxLength: 20,
});
const indent = fc.constantFrom("", "", "  ", "  ", "    ", "\t", " \t", "\ufeff", "\u00a0");

/** One line without its line break. */
export const anyLine: fc.Arbitrary<string> = fc
  .tuple(indent, fc.oneof(pour, field, head, menu, keyworded, comment, noise, punctuation, fc.constant("")))
  .map((parts) => parts.join(""));

const anyBreak = fc.constantFrom("\n", "\n", "\n", "\r\n", "\r");

/** Several lines, line breaks of all kinds mixed. */
export const anyText: fc.Arbitrary<string> = fc
  .array(fc.tuple(anyLine, anyBreak), { maxLength: 30 })
  .chain((lines) => anyLine.map((last) => lines.flat().join("") + last));

/** A place in a text, or out of it. */
export const place = fc.record({ line: fc.integer({ min: -1, max: 32 }), character: fc.integer({ min: -1, max: 40 }) });
const inserted = fc.oneof(fc.constant(""), fc.constantFrom("\n", "\r", "\r\n", " ", "  ", "d", "#", '"', ":", "story:"), anyLine, anyText);

/** A change anywhere in a text, or now and then of the whole text. */
export const anyChange: fc.Arbitrary<TextChange> = fc.oneof(
  { weight: 8, arbitrary: fc.record({ range: fc.record({ start: place, end: place }), text: inserted }) },
  { weight: 4, arbitrary: fc.tuple(place, inserted).map(([at, text]) => ({ range: { start: at, end: at }, text })) },
  { weight: 1, arbitrary: anyText.map((text) => ({ text })) },
);

/** What a change makes of a text, worked out from the text alone. */
export function apply(text: string, { range, text: inserted }: TextChange): string {
  if (!range) return inserted;
  const offsets = [offsetAt(text, range.start), offsetAt(text, range.end)].sort((a, b) => a - b);
  return text.slice(0, offsets[0]) + inserted + text.slice(offsets[1]);
}

function offsetAt(text: string, { line, character }: { line: number; character: number }): number {
  const lines = [...text.matchAll(/([^\r\n]*)(\r\n|\r|\n|$)/g)];
  if (line < 0) return 0;
  // The pattern matches nothing once more at the very end, behind a last line that has text.
  const count = text.split(/\r\n|\r|\n/).length;
  if (line >= count) return text.length;
  const found = lines[line]!;
  return found.index + Math.min(Math.max(character, 0), found[1]!.length);
}
