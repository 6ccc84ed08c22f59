/** Numbers in words, read: the way back from `number-words.ts`, as far as a recipe's amounts go. */

export interface Word {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** The words and numerals of a text in small letters; a hyphen parts them, a point or a comma ends them. */
export function wordsIn(text: string): Word[] {
  return [...text.matchAll(/[\p{L}\p{M}'’]+|[\d\p{No}][\d\p{No}.,/⁄]*/gu)].map(({ 0: word, index }) => ({
    text: word.toLowerCase(),
    start: index,
    end: index + word.length,
  }));
}

/** A number in words that starts with the word `at`: its value, where it ends and which word follows; with a fraction's `of a`. */
export function readWords(words: readonly Word[], at: number, text: string): { value: number; end: number; next: number } | undefined {
  const reader = new Reader(words, at, text);
  const value = reader.number();
  return value === undefined ? undefined : { value, end: words[reader.at - 1]!.end, next: reader.at };
}

const ones =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen";
const tens = "twenty thirty forty fifty sixty seventy eighty ninety";
const small = new Map(ones.split(" ").map((word, value) => [word, value]));
const large = new Map(tens.split(" ").map((word, index) => [word, 20 + 10 * index]));
const shares = new Map([
  ["half", 1 / 2],
  ["halves", 1 / 2],
  ["quarter", 1 / 4],
  ["quarters", 1 / 4],
  ["third", 1 / 3],
  ["thirds", 1 / 3],
  ["eighth", 1 / 8],
  ["eighths", 1 / 8],
]);

/** Goes forward only. A word counts as the next where nothing but blanks or a hyphen stands before it. */
class Reader {
  private readonly first: number;

  constructor(
    private readonly words: readonly Word[],
    public at: number,
    private readonly text: string,
  ) {
    this.first = at;
  }

  number(): number | undefined {
    const from = this.at;
    const share = this.share();
    if (share !== undefined) return this.ofOne(share);
    this.at = from;
    const whole = this.whole();
    if (whole === undefined) return undefined;
    const behind = this.at;
    if (this.take("and")) {
      const broken = this.share();
      if (broken !== undefined) return whole + broken;
    }
    this.at = behind;
    return whole;
  }

  /** `half`, `a quarter`, `three quarters`, `three-quarter`. */
  private share(): number | undefined {
    const first = this.peek();
    const count = first === "a" || first === "an" ? 1 : small.get(first);
    const single = shares.get(first);
    if (single !== undefined) {
      this.at++;
      return single;
    }
    if (count === undefined) return undefined;
    this.at++;
    const share = shares.get(this.peek());
    if (share === undefined || share * count >= 1) return undefined;
    this.at++;
    return share * count;
  }

  /** `three quarters of an ounce`, `half an ounce`: what is shared is one. */
  private ofOne(share: number): number {
    this.take("of");
    if (!this.take("an")) this.take("a");
    return share;
  }

  private whole(): number | undefined {
    const value = this.belowHundred();
    if (value === undefined || !this.take("hundred")) return value;
    const behind = this.at;
    this.take("and");
    const after = this.at;
    // In “one hundred and three-eighths” the three is no part of the hundred.
    const isBroken = this.share() !== undefined;
    this.at = isBroken ? behind : after;
    const rest = isBroken ? undefined : this.belowHundred();
    if (rest === undefined) this.at = behind;
    return value * 100 + (rest ?? 0);
  }

  private belowHundred(): number | undefined {
    const ten = large.get(this.peek());
    const one = ten === undefined ? small.get(this.peek()) : undefined;
    if (ten === undefined && one === undefined) return undefined;
    this.at++;
    if (ten === undefined) return one;
    const unit = small.get(this.peek());
    if (unit === undefined || unit === 0 || unit > 9) return ten;
    this.at++;
    return ten + unit;
  }

  private take(word: string): boolean {
    if (this.peek() !== word) return false;
    this.at++;
    return true;
  }

  private peek(): string {
    const before = this.at > this.first ? this.words[this.at - 1] : undefined;
    const word = this.words[this.at];
    if (!word || (before && !/^[\s-]*$/.test(this.text.slice(before.end, word.start)))) return "";
    return word.text;
  }
}
