/**
 * The grammar of one line: one rule for each kind of line, the shared parts below them. A rule builds
 * what `tree.ts` describes; there is no recovery, since the next line starts clean anyway. What a line
 * lacks is put in plain words by `problems.ts`; only the first problem of a line is kept.
 */
import { EOF, type ParserMethod, type TokenType } from "chevrotain";
import { LineBuilder } from "./builder.ts";
import type { Token } from "./tokens.ts";
import * as tokens from "./tokens.ts";
import type { Item, MenuPrice, Name, Pour, PourLead, Quantity, Words } from "./tree.ts";

type Lead = NonNullable<Pour["lead"]>;

class LineParser extends LineBuilder {
  readonly entryLine: ParserMethod<[], { name: Name | undefined }>;
  readonly fieldLine: ParserMethod<[], readonly Item[]>;
  readonly pourLine: ParserMethod<[], Pour>;
  /** A name, then the amount. */
  readonly turnedLine: ParserMethod<[], Pour>;
  readonly orLine: ParserMethod<[], { pour: Pour | undefined }>;
  readonly swapLine: ParserMethod<[], { out: Pour | undefined; in: Pour | undefined }>;
  readonly withoutLine: ParserMethod<[], { all: Words | undefined; pour: Pour | undefined }>;
  readonly sectionLine: ParserMethod<[], { title: Name | undefined }>;
  readonly menuLine: ParserMethod<[], { name: Name | undefined; prices: readonly MenuPrice[] }>;

