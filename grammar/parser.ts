/**
 * The grammar of one line: one rule for each kind of line, the shared parts below them. A rule builds
 * what `tree.ts` describes; there is no recovery, since the next line starts clean anyway. What a line
 * lacks is put in plain words by `problems.ts`; only the first problem of a line is kept.
 */
import { EOF, type ParserMethod, type TokenType } from "chevrotain";
import { compact, LineBuilder } from "./builder.ts";
import type { Token } from "./tokens.ts";
import * as tokens from "./tokens.ts";
import type { Item, MenuPrice, Name, Part, Pour, PourLead, Quantity, Words } from "./tree.ts";

export interface EntryParts {
  readonly word: Words;
  readonly name: Name | undefined;
}
export interface KeywordParts {
  readonly word: Words;
  readonly all: Words | undefined;
  readonly pour: Pour | undefined;
}
export interface SwapParts {
  readonly word: Words;
  readonly out: Pour | undefined;
  readonly in: Pour | undefined;
}
export interface SectionParts {
  readonly word: Words;
  readonly title: Name | undefined;
}
export interface MenuParts {
  readonly name: Name | undefined;
  readonly prices: readonly MenuPrice[];
}

class LineParser extends LineBuilder {
  readonly entryLine: ParserMethod<[], EntryParts>;
  readonly fieldLine: ParserMethod<[], readonly Item[]>;
  readonly pourLine: ParserMethod<[], Pour>;
  readonly turnedLine: ParserMethod<[], Pour>;
  readonly orLine: ParserMethod<[], KeywordParts>;
  readonly swapLine: ParserMethod<[], SwapParts>;
  readonly withoutLine: ParserMethod<[], KeywordParts>;
  readonly sectionLine: ParserMethod<[], SectionParts>;
  readonly menuLine: ParserMethod<[], MenuParts>;

