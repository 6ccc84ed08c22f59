/** A word that the book's own style forbids. */
import { bookOfChapter } from "../../house/book/printed.ts";
import { proseIn } from "../../house/book/prose.ts";
import { styleOf } from "../../house/book/style.ts";
import type { Rule } from "../rule.ts";
import { chapter } from "./chapter.ts";

export const avoidedWord: Rule = {
  code: "avoided-word",
  severity: "information",
  entries: ["text", "drink", "prep"],
  docs: {
    title: "A word to avoid",
    why: "The publisher's style sheet says which words do not stand in the book, and whoever wrote chapter nine at night has not read it. Whole words of the text, the headnotes and the steps are looked at, in any case.",
    bad: chapter("To craft it is an art.", ["avoid: craft; artisanal"]),
    good: chapter("To make it is an art.", ["avoid: craft; artisanal"]),
  },
  *check(house, entry) {
    if (!bookOfChapter(house, entry)) return;
    const { avoided } = styleOf(house, house.scopeOf(entry));
    if (avoided.length === 0) return;
    const pattern = wholeWords(avoided);
    for (const { line, prose } of proseIn(entry)) {
      for (const { 0: word, index } of prose.matchAll(pattern)) {
        yield {
          place: { line, start: index, end: index + word.length },
          what: `“${word}” is a word that this book avoids.`,
          todo: "Say it in another way, or take it out of `avoid:`.",
        };
      }
    }
  },
};

function wholeWords(words: readonly string[]): RegExp {
  const any = words.map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replace(/\s+/g, "\\s+"));
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${any.join("|")})(?![\\p{L}\\p{N}])`, "giu");
}
