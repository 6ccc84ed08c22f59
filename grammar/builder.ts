/**
 * What the grammar's rules make of the tokens they took: the nodes of `tree.ts`, and the line's first
 * problem. Nothing here decides how a line is read.
 */
import { EmbeddedActionsParser } from "chevrotain";
import { isBetweenDigits, trimEnd } from "./characters.ts";
import * as problems from "./problems.ts";
import { Numeral, type Token } from "./tokens.ts";
import type { Name, Pour, PourLead, Quantity, Span, SyntaxProblem, Words } from "./tree.ts";

export abstract class LineBuilder extends EmbeddedActionsParser {
  /** The text that the tokens were scanned from. */
  text = "";
  /** Where what is to be parsed ends. */
  textEnd = 0;
  /** Whether amounts are looked at closely: they are not in free text. */
  exact = true;
  problem: SyntaxProblem | undefined = undefined;
  /** Where a quotation mark stands that is never closed; -1 where none does. */
  unclosedAt = -1;

  /** Readies the parser for the tokens of `text` up to `end`. */
  load(text: string, end: number, line: Token[], exact: boolean): void {
    this.text = text;
    this.textEnd = end;
    this.exact = exact;
    this.problem = undefined;
    this.unclosedAt = -1;
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

  protected makeQuoted(opening: Token, closing: Token | undefined, end: number): Name {
    const start = opening.startOffset;
    const inner = this.text.slice(start + 1, closing ? closing.startOffset : end);
    if (!closing) {
      this.noteUnclosed(start, end);
      return { start, end, text: inner.trim(), commas: none, quoted: { start, end } };
    }
    const quoted: Span = { start, end: closing.end };
    const text = inner.trim() + this.text.slice(closing.end, end);
    return { start, end, text, commas: this.commasIn(closing.end, end), quoted };
  }

  protected commasIn(start: number, end: number): readonly number[] {
    let at = this.text.indexOf(",", start);
    if (at < 0 || at >= end) return none;
    const commas: number[] = [];
    for (; at >= 0 && at < end; at = this.text.indexOf(",", at + 1)) {
      if (!isBetweenDigits(this.text, at, end)) commas.push(at);
    }
    return compact(commas);
  }

  protected makePour(
    start: number,
    lead: (Words & { lead: PourLead }) | undefined,
    quantity: Quantity | undefined,
    next: Token,
    name: Name | undefined,
  ): Pour {
    const nameless = name === undefined || this.text.charCodeAt(name.start) === comma;
    if (nameless && quantity?.unit?.unit.dimension === "piece") {
      // `3 cloves` and `1 wedge, squeezed`: with no name behind it, the piece is the name.
      const { unit, ...count } = quantity;
      const end = name?.end ?? unit.end;
      return {
        start,
        end,
        lead,
        quantity: { ...count, end: count.numeral.end, unit: undefined },
        name: this.makeName(unit.start, end),
        turned: undefined,
      };
    }
    if (quantity && !quantity.unit && name && next.tokenType === Numeral) {
      this.note(problems.bareCount(this.words(next), quantity.numeral.text));
    }
    const end = trimEnd(this.text, start, name?.end ?? quantity?.end ?? lead?.end ?? start);
    return { start, end, lead, quantity, name: nameless ? undefined : name, turned: undefined };
  }
}

const comma = 44;
const none: readonly never[] = [];

/** The same list without the room that it kept for growing: readings are many, and they stay. */
export function compact<T>(list: readonly T[]): readonly T[] {
  return list.length === 0 ? none : list.slice();
}
