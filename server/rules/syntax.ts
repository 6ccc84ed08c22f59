/**
 * What the parser finds in a line as text: one rule for each of its codes, all of them alike. The words
 * come from the parser; here stands why it matters, and how loud it is.
 */
import { findField, type Shape } from "../../grammar/fields.ts";
import { type Entry, isOwnKind, type SyntaxCode, type SyntaxProblem } from "../../grammar/tree.ts";
import type { Edit, Fix } from "../house/finding.ts";
import type { Found, Rule } from "./rule.ts";

type Row = Pick<Rule, "severity"> & Rule["docs"] & { readonly safe: boolean };

const rows: Readonly<Record<SyntaxCode, Row>> = {
  syntax: {
    title: "A line reads as nothing",
    severity: "error",
    safe: false,
    why: "A line that reads as nothing, or lacks a part, counts as nothing: the drink is computed without it. The lines above and below are not touched by it.",
    bad: spec("  50 ml gin", "  swap gin 40 ml vodka"),
    good: spec("  50 ml gin"),
  },
  unindented: {
    title: "A line of a spec stands at the margin",
    severity: "warning",
    safe: true,
    why: "Lines at the margin open entries; what belongs to an entry is indented below it. A pasted spec often loses its indent. The line is read with the entry above it, until somebody puts another entry between.",
    bad: spec("50 ml gin"),
    good: spec("  50 ml gin"),
  },
  "unknown-entry": {
    title: "A margin line opens nothing known",
    severity: "error",
    safe: false,
    why: "Only the eight entry words open an entry. Below any other word the lines are kept and coloured, but nothing is computed from them and no other fault is found there.",
    bad: "drnk Slip Water\n  50 ml gin\n",
    good: spec("  50 ml gin"),
  },
  "decimal-comma": {
    title: "A decimal comma",
    severity: "warning",
    safe: true,
    why: "Commas part a name from its remarks here, and thousands from hundreds elsewhere. A point leaves no doubt.",
    bad: spec("  2,5 cl gin"),
    good: spec("  2.5 cl gin"),
  },
  "thousands-comma": {
    title: "A comma before three digits",
    severity: "error",
    safe: false,
    why: "`1,000` is a thousand to one reader and one to another. Nothing is computed from it until it is written in a way that has one meaning.",
    bad: "prep plain syrup\n  1,000 g sugar\n  1000 g water\n",
    good: "prep plain syrup\n  1000 g sugar\n  1000 g water\n",
  },
  "hyphen-fraction": {
    title: "A hyphen before a fraction",
    severity: "warning",
    safe: true,
    why: "`1-1/2` looks like a range from one to a half. It is read as one and a half, which a blank says plainly.",
    bad: spec("  1-1/2 oz gin"),
    good: spec("  1 1/2 oz gin"),
  },
  "reversed-range": {
    title: "A range that runs downwards",
    severity: "warning",
    safe: true,
    why: "A range is from the smaller amount to the larger. The other way round, one of the two is often a slip of the finger.",
    bad: spec("  55-45 ml gin"),
    good: spec("  45-55 ml gin"),
  },
  "turned-pour": {
    title: "The name before the amount",
    severity: "warning",
    safe: true,
    why: "The amount stands first, so that a column of amounts can be read at a glance and compared line by line.",
    bad: spec("  gin 50 ml"),
    good: spec("  50 ml gin"),
  },
  "unclosed-quote": {
    title: "A quotation mark that is never closed",
    severity: "warning",
    safe: false,
    why: "An open quotation mark makes the rest of the line part of the name, remarks and all.",
    bad: spec('  50 ml "gin'),
    good: spec('  50 ml "gin"'),
  },
  "allow-without-reason": {
    title: "Something is allowed without a reason",
    severity: "warning",
    safe: false,
    why: "An allowance outlives whoever wrote it. Without the reason nobody dares to take it out; so it allows nothing until it gives one.",
    bad: spec("  50 ml gin  # allow unmeasurable"),
    good: spec("  51 ml gin  # allow unmeasurable: our thimble holds 51"),
  },
  "missing-amount": {
    title: "A pour without an amount",
    severity: "warning",
    safe: false,
    why: "Without an amount nothing about the drink can be computed, and two people pour two drinks. `, to taste` says that this is meant.",
    bad: spec("  50 ml gin", "  orange bitters"),
    good: spec("  50 ml gin", "  2 dashes orange bitters"),
  },
  "bare-count": {
    title: "A number straight after a count",
    severity: "warning",
    safe: false,
    why: "`30 12 year rye` may be thirty of a twelve year old, or a slip for three hundred and twelve. A unit between the two leaves no doubt.",
    bad: "stock 12 year rye\n  kind: spirit\n  abv: 45 %\n\nprep pot\n  1 12 year rye\n",
    good: "stock 12 year rye\n  kind: spirit\n  abv: 45 %\n\nprep pot\n  30 ml 12 year rye\n",
  },
};