  constructor(skipValidations: boolean) {
    super(tokens.tokenTypes, { recoveryEnabled: false, maxLookahead: 2, skipValidations });

    // The pieces that rules take or leave are made once, here, and not again with each line.
    const unquoted = () => this.CONSUME(tokens.Unquoted);
    const closingQuote = () => this.CONSUME1(tokens.Quote) as Token;
    const currency = () => this.CONSUME(tokens.Currency) as Token;
    const unit = () => this.CONSUME(tokens.Unit_) as Token;
    const name = () => this.SUBRULE(nameRule);
    const quantity = () => this.SUBRULE(quantityRule);
    const pour = { GATE: () => this.more(), DEF: () => this.SUBRULE(this.pourLine) };

    this.entryLine = this.RULE("entryLine", () => {
      this.CONSUME(tokens.EntryWord);
      return { name: this.OPTION(name) };
    });

    const items = { SEP: tokens.Semicolon, DEF: () => this.SUBRULE(itemRule) };
    this.fieldLine = this.RULE("fieldLine", () => {
      this.CONSUME(tokens.Colon);
      this.MANY_SEP(items);
      return this.items.take();
    });

    const lead = () => this.SUBRULE(leadRule);
    const of = () => this.CONSUME(tokens.Of);
    this.pourLine = this.RULE("pourLine", (): Pour => {
      const first = this.LA(1) as Token;
      const leading = this.OPTION(lead);
      const amount = this.OPTION1(quantity);
      this.OPTION2(of);
      const next = this.LA(1) as Token;
      const named = this.OPTION3(name);
      return this.makePour(first, leading, amount, next, named);
    });

    this.turnedLine = this.RULE("turnedLine", (): Pour => {
      const named = this.SUBRULE(nameRule);
      this.CONSUME(tokens.Split);
      const amount = this.SUBRULE(quantityRule);
      return { start: named.start, end: amount.end, lead: undefined, quantity: amount, name: named, turned: true };
    });

    this.orLine = this.RULE("orLine", () => {
      this.CONSUME(tokens.Or);
      return { pour: this.OPTION(pour) };
    });

    const into = { GATE: pour.GATE, DEF: () => this.SUBRULE1(this.pourLine) };
    const forInto = () => {
      this.CONSUME(tokens.For);
      return this.OPTION2(into);
    };
    this.swapLine = this.RULE("swapLine", () => {
      this.CONSUME(tokens.Swap);
      return { out: this.OPTION(pour), in: this.OPTION1(forInto) };
    });

    const all = () => this.words(this.CONSUME(tokens.All) as Token);
    this.withoutLine = this.RULE("withoutLine", () => {
      this.CONSUME(tokens.Without);
      return { all: this.OPTION(all), pour: this.OPTION1(pour) };
    });

    this.sectionLine = this.RULE("sectionLine", () => {
      this.CONSUME(tokens.Section);
      return { title: this.OPTION(name) };
    });

    const prices = { SEP: tokens.Slash, DEF: () => this.SUBRULE(priceRule) };
    const pricesBehind = () => {
      this.CONSUME(tokens.Split);
      this.AT_LEAST_ONE_SEP(prices);
    };
    this.menuLine = this.RULE("menuLine", () => {
      this.CONSUME(tokens.MenuDash);
      const named = this.OPTION(name);
      this.OPTION1(pricesBehind);
      return { name: named, prices: this.prices.take() };
    });

    const to = () => this.CONSUME(tokens.To);
    const topTo = () => {
      const top = this.CONSUME(tokens.Top);
      this.OPTION(to);
      return top;
    };
    const leadWords = [
      { ALT: topTo },
      { ALT: () => this.CONSUME1(tokens.To) },
      { ALT: () => this.CONSUME(tokens.Rinse) },
      { ALT: () => this.CONSUME(tokens.Some) },
    ];
    const leadRule = this.RULE("lead", (): Lead => {
      const first = this.OR(leadWords);
      const { start, end, text } = this.span(first.startOffset, (this.LA(0) as Token).end);
      return { start, end, text, lead: leads.get(first.tokenType) ?? "some" };
    });

    const anyWord = () => this.CONSUME(tokens.Any);
    const furtherWord = () => this.CONSUME2(tokens.Any);
    const nameWords = [
      {
        ALT: () => {
          const opening = this.CONSUME(tokens.Quote) as Token;
          this.MANY(unquoted);
          const closing = this.OPTION(closingQuote);
          this.MANY1(anyWord);
          return this.makeQuoted(opening, closing, this.LA(0) as Token);
        },
      },
      {
        ALT: () => {
          const first = this.CONSUME1(tokens.Unquoted) as Token;
          this.MANY2(furtherWord);
          return this.makeName(first.startOffset, (this.LA(0) as Token).end);
        },
      },
    ];
    const nameRule = this.RULE("name", (): Name => this.OR(nameWords));

    const about = () => this.CONSUME(tokens.About) as Token;
    const upTo = () => {
      this.CONSUME(tokens.RangeMark);
      return this.CONSUME1(tokens.Numeral) as Token;
    };
    const quantityRule = this.RULE("quantity", (): Quantity => {
      const before = this.OPTION(about);
      const first = this.CONSUME(tokens.Numeral) as Token;
      return this.makeQuantity(before, first, this.OPTION1(upTo), this.OPTION2(unit));
    });

    const parts = { SEP: tokens.Comma, DEF: () => this.SUBRULE(partRule) };
    const itemRule = this.RULE("item", () => {
      this.MANY_SEP(parts);
      this.endItem();
    });

    const word = () => this.CONSUME(tokens.Text);
    const wordBehind = () => this.CONSUME1(tokens.Text);
    const amountAndWords = () => {
      this.quantities.add(this.SUBRULE(quantityRule));
      this.MANY3(wordBehind);
    };
    const quoted = () => {
      const opening = this.CONSUME(tokens.Quote) as Token;
      this.MANY(unquoted);
      if (!this.OPTION1(closingQuote)) this.noteUnclosed(opening.startOffset, this.textEnd);
    };
    const partRule = this.RULE("part", () => {
      const before = this.LA(0) as Token;
      const first = this.LA(1) as Token;
      this.OPTION(quoted);
      this.MANY1(word);
      this.MANY2(amountAndWords);
      const last = this.LA(0) as Token;
      if (last !== before) this.endPart(first, last);
    });

    const currencyBehind = () => this.CONSUME1(tokens.Currency) as Token;
    const label = () => this.CONSUME(tokens.Word);
    const priceRule = this.RULE("price", () => {
      const first = this.LA(1) as Token;
      const sign = this.OPTION(currency);
      const amount = this.CONSUME(tokens.Numeral) as Token;
      const code = this.OPTION1(currencyBehind);
      const next = this.LA(1) as Token;
      this.OPTION2(unit);
      this.MANY(label);
      this.endPrice(first, amount, sign ?? code, next, this.LA(0) as Token);
    });

    this.performSelfAnalysis();
  }

  /** What the rule made of the line that is loaded; throws where the line does not fit the rule. */
  parse<T>(rule: ParserMethod<[], T>): T {
    const parts = rule.call(this);
    if (parts === undefined || this.more()) throw new Error(`A line does not fit ${rule.name}.`);
    return parts;
  }

  /** Whether anything is left: a pour may lack every part, and nothing at all is no pour. */
  private more(): boolean {
    return this.LA(1).tokenType !== EOF;
  }
}

const leads = new Map<TokenType, PourLead>([
  [tokens.Top, "top"],
  [tokens.To, "to"],
  [tokens.Rinse, "rinse"],
  [tokens.Some, "some"],
]);

/** The one parser of the process. */
export const parser = new LineParser(true);

/** A parser that checks its own grammar while it is made, for the tests. */
export function makeCheckedParser(): LineParser {
  return new LineParser(false);
}
