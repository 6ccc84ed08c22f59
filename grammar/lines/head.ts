/** Margin lines that open an entry. */
import { distance } from "fastest-levenshtein";
import { isSpace } from "../characters.ts";
import { type EntryKind, entryKinds } from "../fields.ts";
import { parser } from "../parser.ts";
import * as problems from "../problems.ts";
import { EntryWord, makeToken } from "../tokens.ts";
import { type Read, tokensBehind, wordsOf } from "./parts.ts";

export function readHead(text: string, start: number, end: number): Read {
  let last = start;
  while (last < end && !isSpace(text.charCodeAt(last))) last++;
  const word = wordsOf(text, start, last);
  const entry = entryWords.get(word.text.toLowerCase());
  parser.load(text, end, tokensBehind(makeToken(EntryWord, start, last), text, end), false);
  const { name } = parser.parse(parser.entryLine);
  if (entry === undefined) {
    const hasColon = word.text.endsWith(":");
    const guess = guessEntry(hasColon ? word.text.slice(0, -1) : word.text);
    return { content: { kind: "entry", word, entry, name }, problem: problems.unknownEntry(word, guess, hasColon) };
  }
  if (!name && entry !== "house") {
    parser.note(problems.lacking(word, `This ${entry} has no name.`, `Put its name after “${word.text}”.`));
  }
  return { content: { kind: "entry", word, entry, name }, problem: parser.problem };
}

/** Whether the word opens an entry, in any case. */
export function isEntryWord(word: string): boolean {
  return entryWords.has(word.toLowerCase());
}

const entryWords = new Map<string, EntryKind>(entryKinds.map((kind) => [kind, kind]));

/** The one entry word that was plainly meant: begun, or misspelt by a letter or two. */
function guessEntry(written: string): EntryKind | undefined {
  const word = written.toLowerCase();
  if (word.length < 2 || word.length > 10) return undefined;
  const exact = entryWords.get(word);
  if (exact) return exact;
  const begun = entryKinds.filter((kind) => kind.startsWith(word));
  if (begun.length > 0) return begun.length === 1 ? begun[0] : undefined;
  const near = entryKinds.filter((kind) => distance(kind, word) <= (kind.length > 4 ? 2 : 1));
  return near.length === 1 ? near[0] : undefined;
}