export const syntaxRules: readonly Rule[] = (Object.entries(rows) as [SyntaxCode, Row][]).map(([code, { severity, safe, ...docs }]) => ({
  code,
  severity,
  docs,
  entries: ["house", "stock", "prep", "drink", "menu", "family", "glass", "ice", "book", "preamble", "unknown"],
  *check(_house, entry) {
    for (const { line, problem, text } of problemsIn(entry)) {
      if (problem.code !== code) continue;
      yield {
        place: { line, start: problem.start, end: problem.end },
        ...(continuedList(entry, line) ?? { what: problem.what, todo: problem.todo }),
        fixes: () => fixesFor(entry, { line, problem, text }, safe),
      };
    }
  },
}));

/** What is said of a line on which somebody goes on with the list above; absent where it is none. */
function continuedList(entry: Entry, line: number): Pick<Found, "what" | "todo"> | undefined {
  if (entry.lines[line]?.problem?.code !== "missing-amount") return undefined;
  const above = entry.lines.slice(0, line).findLast(({ problem }) => problem?.code !== "missing-amount")?.content;
  if (above?.kind !== "field" || !isOwnKind(entry.kind)) return undefined;
  const name = above.name.text.toLowerCase();
  const mayPour = entry.kind === "drink" || entry.kind === "prep";
  const isList = listShapes.has(findField(name, entry.kind)?.shape);
  if (!isList || (mayPour && !/[;,]\s*$/.test(above.value?.text ?? ""))) return undefined;
  return {
    what: `A list stands on one line, so this is no part of “${name}” above.`,
    todo: `Put it behind the last of the list, on the line of \`${name}:\`.`,
  };
}
const listShapes: ReadonlySet<Shape | undefined> = new Set<Shape>(["items", "words", "steps"]);

function fixesFor(entry: Entry, at: ProblemAt, safe: boolean): Fix[] {
  const { problem } = at;
  if (problem.code === "unindented") return indenting(entry, at);
  return textsInstead(problem, at.text).map((instead) => ({ title: `Write “${instead}”`, safe, edits: [editOf(entry, at, instead)] }));
}

/** This line, or every line of the entry that lost its indent: a pasted spec lost it on all of them. */
function indenting(entry: Entry, at: ProblemAt): Fix[] {
  const all = problemsIn(entry).filter(({ problem }) => problem.code === "unindented");
  const fix = (title: string, some: readonly ProblemAt[]): Fix => ({
    title,
    safe: true,
    edits: some.map((one) => editOf(entry, one, one.problem.instead ?? `  ${one.text}`)),
  });
  const whole = fix(`Indent all ${all.length} lines of this ${entry.kind}`, all);
  return all.length > 1 ? [whole, fix("Indent this line", [at])] : [fix("Indent this line", [at])];
}

function editOf(entry: Entry, { line, problem }: ProblemAt, text: string): Edit {
  return { entry, line, start: problem.start, end: problem.end, text };
}

interface ProblemAt {
  readonly line: number;
  readonly problem: SyntaxProblem;
  readonly text: string;
}

const problems = new WeakMap<Entry, readonly ProblemAt[]>();

/** Read once for all of the codes: most entries have none. */
function problemsIn(entry: Entry): readonly ProblemAt[] {
  let found = problems.get(entry);
  if (!found) {
    found = entry.lines.flatMap(({ problem, text }, line) => (problem ? [{ line, problem, text }] : []));
    problems.set(entry, found);
  }
  return found;
}

/** The texts that would put the line right; for `1,000` both of its meanings. */
function textsInstead(problem: SyntaxProblem, text: string): string[] {
  if (problem.instead !== undefined) return [problem.instead];
  if (problem.code !== "thousands-comma") return [];
  const written = text.slice(problem.start, problem.end);
  return [written.replace(",", ""), written.replace(",", ".")];
}

/** A whole drink in which nothing else is found. */
function spec(...lines: string[]): string {
  return `drink Slip Water\n  glass: highball\n  method: build over cubed ice\n  garnish: none\n${lines.join("\n")}\n`;
}
