/**
 * Generates houses of any number of files: one shared stock, preps and glasses, and drinks that use
 * them and riff on one another. The same count and seed give the same house on every machine.
 *
 * The houses are what a large bar group's checkout would look like: most lines repeat from drink to
 * drink (pours, methods, glasses, garnishes), stories do not.
 */

import { base, patterns } from "./patterns.ts";
import { shared } from "./stock.ts";
import { firsts, prose, seconds, thirds } from "./words.ts";

export interface Pour {
  readonly amount: number;
  readonly unit: string;
  readonly of: string;
  readonly notes?: readonly string[];
}

export interface Entry {
  readonly kind: "house" | "stock" | "prep" | "glass" | "drink" | "menu";
  readonly name: string;
  /** A list of lines is prose. */
  readonly fields: readonly (readonly [name: string, value: string | readonly string[]])[];
  readonly pours?: readonly Pour[];
  readonly swaps?: readonly { readonly out: string; readonly in: string }[];
  readonly listed?: readonly { readonly name: string; readonly price: string }[];
}

export interface HouseFile {
  /** Relative to the house's folder, without an ending. */
  readonly path: string;
  readonly entries: readonly Entry[];
}

/** A house of so many files; the first is the house itself with everything that the drinks share. */
export function makeHouse(files: number, seed = 1): HouseFile[] {
  const random = randomFrom(seed);
  const drinks = new Drinks(random);
  const made: HouseFile[] = [];
  for (let index = 1; index < files; index++) {
    const drink = drinks.next();
    const entries = random() < 0.25 ? [drink, drinks.riffOn(drink)] : [drink];
    made.push({ path: `cards/${String(Math.floor(index / 100)).padStart(3, "0")}/${fileName(drink.name)}`, entries });
  }
  const first = made.length === 0 ? [drinks.next()] : [menuOf(made.slice(0, 40).map((file) => file.entries[0]!))];
  return [{ path: "house", entries: [...shared, ...first] }, ...made];
}

/** One file of so many entries in all, the shared ones among them. */
export function makeOneFile(entries: number, seed = 1): HouseFile {
  const drinks = new Drinks(randomFrom(seed));
  return { path: "house", entries: [...shared, ...Array.from({ length: entries - shared.length }, () => drinks.next())] };
}

/** The same drinks with hardly two lines alike: every value and every pour carries a number of its own, from `first` on. */
export function withDistinctLines(entries: readonly Entry[], first = 0): Entry[] {
  let lot = first;
  return entries.map((entry) => ({
    ...entry,
    fields: entry.fields.map(([name, value]) => [name, typeof value === "string" ? `${value}, lot ${++lot}` : value] as const),
    pours: entry.pours?.map((pour) => ({ ...pour, notes: [...(pour.notes ?? []), `lot ${++lot}`] })),
  }));
}

class Drinks {
  private readonly originals: Entry[] = [];
  private made = 0;
  constructor(private readonly random: () => number) {}

  /** A drink of its own, or now and then a riff on one made before. */
  next(): Entry {
    if (this.originals.length > 0 && this.random() < 0.15) return this.riffOn(this.pick(this.originals));
    const pattern = this.pick(patterns);
    const drink: Entry = {
      kind: "drink",
      name: this.name(),
      fields: [
        ["family", pattern.family],
        ["glass", pattern.glass],
        ["method", this.pick(pattern.methods)],
        ["garnish", this.pick(pattern.garnishes)],
        ...this.story(),
      ],
      pours: pattern.pours.map(({ of, ...pour }) => ({ ...pour, of: this.pick(of) })),
    };
    this.originals.push(drink);
    return drink;
  }

  /** The parent with its base swapped for another of the same sort. */
  riffOn(parent: Entry): Entry {
    const out = parent.pours?.[0]?.of;
    const others = Object.values(base).find((names) => out !== undefined && names.includes(out)) ?? [];
    const into = this.pick(others.filter((name) => name !== out && !parent.pours?.some((pour) => pour.of === name)));
    return {
      kind: "drink",
      name: this.name(),
      fields: [["from", parent.name], ["garnish", this.pick(patterns).garnishes[0]!], ...this.story()],
      swaps: out && into ? [{ out, in: into }] : [],
    };
  }

  private story(): Entry["fields"] {
    if (this.random() < 0.4) return [];
    return [["story", Array.from({ length: 1 + Math.floor(this.random() * 3) }, () => this.sentence())]];
  }

  private sentence(): string {
    const words = Array.from({ length: 7 + Math.floor(this.random() * 5) }, () => this.pick(prose)).join(" ");
    return `${words[0]!.toUpperCase()}${words.slice(1)}.`;
  }

  private name(): string {
    const index = this.made++;
    const all = firsts.length * seconds.length;
    // Steps that share no factor with the lists' lengths visit every pair before one comes again.
    const first = firsts[index % firsts.length];
    const second = seconds[(index * 7 + Math.floor(index / firsts.length)) % seconds.length];
    return [first, second, index < all ? "" : thirds[(Math.floor(index / all) - 1) % thirds.length]].join(" ").trim();
  }

  private pick<T>(from: readonly T[]): T {
    return from[Math.floor(this.random() * from.length)]!;
  }
}

function menuOf(drinks: readonly Entry[]): Entry {
  return {
    kind: "menu",
    name: "Winter card",
    fields: [],
    listed: drinks.map(({ name }, index) => ({ name, price: (9 + (index % 7) * 0.5).toFixed(2) })),
  };
}

const fileName = (name: string) => name.toLowerCase().replaceAll(" ", "-");

/** Mulberry32, a small generator in the public domain: even enough here, and the same everywhere. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
