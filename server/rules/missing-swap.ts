/** A swap, or a `without`, of what the drink does not pour; or of what it pours twice. */
import type { Entry, Name } from "../../grammar/tree.ts";
import { findFieldIn } from "../house/entry.ts";
import type { Fix } from "../house/finding.ts";
import { nearestOf } from "../house/nearest.ts";
import { flatten, type RiffProblem } from "../house/riff.ts";
import { showList } from "../house/show.ts";
import { writtenName } from "../house/write.ts";
import { isFaulty, placeOf } from "./places.ts";
import type { Found, Rule } from "./rule.ts";
import { specimen } from "./specimen.ts";

const parent = specimen(["50 ml gin", "100 ml soda water"]);

export const missingSwap: Rule = {
  code: "missing-swap",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "A change of what is not there",
    why: "A swap that finds nothing changes nothing: the riff is poured as its parent, or with an ingredient too many. Changes are looked for in the parent as it stands after its own riffs.",
    bad: `${parent}\ndrink Slip Water, Dark\n  from: Slip Water\n  swap rum for brandy\n`,
    good: `${parent}\ndrink Slip Water, Dark\n  from: Slip Water\n  swap gin for brandy\n`,
  },
  *check(house, entry) {
    const { problems, parent: above, pours } = flatten(house, entry);
    // Without its parent nothing can be found in it: that is the other rule's finding.
    if (!above && findFieldIn(entry, "from")) return;
    const there = [...new Set([...(above?.pours ?? []), ...pours].map((pour) => pour.ingredient.resolution.text))];
    for (const problem of problems) {
      if (isFaulty(entry.lines[problem.line]!)) continue;
      if (problem.kind === "missing") yield missing(entry, problem, there);
      else if (problem.kind === "ambiguous") yield ambiguous(problem);
    }
  },
};

function missing(entry: Entry, problem: RiffProblem, there: readonly string[]): Found {
  const name = changedName(entry, problem.line);
  const near = nearestOf(problem.name, there);
  const choices = near.length > 0 ? near : there;
  return {
    place: name ? placeOf(problem.line, name) : problem,
    what: `Nothing here pours “${problem.name}”, so this line changes nothing.`,
    todo: there.length > 0 ? `There is ${showList(there, 6)}.` : "Name the parent with `from:` first.",
    fixes: () => (name ? choices.slice(0, 6).map((other) => changed(entry, problem.line, name, other)) : []),
  };
}

function ambiguous(problem: RiffProblem): Found {
  return {
    place: { line: problem.line, start: problem.start, end: problem.end },
    what: `“${problem.name}” is poured more than once, and this line does not say which one it means, so it changes nothing.`,
    todo: "Put the amount of the one that is meant before its name, or write `without all`.",
  };
}

/** What the line wants to change. */
function changedName(entry: Entry, line: number): Name | undefined {
  const content = entry.lines[line]?.content;
  return content?.kind === "swap" ? content.readings[0]?.out.name : content?.kind === "without" ? content.pour?.name : undefined;
}

function changed(entry: Entry, line: number, name: Name, other: string): Fix {
  return {
    title: `Change to “${other}”`,
    safe: false,
    edits: [{ entry, ...placeOf(line, name.quoted ?? name), text: writtenName(other) }],
  };
}
