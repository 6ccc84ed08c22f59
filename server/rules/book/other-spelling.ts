/** A word of the trade spelt as on the other side of the ocean. */
import { bookOfChapter } from "../../house/book/printed.ts";
import { proseIn } from "../../house/book/prose.ts";
import { longestFirst, respelled, wordForms } from "../../house/book/spelling.ts";
import { type Spelling, styleOf } from "../../house/book/style.ts";
import type { Rule } from "../rule.ts";
import { chapter } from "./chapter.ts";

export const otherSpelling: Rule = {
  code: "other-spelling",
  severity: "hint",
  entries: ["text", "drink", "prep"],
  docs: {
    title: "The other spelling",
    why: "What the program writes itself, a millilitre or a milliliter, is spelt as `spelling:` of the `book` says. Beside it a word in the other spelling reads like a slip of the typesetter. Only the words of the table are known here; it is no spelling checker.",
    bad: chapter("The color is that of the harbour.", ["spelling: British"]),
    good: chapter("The colour is that of the harbour.", ["spelling: British"]),
  },
  *check(house, entry) {
    if (!bookOfChapter(house, entry)) return;
    const { spelling } = styleOf(house, house.scopeOf(entry));
    for (const { line, prose } of proseIn(entry)) {
      for (const { 0: word, index } of prose.matchAll(wrong[spelling])) {
        const text = isName(word, prose.slice(0, index)) ? undefined : respelled(word, spelling);
        if (!text) continue;
        const place = { line, start: index, end: index + word.length };
        yield {
          place,
          what: `“${word}” is the ${spelling === "British" ? "American" : "British"} spelling, and the book's is ${spelling}.`,
          todo: `Write “${text}”.`,
          fixes: () => [{ title: `Change to “${text}”`, safe: false, edits: [{ entry, ...place, text }] }],
        };
      }
    }
  },
};

/** What is a word of its own on both sides: the first draft. */
const both = /^draft/;
const wrong: Readonly<Record<Spelling, RegExp>> = { British: anyOf("American"), American: anyOf("British") };

function anyOf(spelling: Spelling): RegExp {
  const words = wordForms.map((row) => row[spelling]).filter((word) => !both.test(word));
  return new RegExp(`(?<![\\p{L}\\p{N}-])(?:${longestFirst(words).join("|")})(?![\\p{L}\\p{N}])`, "giu");
}

/** A capital within a sentence: Gray's Quay stays what it is called. */
function isName(word: string, before: string): boolean {
  return word !== word.toLowerCase() && word !== word.toUpperCase() && /[\p{L}\p{N},;]["'“”‘’(]*\s+["'“”‘’(]*$/u.test(before);
}
