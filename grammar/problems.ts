/** The words for what can be wrong with a line as text: what is wrong, and what to do. */
import { entryKinds } from "./fields.ts";
import type { NumeralForm } from "./numerals.ts";
import type { Span, SyntaxProblem, Words } from "./tree.ts";

/** The longest line that is read; a longer one is kept as it is. */
export const longestLine = 10_000;

const at = ({ start, end }: Span): Span => ({ start, end });
const entryList = `${entryKinds.slice(0, -1).join(", ")} or ${entryKinds[entryKinds.length - 1]}`;

export function oddNumeral(numeral: Words, form: NumeralForm, instead: string | undefined): SyntaxProblem {
  if (form === "decimal-comma") {
    return {
      ...at(numeral),
      code: "decimal-comma",
      what: `${numeral.text} is written with a decimal comma; it is read as ${instead}.`,
      todo: `Write ${instead}.`,
      instead,
    };
  }
  if (form === "hyphen-fraction") {
    return {
      ...at(numeral),
      code: "hyphen-fraction",
      what: `${numeral.text} looks like a range; it is read as ${instead}.`,
      todo: `Write ${instead}.`,
      instead,
    };
  }
  const choices = instead ?? `${numeral.text.replace(",", "")} or ${numeral.text.replace(",", ".")}, whichever is meant`;
  return {
    ...at(numeral),
    code: "thousands-comma",
    what: `${numeral.text} can mean two amounts a thousandfold apart, so nothing is computed from it.`,
    todo: `Write ${choices}.`,
    instead,
  };
}

export function reversedRange(range: Words, first: Words, second: Words): SyntaxProblem {
  const between = range.text.slice(first.end - range.start, second.start - range.start);
  const instead = second.text + between + first.text;
  return {
    ...at(range),
    code: "reversed-range",
    what: `The range ${range.text} runs from the larger amount to the smaller.`,
    todo: `Write ${instead}.`,
    instead,
  };
}

export function unclosedQuote(start: number, written: string): SyntaxProblem {
  const opening = written.charCodeAt(0);
  const closing = opening === 34 ? '"' : "”";
  return {
    start,
    end: start + written.length,
    code: "unclosed-quote",
    what: "This quotation mark is never closed, so the name runs to the end of the line.",
    todo: "Close it at the end of the name.",
    instead: written + closing,
  };
}

export function bareCount(second: Words, count: string): SyntaxProblem {
  return {
    ...at(second),
    code: "bare-count",
    what: `The number ${second.text} stands straight after the number ${count}, so it is not clear where the amount ends.`,
    todo: `Put a unit after ${count}, or put the name in quotation marks.`,
  };
}

export function missingAmount(name: Words, field: string | undefined): SyntaxProblem {
  return {
    ...at(name),
    code: "missing-amount",
    what: "No amount stands here, so nothing can be computed from this line.",
    todo: field
      ? `Put a colon after “${field}” if the field is meant; else put an amount first, or add “, to taste”.`
      : "Put an amount first, such as 25 ml, or add “, to taste”.",
  };
}

export function turnedPour(pour: Words, instead: string): SyntaxProblem {
  return {
    ...at(pour),
    code: "turned-pour",
    what: "The name stands before the amount; it is read the other way round.",
    todo: `Write ${excerpt(instead)}.`,
    instead,
  };
}

/** What was written, cut short where a message would run on for lines. */
export function excerpt(written: string): string {
  return written.length <= 60 ? written : `${written.slice(0, 59)}…`;
}

/** A part that the line lacks. */
export function lacking(where: Span, what: string, todo: string): SyntaxProblem {
  return { ...at(where), code: "syntax", what, todo };
}

export function unreadable(where: Span): SyntaxProblem {
  return lacking(
    where,
    "This line reads as nothing that a spec holds.",
    "Take it out, or put # and a space before it to keep it as a comment.",
  );
}

export function tooLong(length: number): SyntaxProblem {
  return lacking(
    { start: 0, end: length },
    `This line is longer than ${longestLine.toLocaleString("en")} characters, so it is not read.`,
    "Break it into shorter lines.",
  );
}

export function homeless(where: Span): SyntaxProblem {
  return lacking(
    where,
    "This line stands under no entry, so it belongs to nothing.",
    "Put a line such as “drink NAME” above it, from the margin.",
  );
}

export function unknownEntry(word: Words, guess: string | undefined, colon: boolean): SyntaxProblem {
  const todo = guess
    ? `Write “${guess}”${colon ? " without the colon" : ""}, or indent the line if it belongs to the entry above.`
    : `Start the line with ${entryList}, or indent it if it belongs to the entry above.`;
  return { ...at(word), code: "unknown-entry", what: `“${excerpt(word.text)}” at the margin opens nothing known.`, todo, instead: guess };
}

export function unindented(text: string): SyntaxProblem {
  return {
    start: 0,
    end: text.length,
    code: "unindented",
    what: "This line belongs to the entry above, but stands at the margin.",
    todo: "Indent this line.",
    instead: `  ${text}`,
  };
}

export function allowWithoutReason(allow: Span): SyntaxProblem {
  return {
    ...at(allow),
    code: "allow-without-reason",
    what: "This lets a finding stand without saying why.",
    todo: "Add a colon and the reason, for whoever reads it next.",
  };
}
