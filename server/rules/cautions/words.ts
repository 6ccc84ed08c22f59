/** Finding things by their names, where no figure tells. */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../../house/house.ts";
import type { Cause } from "./caution.ts";
import { doneIn, type Held, heldIn } from "./held.ts";

/** Any of these whole words or parts of patterns, one or several, in any case. */
export function anyOf(words: readonly string[]): RegExp {
  const longestFirst = [...words].sort((one, other) => other.length - one.length);
  return new RegExp(`(?<![\\p{L}-])(?:${longestFirst.join("|")})(?:e?s)?(?![\\p{L}-])`, "iu");
}

/** Something that was found by its name: a cause but for its sentence. */
export type Mention = Omit<Cause, "what"> & {
  /** For a sentence: `tonic water`, `tonic water in the house sour mix`. */
  readonly name: string;
  /** The word itself. */
  readonly word: string;
  readonly held?: Held;
};

const found = new WeakMap<RegExp, Map<string, string | undefined>>();

/** Remembered, for the same things are poured again and again. */
function wordIn(words: RegExp, names: string): string | undefined {
  let known = found.get(words);
  if (!known || known.size > mostRemembered) {
    known = new Map();
    found.set(words, known);
  }
  if (!known.has(names)) known.set(names, words.exec(names)?.[0]);
  return known.get(names);
}
const mostRemembered = 5000;

/** What an entry holds and what goes by one of the words. */
export function* mentionsIn(house: House, entry: Entry, words: RegExp): Generator<Mention & { readonly held: Held }> {
  for (const held of heldIn(house, entry)) {
    const word = wordIn(words, held.names);
    if (word === undefined) continue;
    const { entry: by, place, through, name } = held;
    yield { entry: by, place, held, word, name: through ? `${name} in the ${through}` : name, ...(through && { through }) };
  }
}

/** The steps in which one of the words stands, each at that word. */
export function* mentionsInSteps(house: House, entry: Entry, words: RegExp): Generator<Mention> {
  for (const { entry: by, place, text } of doneIn(house, entry)) {
    const match = words.exec(text);
    if (!match) continue;
    const start = place.start + match.index;
    yield { entry: by, place: { ...place, start, end: start + match[0].length }, word: match[0], name: match[0] };
  }
}

/** In what goes in, and in how it is made. */
export function* mentionsAnywhere(house: House, entry: Entry, words: RegExp): Generator<Mention> {
  yield* mentionsIn(house, entry, words);
  yield* mentionsInSteps(house, entry, words);
}

/** The causes of mentions. */
export function* causesOf(mentions: Iterable<Mention>, what: (mention: Mention) => string): Generator<Cause> {
  for (const mention of mentions) {
    const { entry, place, through } = mention;
    yield { entry, place, what: what(mention), ...(through && { through }) };
  }
}

/** What is dosed in dashes brings too little of anything to speak of. */
export function isBitters({ facts, name }: Held): boolean {
  return facts?.kind === "bitters" || /\bbitters\b/i.test(name);
}
