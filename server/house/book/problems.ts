/** What keeps a book from being printed, each with its place in the author's text. */
import type { Directive, Entry } from "../../../grammar/tree.ts";
import type { SpecDocument } from "../document.ts";
import type { House } from "../house.ts";
import { showList } from "../show.ts";
import { type DirectiveRow, rowOf } from "./directives.ts";
import { meaningOf, saidBy } from "./saying.ts";

export interface BookProblem {
  /** The file, from the book's folder. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** UTF-16 units, counted from 1. */
  readonly column: number;
  readonly what: string;
  readonly todo: string;
}

/** All that is wrong with the directives and the specs of a chapter. `isPrinted` tells which recipes the book holds. */
export function problemsIn(house: House, document: SpecDocument, file: string, isPrinted: (recipe: Entry) => boolean): BookProblem[] {
  const { entries, starts } = document.tree;
  return entries.flatMap((entry, index) =>
    entry.lines.flatMap(({ content, text }, within): BookProblem[] => {
      const line = starts[index]! + within + 1;
      if (content.kind === "unread") {
        const column = text.length - text.trimStart().length + (document.margins?.[line - 1]?.length ?? 0) + 1;
        const todo = "Put it right, or start it with # to keep it as a remark; `mutchkin check` says more.";
        return [{ file, line, column, what: "This line of the spec does not read, so the recipe would print without it.", todo }];
      }
      if (content.kind !== "text") return [];
      return content.directives.flatMap((directive) =>
        wrong(house, document, directive, isPrinted).map(({ at, what, todo }) => ({ file, line, column: at + 1, what, todo })),
      );
    }),
  );
}

interface Wrong {
  /** Where on the line. */
  readonly at: number;
  readonly what: string;
  readonly todo: string;
}

function wrong(house: House, document: SpecDocument, directive: Directive, isPrinted: (recipe: Entry) => boolean): Wrong[] {
  const { name, label, start } = directive;
  const scope = house.scopeOf(document);
  const meant = meaningOf(house, scope, directive);
  if (!("row" in meant)) {
    const inValue = directive.attributes.find((one) => one.name.text === "in")?.value?.start;
    const at = { name: name.start, label: label?.start, in: inValue }[meant.at] ?? start;
    return [{ at, what: meant.because, todo: rowOf(directive) ? namesOfRecipes : knownNames }];
  }
  const { row, recipe } = meant;
  const found = attributesWrong(row, directive);
  if (!recipe || row.name === "spec") return found;
  if (row.name === "see") {
    const what = `The book never prints “${recipe.name?.text}”, so this leads nowhere.`;
    const todo = `Print it with ::spec[${recipe.name?.text}], put its spec in a chapter, or leave the reference out.`;
    return isPrinted(recipe) ? found : [...found, { at: label?.start ?? start, what, todo }];
  }
  const said = saidBy(house, scope, directive);
  if ("text" in said) return found;
  const todo = "State what is missing in the spec, or leave the value out of the text.";
  return [...found, { at: start, what: `:${name.text} cannot be said here: ${said.because}.`, todo }];
}

function attributesWrong({ name, attributes }: DirectiveRow, directive: Directive): Wrong[] {
  const unknown = directive.attributes.flatMap((written): Wrong[] => {
    const row = attributes.find((one) => one.name === written.name.text);
    if (!row) {
      const todo = attributes.length > 0 ? `It takes ${showList(attributes.map((one) => one.name))}.` : "Leave it out: it takes none.";
      return [{ at: written.name.start, what: `:${name} takes no “${written.name.text}”.`, todo }];
    }
    if (!row.values || (written.value && row.values.includes(written.value.text))) return [];
    const what = `“${written.value?.text ?? ""}” is nothing that “${row.name}” can be.`;
    return [{ at: (written.value ?? written.name).start, what, todo: `It takes ${showList(row.values)}.` }];
  });
  const missing = attributes.filter((one) => one.needed && !directive.attributes.some((written) => written.name.text === one.name));
  return [
    ...unknown,
    ...missing.map((one) => ({
      at: directive.start,
      what: `:${name} does not say its “${one.name}”.`,
      todo: one.values ? `Add {${one.name}=${one.values[0]}}, or one of ${showList(one.values)}.` : `Add {${one.name}="…"}.`,
    })),
  ];
}

const namesOfRecipes = "Check the spelling, or write the spec: a label is the name of a drink or a prep of the house.";
const knownNames = "Check the spelling. If it is no directive at all, write \\: for the colon.";
