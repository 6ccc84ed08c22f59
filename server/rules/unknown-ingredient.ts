/** A pour's name that nothing of the house or the larder goes by. */
import type { Entry, Name, Pour } from "../../grammar/tree.ts";
import type { Addition, Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { askFor, nearestNames } from "../house/nearest.ts";
import type { Resolution, Scope } from "../house/scope.ts";
import { stockFacts } from "../house/stock.ts";
import { writtenName } from "../house/write.ts";
import { poursNamed } from "./pours.ts";
import type { Rule } from "./rule.ts";
import { slippedUnit } from "./unknown-unit.ts";

export const unknownIngredient: Rule = {
  code: "unknown-ingredient",
  severity: "warning",
  entries: ["drink", "prep"],
  docs: {
    title: "An ingredient that nothing is known of",
    why: "Strength, balance and cost of a drink are unknown as long as one thing in it is. A name that is spelt in two ways is two things to the order sheet as well. Names count from the house, the houses above it, and the built-in larder.",
    bad: "drink Slip Water\n  glass: highball\n  method: build over cubed ice\n  garnish: none\n  50 ml aged rmu\n  100 ml soda water\n",
    good: "drink Slip Water\n  glass: highball\n  method: build over cubed ice\n  garnish: none\n  50 ml aged rum\n  100 ml soda water\n",
  },
  *check(house, entry) {
    const scope = house.scopeOf(entry);
    for (const { line, pour, name, ingredient } of poursNamed(house, entry)) {
      const { resolution } = ingredient;
      if (resolution.found || unclear(house, scope, entry, line, pour)) continue;
      const near = nearestNames(house, scope, "ingredient", resolution.text);
      yield {
        place: { line, start: resolution.start, end: resolution.end },
        what: `“${resolution.text}” is in neither the house nor the larder, so what it brings to the ${entry.kind} is unknown.`,
        todo: askFor(near, "Declare it as a stock or a prep, or correct the name."),
        fixes: () => [
          ...near.map((other) => renamed(entry, line, name, resolution, other)),
          declared(house, scope, entry, resolution.text),
        ],
      };
    }
  },
};

/** Another rule has the better word for this line. */
function unclear(house: House, scope: Scope, entry: Entry, line: number, pour: Pour): boolean {
  const code = entry.lines[line]?.problem?.code;
  return (
    code === "syntax" ||
    code === "missing-amount" ||
    code === "bare-count" ||
    code === "unclosed-quote" ||
    slippedUnit(house, scope, pour) !== undefined
  );
}

function renamed(entry: Entry, line: number, name: Name, { start, end }: Resolution, other: string): Fix {
  const from = name.quoted?.start ?? start;
  return { title: `Change to “${other}”`, safe: false, edits: [{ entry, line, start: from, end, text: writtenName(other) }] };
}

function declared(house: House, scope: Scope, entry: Entry, name: string): Fix {
  const kind = kindOf(house, scope, name);
  const text = `\nstock ${writtenName(name)}\n${kind ? `  kind: ${kind}\n` : ""}`;
  const addition: Addition = { uri: placeForStock(house, scope, entry), text };
  return { title: `Declare “${name}” as a stock`, safe: false, edits: [addition] };
}

/** The kind of the longest known name that this one ends in: a `bay leaf gin` is a gin, and so a spirit. */
function kindOf(house: House, scope: Scope, name: string): string | undefined {
  const words = name.split(" ");
  for (let from = 1; from < words.length; from++) {
    const found = house.lookup(scope, "ingredient", words.slice(from).join(" "))[0]?.entry;
    if (found?.kind === "stock") return stockFacts(house, found).kind;
  }
  return undefined;
}

/** The file of the house that holds most stocks; this one where none holds any. */
function placeForStock(house: House, scope: Scope, entry: Entry): string {
  let place = house.getDocumentOf(entry).uri;
  let most = 0;
  for (const document of house.documents()) {
    const stocks = document.tree.entries.filter(({ kind }) => kind === "stock").length;
    if (stocks <= most || house.scopeOf(document) !== scope) continue;
    most = stocks;
    place = document.uri;
  }
  return place;
}
