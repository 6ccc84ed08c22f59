/**
 * The tokens of a line. A keyword's token also counts as a plain word, so no word is reserved inside a
 * name: the grammar asks for the keyword only where it means something.
 */
import { createToken, type IToken, Lexer, type TokenType } from "chevrotain";
import type { NumeralForm } from "./numerals.ts";
import type { Unit } from "./units.ts";

/**
 * A piece of a line; `end` is exclusive. `value`, `form` and `instead` are a numeral's, `unit` is a
 * unit's. Tokens live as long as their line is being read: `clearTokens` takes them all back.
 */
export interface Token extends IToken {
  end: number;
  value: number | undefined;
  form: NumeralForm | undefined;
  instead: string | undefined;
  unit: Unit | undefined;
}

/** A token of this type from `start` to `end`. */
export function makeToken(tokenType: TokenType, start: number, end: number): Token {
  const token = made < pool.length ? pool[made]! : newToken();
  made++;
  token.tokenType = tokenType;
  token.tokenTypeIdx = tokenType.tokenTypeIdx!;
  token.startOffset = start;
  token.end = end;
  token.value = undefined;
  token.unit = undefined;
  return token;
}

/** Takes back the tokens of the line before. */
export function clearTokens(): void {
  made = 0;
}

const pool: Token[] = [];
let made = 0;

function newToken(): Token {
  const token = {
    image: "",
    tokenType: Word,
    tokenTypeIdx: 0,
    startOffset: 0,
    end: 0,
    value: undefined,
    form: undefined,
    instead: undefined,
    unit: undefined,
  };
  pool.push(token);
  return token;
}

const category = (name: string) => createToken({ name, pattern: Lexer.NA });
const token = (name: string, ...categories: TokenType[]) => createToken({ name, pattern: Lexer.NA, categories });

/** Whatever may stand in a name. */
export const Any = category("Any");
/** Whatever may stand between quotation marks. */
export const Unquoted = category("Unquoted");
/** Whatever may stand in one part of a field's value, amounts apart. */
export const Text = category("Text");

const word = (name: string) => token(name, Any, Unquoted, Text);
export const Word = word("Word");
/** The unit after a numeral: one whole word, or two (`fl oz`). */
export const Unit_ = word("Unit");
/** `of`, straight after a unit. */
export const Of = word("Of");
export const Top = word("Top");
/** `to` before an amount. */
export const To = word("To");
export const Rinse = word("Rinse");
export const Some = word("Some");
export const All = word("All");
export const Slash = word("Slash");
/** A sign (`£`) or a code (`GBP`). */
export const Currency = word("Currency");
export const Quote = token("Quote", Any, Text);
export const Numeral = token("Numeral", Any, Unquoted);
/** `about` before a numeral. */
export const About = token("About", Any, Unquoted);
/** A dash or `to` between two numerals. */
export const RangeMark = token("RangeMark", Any, Unquoted);
export const Comma = token("Comma", Any, Unquoted);
export const Semicolon = token("Semicolon", Any, Unquoted);
// What a line starts with. These stand in no name.
export const EntryWord = token("EntryWord");
/** Behind a field's name. */
export const Colon = token("Colon");
export const Or = token("Or");
export const Swap = token("Swap");
export const Without = token("Without");
export const Section = token("Section");
export const MenuDash = token("MenuDash");
/** The `for` that parts a swap. */
export const For = token("For");
/** Nothing on the line: where a name ends and the amount or the price behind it starts. */
export const Split = token("Split");

export const tokenTypes: TokenType[] = [
  ...[Any, Unquoted, Text],
  ...[Word, Unit_, Of, Top, To, Rinse, Some, All, Slash, Currency, Quote, Numeral, About, RangeMark, Comma, Semicolon],
  ...[EntryWord, Colon, Or, Swap, Without, Section, MenuDash, For, Split],
];
