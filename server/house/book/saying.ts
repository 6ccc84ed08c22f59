/** What a directive says where it stands: looked up by what is declared, put in the book's words. */
import { labelOf } from "../../../grammar/directives.ts";
import type { Directive, Entry } from "../../../grammar/tree.ts";
import type { House } from "../house.ts";
import type { NameClass } from "../names.ts";
import type { Scope } from "../scope.ts";
import { attributeOf, type DirectiveRow, rowOf } from "./directives.ts";
import { type BookStyle, type System, styleOf } from "./style.ts";
import { type Said, type Saying, valueNamed } from "./values.ts";

/** Why a directive can say nothing, and which of its words that is about. */
export interface Unsaid {
  readonly because: string;
  readonly at: "name" | "label" | "in";
}

export interface Meant {
  readonly row: DirectiveRow;
  /** The recipe that it is about; absent for a part put together from the whole book. */
  readonly recipe?: Entry;
}

/** What a directive is about, or why nothing. */
export function meaningOf(house: House, scope: Scope, directive: Directive): Meant | Unsaid {
  const row = rowOf(directive);
  if (!row) return { because: `Nothing here is called “${directive.name.text}”.`, at: "name" };
  if (row.of.length === 0) return { row };
  const label = labelOf(directive);
  if (row.name !== "pour") return found(house, scope, row, row.of, label, "label");
  const within = attributeOf(directive, "in")?.trim() ?? "";
  return within
    ? found(house, scope, row, ["drink", "ingredient"], within, "in")
    : { because: `It does not say which recipe pours ${label || "it"}.`, at: "label" };
}

/** The text that a value's directive stands for; for a link to a recipe its name. */
export function saidBy(house: House, scope: Scope, directive: Directive): Said {
  const meant = meaningOf(house, scope, directive);
  if (!("row" in meant)) return meant;
  const { row, recipe } = meant;
  if (!recipe) return { because: "it stands for a part of the book" };
  if (row.name === "see") return { text: attributeOf(directive, "as") || recipe.name!.text };
  const value = valueNamed(row.name);
  const style = styleOf(house, scope);
  return value ? value.say(sayingOf(house, recipe, style, directive), labelOf(directive)) : { text: recipe.name!.text };
}

/** In the units and in the numbers that it asks for, else in the book's. */
function sayingOf(house: House, entry: Entry, style: BookStyle, directive: Directive): Saying {
  const units = attributeOf(directive, "units");
  const [first, second = first === "US" ? "metric" : "US"] = style.systems;
  const systems: readonly System[] = units === "both" ? [first, second] : units === "US" || units === "metric" ? [units] : [first];
  const asWords = attributeOf(directive, "words") !== undefined;
  const asFigures = attributeOf(directive, "figures") !== undefined;
  return { house, entry, style, systems, numbers: asWords ? "words" : asFigures ? "figures" : style.numbers };
}

function found(
  house: House,
  scope: Scope,
  row: DirectiveRow,
  classes: readonly NameClass[],
  name: string,
  at: "label" | "in",
): Meant | Unsaid {
  if (!name) return { because: "It does not say which recipe it means.", at };
  const entries = classes.flatMap((nameClass) => house.find(scope, nameClass, name)?.entry ?? []);
  const recipe = entries.find(({ kind }) => kind === "drink" || kind === "prep");
  if (recipe) return { row, recipe };
  return {
    because: entries.length > 0 ? `“${name}” is bought, and has no recipe.` : `No drink and no prep is called “${name}”.`,
    at,
  };
}
