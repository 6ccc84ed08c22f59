/** An ingredient in free words as the pour that it plainly is. Whatever might be something else stays in words. */
import { readLine } from "../../grammar/line.ts";
import { modifiers } from "../house/modifiers.ts";
import { squeezed } from "./import-lines.ts";

export type Ingredient = { readonly lines: readonly string[] } | { readonly field: "garnish" | "rim"; readonly item: string };

/** Ours, and what others write for the same. */
const endings = [
  { field: "garnish", ending: /^(.+?),? (?:to|for|as) garnish$/i },
  { field: "rim", ending: /^(.+?),? (?:to|for) (?:the )?rim$/i },
] as const;

/** Absent for what does not read as an amount and what it is of. */
export function ingredientLines(text: string): Ingredient | undefined {
  const whole = squeezed(text);
  for (const { field, ending } of endings) {
    const item = ending.exec(whole)?.[1];
    if (item) return { field, item };
  }
  const topped = /^(.+?),? to top(?: up)?$/i.exec(whole)?.[1];
  const top = topped && pourOf(`top ${topped}`);
  if (top) return { lines: [top] };
  // What is in brackets says the same in other words, mostly: it stays beside the pour.
  const aside = /\(([^()]*)\)/.exec(whole);
  const isModifier = aside && modifiers.some(({ word }) => word === aside[1]!.trim().toLowerCase());
  const bare = !aside ? whole : squeezed(whole.replace(aside[0], " ").replace(" ,", ",")) + (isModifier ? `, ${aside[1]!.trim()}` : "");
  const [first = "", ...others] = bare.split(/ or (?=\d|[½¼¾⅓⅔])/);
  const pours = [first, ...others].map(pourOf);
  if (pours.some((pour) => pour === undefined)) return undefined;
  const lines = pours.map((pour, index) => (index === 0 ? pour! : `or ${pour}`));
  return { lines: aside && !isModifier ? [`${lines[0]} # ${aside[0]}`, ...lines.slice(1)] : lines };
}

/** The text in the language's one spelling, where it reads as one pour and nothing else. */
function pourOf(text: string): string | undefined {
  let line = text;
  for (let tries = 0; tries < 5; tries++) {
    const { content, problem, comment } = readLine(`  ${line}`);
    if (content.kind !== "pour" || comment) return undefined;
    if (problem) {
      if (problem.instead === undefined) return undefined;
      line = line.slice(0, problem.start - 2) + problem.instead + line.slice(problem.end - 2);
      continue;
    }
    const { name, quantity, lead } = content.pour;
    const toTaste = /, to taste\b/i.test(name?.text ?? "");
    return name && (quantity || lead || toTaste) && (name.quoted || isPlain(name.text)) ? line : undefined;
  }
  return undefined;
}

/** One thing and what is said of it: another number would be another amount. */
function isPlain(name: string): boolean {
  const bare = name.replace(/, at [-−]?\d+(?:\.\d+)? ?°?[CF]\b/g, "");
  return /^\p{L}[^\d;:()[\]/+&"]*$/u.test(bare);
}