  constructor(skipValidations: boolean) {
    super(tokens.tokenTypes, { recoveryEnabled: false, maxLookahead: 2, skipValidations });

    this.entryLine = this.RULE("entryLine", () => {
      const word = this.CONSUME(tokens.EntryWord) as Token;
      const name = this.OPTION(() => this.SUBRULE(nameRule));
      return { word: this.words(word), name };
    });

    this.fieldLine = this.RULE("fieldLine", () => {
      this.CONSUME(tokens.Colon);
      const items: Item[] = [];
      this.MANY_SEP({
        SEP: tokens.Semicolon,
        DEF: () => {
          const item = this.SUBRULE(itemRule);
          if (item) items.push(item);
        },
      });
      return compact(items);
    });

    this.turnedLine = this.RULE("turnedLine", () => {
      const name = this.SUBRULE(nameRule);
      this.CONSUME(tokens.Split);
      const quantity = this.SUBRULE(quantityRule);
      return { start: name.start, end: quantity.end, lead: undefined, quantity, name, turned: true };
    });

    this.orLine = this.RULE("orLine", () => {
      const word = this.CONSUME(tokens.Or) as Token;
      const pour = this.OPTION({ GATE: () => this.more(), DEF: () => this.SUBRULE(pourRule) });
      return { word: this.words(word), all: undefined, pour };
    });

    this.swapLine = this.RULE("swapLine", () => {
      const word = this.CONSUME(tokens.Swap) as Token;
      const out = this.OPTION(() => this.SUBRULE(pourRule));
      let into: Pour | undefined;
      this.OPTION1(() => {
        this.CONSUME(tokens.For);
        into = this.OPTION2(() => this.SUBRULE1(pourRule));
      });
      return { word: this.words(word), out, in: into };
    });

    this.withoutLine = this.RULE("withoutLine", () => {
      const word = this.CONSUME(tokens.Without) as Token;
      const all = this.OPTION(() => this.CONSUME(tokens.All) as Token);
      const pour = this.OPTION1({ GATE: () => this.more(), DEF: () => this.SUBRULE(pourRule) });
      return { word: this.words(word), all: all && this.words(all), pour };
    });

    this.sectionLine = this.RULE("sectionLine", () => {
      const word = this.CONSUME(tokens.Section) as Token;
      const title = this.OPTION(() => this.SUBRULE(nameRule));
      return { word: this.words(word), title };
    });

    this.menuLine = this.RULE("menuLine", () => {
      this.CONSUME(tokens.MenuDash);
      const name = this.OPTION(() => this.SUBRULE(nameRule));
      const prices: MenuPrice[] = [];
      this.OPTION1(() => {
        this.CONSUME(tokens.Split);
        this.AT_LEAST_ONE_SEP({
          SEP: tokens.Slash,
          DEF: () => {
            prices.push(this.SUBRULE(priceRule));
          },
        });
      });
      return { name, prices: compact(prices) };
    });

    const leadRule = this.RULE("lead", (): Words & { lead: PourLead } => {
      const first = this.OR([
        {
          ALT: () => {
            const top = this.CONSUME(tokens.Top);
            this.OPTION(() => this.CONSUME(tokens.To));
            return top;
          },
        },
        { ALT: () => this.CONSUME1(tokens.To) },
        { ALT: () => this.CONSUME(tokens.Rinse) },
        { ALT: () => this.CONSUME(tokens.Some) },
      ]);
      const lead = this.span(first.startOffset, (this.LA(0) as Token).end);
      return { ...lead, lead: leads.get(first.tokenType) ?? "some" };
    });

    const pourRule = this.RULE("pourLine", (): Pour => {
      const start = (this.LA(1) as Token).startOffset;
      const lead = this.OPTION(() => this.SUBRULE(leadRule));
      const quantity = this.OPTION1(() => this.SUBRULE(quantityRule));
      this.OPTION2(() => this.CONSUME(tokens.Of));
      const next = this.LA(1) as Token;
      const name = this.OPTION3(() => this.SUBRULE(nameRule));
      return this.ACTION(() => this.makePour(start, lead, quantity, next, name));
    });

    this.pourLine = pourRule;

    const nameRule = this.RULE("name", (): Name => {
      const first = this.LA(1) as Token;
      let closing: Token | undefined;
      const opening = this.OR<Token | undefined>([
        {
          ALT: () => {
            const quote = this.CONSUME(tokens.Quote) as Token;
            this.MANY(() => this.CONSUME(tokens.Unquoted));
            closing = this.OPTION(() => this.CONSUME1(tokens.Quote) as Token);
            this.MANY1(() => this.CONSUME(tokens.Any));
            return quote;
          },
        },
        {
          ALT: () => {
            this.CONSUME1(tokens.Unquoted);
            this.MANY2(() => this.CONSUME2(tokens.Any));
            return undefined;
          },
        },
      ]);
      const last = this.LA(0) as Token;
      return this.ACTION(() => (opening ? this.makeQuoted(opening, closing, last.end) : this.makeName(first.startOffset, last.end)));
    });

    const quantityRule = this.RULE("quantity", (): Quantity => {
      const about = this.OPTION(() => this.CONSUME(tokens.About) as Token);
      const first = this.CONSUME(tokens.Numeral) as Token;
      const upTo = this.OPTION1(() => {
        this.CONSUME(tokens.RangeMark);
        return this.CONSUME1(tokens.Numeral) as Token;
      });
      const unit = this.OPTION2(() => this.CONSUME(tokens.Unit_) as Token);
      return this.ACTION(() => this.makeQuantity(about, first, upTo, unit));
    });

    const itemRule = this.RULE("item", (): Item | undefined => {
      const parts: Part[] = [];
      this.MANY_SEP({
        SEP: tokens.Comma,
        DEF: () => {
          const part = this.SUBRULE(partRule);
          if (part) parts.push(part);
        },
      });
      const first = parts[0];
      if (first === undefined) return undefined;
      const { end } = parts[parts.length - 1]!;
      const text = end === first.end ? first.text : this.text.slice(first.start, end);
      return { start: first.start, end, text, parts: compact(parts) };
    });

    const partRule = this.RULE("part", (): Part | undefined => {
      const start = (this.LA(1) as Token).startOffset;
      const before = this.LA(0);
      const quantities: Quantity[] = [];
      this.OPTION(() => {
        const opening = this.CONSUME(tokens.Quote) as Token;
        this.MANY(() => this.CONSUME(tokens.Unquoted));
        const closing = this.OPTION1(() => this.CONSUME1(tokens.Quote));
        this.ACTION(() => {
          if (!closing) this.noteUnclosed(opening.startOffset, this.textEnd);
        });
      });
      this.MANY1(() => this.CONSUME(tokens.Text));
      this.MANY2(() => {
        quantities.push(this.SUBRULE(quantityRule));
        this.MANY3(() => this.CONSUME1(tokens.Text));
      });
      return this.ACTION(() => {
        const last = this.LA(0) as Token;
        if (last === before) return undefined;
        const leading = quantities[0];
        const quantity = leading?.start === start ? leading : undefined;
        return { start, end: last.end, text: this.text.slice(start, last.end), quantity, quantities: compact(quantities) };
      });
    });

    const priceRule = this.RULE("price", (): MenuPrice => {
      const start = (this.LA(1) as Token).startOffset;
      const before = this.OPTION(() => this.CONSUME(tokens.Currency) as Token);
      const numeral = this.CONSUME(tokens.Numeral) as Token;
      const after = this.OPTION1(() => this.CONSUME1(tokens.Currency) as Token);
      const labelStart = (this.LA(1) as Token).startOffset;
      this.OPTION2(() => this.CONSUME(tokens.Unit_));
      this.MANY(() => this.CONSUME(tokens.Word));
      return this.ACTION(() => {
        const { end } = this.LA(0) as Token;
        const label = end > labelStart ? this.span(labelStart, end) : undefined;
        this.noteNumeral(numeral);
        const currency = before ?? after;
        return { start, end, amount: numeral.value!, currency: currency && this.words(currency), label };
      });
    });

    this.performSelfAnalysis();
  }

  /** What the rule made of the line that is loaded; throws where the line does not fit the rule. */
  parse<T>(rule: ParserMethod<[], T>): T {
    const parts = rule.call(this);
    if (this.errors.length > 0) throw this.errors[0];
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
