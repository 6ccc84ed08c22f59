/** A directive in a book's text: what it prints, and the recipe that it says it of. */
import type { Directive } from "../../../grammar/tree.ts";
import { meaningOf, saidBy } from "../../house/book/saying.ts";
import type { House } from "../../house/house.ts";
import type { Scope } from "../../house/scope.ts";
import type { Measure } from "../../house/show.ts";
import { bold, paragraphs } from "../markdown.ts";
import { describeEntry } from "./entry.ts";

export function describeDirective(house: House, scope: Scope, directive: Directive, measure: Measure): string {
  const meant = meaningOf(house, scope, directive);
  if (!("row" in meant)) return `Prints nothing. ${meant.because}`;
  const { row, recipe } = meant;
  const said = recipe && !row.block ? saidBy(house, scope, directive) : undefined;
  const prints = said && ("text" in said ? `Prints ${bold(said.text)}` : `Prints nothing: ${said.because}.`);
  return paragraphs([prints, row.doc].filter(Boolean).join(" · "), recipe && describeEntry(house, recipe, measure));
}
