/** The reference page of the rules, from the rules' own words and examples. */
import type { Rule } from "../rules/rule.ts";
import { fencedText, printBetween, printTable } from "./markers.ts";

/** The page with its list of rules and their chapters printed anew; the rest stays as it is. */
export function rulesPage(page: string, rules: readonly Rule[]): string {
  return printBetween(page, "rules", [listOf(rules), ...rules.map(chapterOf)].join("\n\n"));
}

function listOf(rules: readonly Rule[]): string {
  return printTable(
    ["code", "what it finds", "usually"],
    rules.map(({ code, severity, docs }) => [`[${code}](#${code})`, docs.title, severity]),
  );
}

/** The fences do not say `mutchkin`: these are examples of mistakes, and are not to be checked themselves. */
function chapterOf({ code, severity, docs }: Rule): string {
  return [
    `## ${code}`,
    `**${docs.title}.** Usually: ${severity}.`,
    docs.source ? `${docs.why} _Source: ${docs.source}_` : docs.why,
    "Found:",
    fencedText(docs.bad),
    "Put right:",
    fencedText(docs.good),
  ].join("\n\n");
}
