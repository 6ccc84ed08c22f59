/**
 * What the grammar's rules make of the tokens they took: the nodes of `tree.ts`, and the line's first
 * problem. Nothing here decides how a line is read.
 */
import { EmbeddedActionsParser } from "chevrotain";
import { isBetweenDigits } from "./characters.ts";
import * as problems from "./problems.ts";
import { Numeral, type Token } from "./tokens.ts";
import type { Item, MenuPrice, Name, Part, Pour, Quantity, SyntaxProblem, Words } from "./tree.ts";

/**
 * Every method also stands the dry run that chevrotain makes of the rules at the start, in which each
 * token and each part is hollow.
 */
export abstract class LineBuilder extends EmbeddedActionsParser {
  /** The text that the tokens were scanned from. */
  text = "";
  /** Where what is to be parsed ends. */
  textEnd = 0;
  /** Whether amounts are looked at closely: they are not in free text. */
  exact = false;
  problem: SyntaxProblem | undefined = undefined;
  /** Where a quotation mark stands that is never closed; -1 where none does. */
  unclosedAt = -1;

  protected readonly quantities = new Collector<Quantity>();
  protected readonly parts = new Collector<Part>();
  protected readonly items = new Collector<Item>();
  protected readonly prices = new Collector<MenuPrice>();

  /** Readies the parser for the tokens of `text` up to `end`. */
  load(text: string, end: number, line: Token[], exact: boolean): void {
    this.text = text;
    this.textEnd = end;
    this.exact = exact;
    this.problem = undefined;
    this.unclosedAt = -1;
    this.quantities.take();
    this.parts.take();
    this.items.take();
    this.prices.take();
    this.input = line;
  }

  /** Keeps the first problem of the line. */
  note(problem: SyntaxProblem): void {
    this.problem ??= problem;
  }

  protected noteUnclosed(start: number, end: number): void {
    this.unclosedAt = start;
    this.note(problems.unclosedQuote(start, this.text.slice(start, end)));
  }

  protected words(token: Token): Words {
    return this.span(token.startOffset, token.end);
  }

  protected span(start: number, end: number): Words {
    return { start, end, text: this.text.slice(start, end) };
  }

  protected noteNumeral(numeral: Token): void {
    if (numeral.form === "plain" || !this.exact || this.problem) return;
    this.problem = problems.oddNumeral(this.words(numeral), numeral.form!, numeral.instead);
  }

  protected makeQuantity(about: Token | undefined, first: Token, upTo: Token | undefined, unit: Token | undefined): Quantity {
    this.noteNumeral(first);
    const numeral = this.span(first.startOffset, (upTo ?? first).end);
    if (upTo) {
      this.noteNumeral(upTo);
      if (this.exact && first.value !== undefined && upTo.value !== undefined && first.value > upTo.value) {
        this.note(problems.reversedRange(numeral, this.words(first), this.words(upTo)));
      }
    }
    return {
      start: (about ?? first).startOffset,
      end: unit ? unit.end : numeral.end,
      value: first.value,
      upTo: upTo?.value,
      about: about && this.words(about),
      numeral,
      unit: unit && { start: unit.startOffset, end: unit.end, text: unit.image, unit: unit.unit! },
    };
  }

  protected makeName(start: number, end: number): Name {
    return { start, end, text: this.text.slice(start, end), commas: this.commasIn(start, end), quoted: undefined };
  }

  protected makeQuoted(opening: Token, closing: Token | undefined, last: Token): Name {
    const start = opening.startOffset;
    const { end } = last;
    const inner = this.text.slice(start + 1, closing ? closing.startOffset : end).trim();
    if (!closing) {
      this.noteUnclosed(start, end);
      return { start, end, text: inner, commas: none, quoted: { start, end } };
    }
    const text = inner + this.text.slice(closing.end, end);
    return { start, end, text, commas: this.commasIn(closing.end, end), quoted: { start, end: closing.end } };
  }

  protected commasIn(start: number, end: number): readonly number[] {
    let at = this.text.indexOf(",", start);
    if (at < 0 || at >= end) return none;
    const commas: number[] = [];
    for (; at >= 0 && at < end; at = this.text.indexOf(",", at + 1)) {
      if (!isBetweenDigits(this.text, at, end)) commas.push(at);
    }
    return commas.slice();
  }

  protected makePour(first: Token, lead: Pour["lead"], quantity: Quantity | undefined, next: Token, name: Name | undefined): Pour {
    const start = first.startOffset;
    const isNamed = name !== undefined && this.text.charCodeAt(name.start) !== comma;
    if (!isNamed && quantity?.unit?.unit.dimension === "piece") return this.makePieces(start, lead, quantity, name);
    if (quantity && !quantity.unit && isNamed && next.tokenType === Numeral) {
      this.note(problems.bareCount(this.words(next), quantity.numeral.text));
    }
    const end = name?.end ?? quantity?.end ?? lead?.end ?? start;
    return { start, end, lead, quantity, name: isNamed ? name : undefined, turned: undefined };
  }

  /** `3 cloves` and `1 wedge, squeezed`: with no name behind it, the piece is the name. */
  private makePieces(start: number, lead: Pour["lead"], { unit, ...count }: Quantity, modifiers: Name | undefined): Pour {
    const name = this.makeName(unit!.start, modifiers?.end ?? unit!.end);
    const quantity = { ...count, end: count.numeral.end, unit: undefined };
    return { start, end: name.end, lead, quantity, name, turned: undefined };
  }

  protected endPart(first: Token, last: Token): void {
    const start = first.startOffset;
    const quantities = this.quantities.take();
    const quantity = quantities[0]?.start === start ? quantities[0] : undefined;
    this.parts.add({ start, end: last.end, text: this.text.slice(start, last.end), quantity, quantities });
  }

  protected endItem(): void {
    const parts = this.parts.take();
    const first = parts[0];
    if (first === undefined) return;
    const { end } = parts[parts.length - 1]!;
    const text = parts.length === 1 ? first.text : this.text.slice(first.start, end);
    this.items.add({ start: first.start, end, text, parts });
  }

  protected endPrice(first: Token, amount: Token, currency: Token | undefined, next: Token, last: Token): void {
    this.noteNumeral(amount);
    const { end } = last;
    const label = end > next.startOffset ? this.span(next.startOffset, end) : undefined;
    this.prices.add({ start: first.startOffset, end, amount: amount.value!, currency: currency && this.words(currency), label });
  }
}

const comma = 44;
const none: readonly never[] = [];

/** A list that is filled over and over; what is taken from it holds no room to grow, since readings stay. */
class Collector<T> {
  private readonly kept: T[] = [];
  private count = 0;

  add(one: T): void {
    this.kept[this.count++] = one;
  }

  take(): readonly T[] {
    if (this.count === 0) return none;
    const taken = this.kept.slice(0, this.count);
    this.count = 0;
    return taken;
  }
}
