/** Something in a spec that can hurt whoever drinks or makes it. */
import type { Entry, Words } from "../../grammar/tree.ts";
import { placeOf } from "./places.ts";
import type { Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

/** The usual cautions, one row each: common knowledge of the trade, no source. Not complete, and no lexicon of poisons. */
const hazards: readonly { readonly words: readonly string[]; readonly because: string }[] = [
  { words: ["dry ice", "liquid nitrogen"], because: "burns skin and throat, and none of it may be left in what is served" },
  { words: ["methanol", "denatured alcohol", "isopropyl alcohol", "methylated spirit"], because: "is poison and no drink" },
  {
    words: ["foxglove", "oleander", "hemlock", "yew", "nightshade", "belladonna", "lily of the valley", "monkshood", "wolfsbane"],
    because: "is a poisonous plant",
  },
  { words: ["datura", "angel's trumpet", "laburnum", "ragwort", "rhubarb leaves", "rhubarb leaf"], because: "is a poisonous plant" },
  { words: ["apricot kernels", "peach kernels", "cherry stones", "bitter almonds"], because: "gives off cyanide when it is steeped" },
  { words: ["raw elderberries", "elder leaves", "elder bark"], because: "makes people ill unless it is cooked through" },
  { words: ["tobacco", "tobacco leaf", "tobacco leaves"], because: "gives off nicotine, of which little is too much" },
  { words: ["cinchona bark", "cinchona"], because: "holds quinine in amounts that nobody can tell, and too much of it harms" },
  { words: ["activated charcoal"], because: "takes medicines out of the body that somebody relies on" },
];

export const hazard: Rule = {
  code: "hazard",
  severity: "information",
  entries: ["drink", "prep", "stock"],
  docs: {
    title: "This can hurt someone",
    why: "A few things that turn up in drinks do harm by themselves. This is the usual caution and no more: it knows a few words, it is no lexicon of poisons, and where it is silent nothing is proved safe. Ask somebody who is licensed to say, and follow the local code.",
    bad: specimen(["50 ml gin"], { garnish: "a chip of dry ice" }),
    good: specimen(["50 ml gin"]),
  },
  *check(_house, entry) {
    for (const { line, words } of textsIn(entry)) {
      const match = pattern.exec(words.text);
      if (!match) continue;
      const start = words.start + match.index;
      const word = match[0].toLowerCase();
      const { because } = hazards.find((row) => row.words.includes(word))!;
      yield {
        place: placeOf(line, { start, end: start + match[0].length }),
        what: `Caution: ${word} ${because}.`,
        todo: "Follow the local code, and ask somebody licensed before it is served.",
      };
      return; // One caution is read; five are skipped.
    }
  },
};

const all = hazards.flatMap(({ words }) => words).sort((one, other) => other.length - one.length);
const pattern = new RegExp(`(?<![\\p{L}-])(?:${all.join("|")})(?![\\p{L}-])`, "iu");

/** What goes in, on or around the drink, and how it is made; not its name or its story. */
function* textsIn(entry: Entry): Generator<{ line: number; words: Words }> {
  let steps = false;
  for (const [line, { content }] of entry.lines.entries()) {
    if (content.kind === "entry" && entry.kind === "stock" && content.name) yield { line, words: content.name };
    if (content.kind === "pour" && content.pour.name) yield { line, words: content.pour.name };
    if (content.kind === "prose" && steps) yield { line, words: content };
    if (content.kind !== "field") continue;
    const name = content.name.text.toLowerCase();
    steps = name === "steps";
    if (content.value && (steps || name === "garnish" || name === "rim" || name === "method")) yield { line, words: content.value };
  }
}
