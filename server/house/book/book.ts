/**
 * A book as data: its chapters in order, every recipe where it is printed, what its directives say, what
 * its links lead to, and all that keeps it from being printed. Whatever lays it out adds nothing.
 */
import type { Token } from "markdown-it";
import type { Directive, Entry } from "../../../grammar/tree.ts";
import { fileNameOf, type SpecDocument } from "../document.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import type { Scope } from "../scope.ts";
import { type ChapterText, chapterTexts, type ReadChapter, readChapter, titleOfFile } from "./chapters.ts";
import { attributeOf } from "./directives.ts";
import { linksIn } from "./links.ts";
import { type Meaning, wordsOf } from "./meaning.ts";
import { type Part, partIds, partNames } from "./parts.ts";
import { type BookProblem, problemsIn } from "./problems.ts";
import { type Recipe, recipeOf } from "./recipe.ts";
import { meaningOf, saidBy } from "./saying.ts";
import { slugger } from "./slugs.ts";
import { type BookStyle, type IndexKind, styleOf } from "./style.ts";

export interface Book {
  readonly house: House;
  readonly entry: Entry;
  readonly style: BookStyle;
  readonly title: string;
  readonly subtitle?: string;
  readonly author?: string;
  readonly rights?: string;
  readonly chapters: readonly Chapter[];
  /** In the order of print: those of the chapters, then the preps that these call for and no chapter prints. */
  readonly recipes: readonly PrintedRecipe[];
  /** The parts that a chapter has put in their place. */
  readonly placed: readonly Part[];
  /** By the file's path from the book's folder. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
  readonly problems: readonly BookProblem[];
  /** Where an entry is printed; absent where it is not. */
  printed(entry: Entry): PrintedRecipe | undefined;
}

export interface Chapter {
  readonly file: string;
  readonly text: string;
  readonly id: string;
  readonly title: string;
  /** Whether the author's text starts with the title; else it is to be printed above. */
  readonly isTitled: boolean;
  readonly tokens: readonly Token[];
  readonly recipes: readonly PrintedRecipe[];
  /** What its sentences say by directives, in the order of the text. */
  readonly said: readonly SaidInText[];
}

/** A directive in a sentence and what stands there in print. */
export interface SaidInText {
  /** Of the file, counted from 0; the span is the line's. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** As the author wrote it. */
  readonly source: string;
  readonly text: string;
  /** What a reference leads to. */
  readonly id?: string;
}

export interface PrintedRecipe {
  readonly recipe: Recipe;
  readonly id: string;
  /** In the order of print, from 1: what the indexes refer to. */
  readonly number: number;
  /** Absent for a prep that the book adds at its end. */
  readonly chapter?: string;
  /** Of the chapter's file. */
  readonly line: number;
  /** The level of the heading that is its name. */
  readonly level: number;
  /** Its name is the author's own heading right above. */
  readonly isNamed: boolean;
}

/** What a book is printed from beside its house. */
export interface BookFiles {
  /** Every Markdown text in the book's folder and below. */
  readonly texts: readonly ChapterText[];
  /** The bytes of a file, by its path from the book's folder; absent where none stands there. Without it no picture is looked for. */
  picture?(file: string): Uint8Array | undefined;
}

/** The book that an entry declares. */
export function readBook(house: House, entry: Entry, files: BookFiles): Book {
  const { uri } = house.getDocumentOf(entry);
  const scope = house.scopeOf(entry);
  const style = styleOf(house, scope);
  const problems: BookProblem[] = [];
  const texts = chapterTexts(entry, fileNameOf(uri), house.getLineOf(entry) + 1, files.texts, problems);
  const read = texts.map((text) => readChapter(house, text));
  const idOf = slugger(partIds);
  const recipes = printedIn(house, read, style, idOf, problems);
  const byEntry = new Map(recipes.map((one) => [one.recipe.entry, one]));
  const isPrinted = (one: Entry) => byEntry.has(one);
  for (const { document, file } of read) if (document) problems.push(...problemsIn(house, document, file, isPrinted));
  const placed: Part[] = [];
  for (const chapter of read) speak(house, chapter, byEntry, placed);
  const chapters = read.map((chapter) => chapterOf(house, chapter, idOf, byEntry));
  const pictures = linksIn(read, chapters, files, problems);
  const field = (name: string) => findFieldIn(entry, name)?.field.value?.text;
  const [subtitle, author, rights] = [field("subtitle"), field("author"), field("rights")];
  const order = new Map(texts.map(({ file }, index) => [file, index]));
  return {
    house,
    entry,
    style,
    title: entry.name?.text ?? fileNameOf(uri),
    ...(subtitle && { subtitle }),
    ...(author && { author }),
    ...(rights && { rights }),
    chapters,
    recipes,
    placed,
    pictures,
    problems: problems.sort(
      (one, other) => (order.get(one.file) ?? -1) - (order.get(other.file) ?? -1) || one.line - other.line || one.column - other.column,
    ),
    printed: (one) => byEntry.get(one),
  };
}

/** Every recipe in the order of print, once; what the chapters' recipes call for and no chapter prints comes last. */
function printedIn(
  house: House,
  chapters: readonly ReadChapter[],
  style: BookStyle,
  idOf: (text: string) => string,
  problems: BookProblem[],
): PrintedRecipe[] {
  const found = new Map<Entry, PrintedRecipe>();
  const add = (entry: Entry, where: Omit<PrintedRecipe, "recipe" | "id" | "number">) => {
    const recipe = recipeOf(house, entry, style);
    found.set(entry, { recipe, id: idOf(recipe.name), number: found.size + 1, ...where });
  };
  for (const { file, places } of chapters) {
    for (const { entry, line, level, heading } of places) {
      const there = found.get(entry);
      if (!there) add(entry, { chapter: file, line, level, isNamed: heading !== undefined });
      else {
        const what = `“${entry.name!.text}” is printed already, at ${there.chapter}:${there.line}.`;
        problems.push({ file, line, column: 1, what, todo: "Refer to it with :see[…], or leave one of the two out." });
      }
    }
  }
  // Grows while it is walked: a prep may call for another.
  const wanted = new Set([...found.values()].flatMap(({ recipe }) => calledFor(recipe)));
  for (const entry of wanted) if (!found.has(entry)) for (const next of calledFor(recipeOf(house, entry, style))) wanted.add(next);
  const missing = [...wanted].filter((entry) => !found.has(entry) && entry.name && !house.isLarder(entry));
  const names = new Intl.Collator("en");
  missing.sort((one, other) => names.compare(one.name!.text, other.name!.text));
  for (const entry of missing) add(entry, { line: house.getLineOf(entry) + 1, level: 2, isNamed: false });
  return [...found.values()];
}

function calledFor({ ingredients }: Recipe): Entry[] {
  return ingredients.flatMap((line) => [line, ...line.alternatives]).flatMap(({ recipe }) => recipe ?? []);
}

/** Puts in a chapter's tokens what its directives and fences stand for. */
function speak(house: House, { document, tokens, places }: ReadChapter, printed: ReadonlyMap<Entry, PrintedRecipe>, placed: Part[]): void {
  if (!document) return;
  const scope = house.scopeOf(document);
  for (const token of tokens) {
    const here = places.filter((one) => one.token === token);
    if (token.type === "directive") {
      const directive = token.meta as Directive;
      const part = partNames.find((name) => name === directive.name.text);
      const by = attributeOf(directive, "by") as IndexKind | undefined;
      const asked = part && { name: part, ...(by && { by }) };
      if (asked) placed.push(asked);
      token.meta = asked ? { part: asked } : ({ recipes: here.flatMap(({ entry }) => printed.get(entry) ?? []) } satisfies Meaning);
    } else if (token.type === "fence" && here.length > 0) {
      token.meta = { recipes: here.flatMap(({ entry }) => printed.get(entry) ?? []) } satisfies Meaning;
    }
    for (const child of token.children ?? []) speakInText(house, scope, child, printed);
  }
}

function speakInText(house: House, scope: Scope, token: Token, printed: ReadonlyMap<Entry, PrintedRecipe>): void {
  for (const child of token.children ?? []) speakInText(house, scope, child, printed);
  if (token.type === "directive") token.meta = inText(house, scope, token.meta as Directive, printed);
}

/** Gives a chapter's headings their ids; the heading that names a recipe has the recipe's. */
function chapterOf(
  house: House,
  { file, uri, text, document, tokens, places }: ReadChapter,
  idOf: (text: string) => string,
  printed: ReadonlyMap<Entry, PrintedRecipe>,
): Chapter {
  const headings: { level: number; id: string; text: string; index: number }[] = [];
  for (const [index, token] of tokens.entries()) {
    if (token.type !== "heading_open") continue;
    const words = wordsOf(tokens[index + 1]);
    const own = places.find((one) => one.heading === token);
    const id = (own && printed.get(own.entry)?.id) || idOf(words);
    token.meta = { id } satisfies Meaning;
    headings.push({ level: Number(token.tag.slice(1)), id, text: words, index });
  }
  const title = headings.find(({ level }) => level === 1) ?? headings[0];
  const isTitled = title?.index === 0 && title.level === 1;
  const name = title?.text || titleOfFile(uri);
  return {
    file,
    text,
    id: isTitled ? title.id : idOf(name),
    title: name,
    isTitled,
    tokens,
    recipes: places.flatMap(({ entry }) => {
      const one = printed.get(entry);
      return one?.chapter === file ? [one] : [];
    }),
    said: document ? saidIn(house, document, printed) : [],
  };
}

function saidIn(house: House, document: SpecDocument, printed: ReadonlyMap<Entry, PrintedRecipe>): SaidInText[] {
  const { entries, starts } = document.tree;
  const scope = house.scopeOf(document);
  return entries.flatMap((entry, index) =>
    entry.lines.flatMap(({ content, text }, within) => {
      const directives = content.kind === "text" ? content.directives.filter(({ block }) => !block) : [];
      return directives.map((directive) => {
        const { start, end } = directive;
        const { text: said = "", id } = inText(house, scope, directive, printed);
        return { line: starts[index]! + within, start, end, source: text.slice(start, end), text: said, ...(id && { id }) };
      });
    }),
  );
}

function inText(house: House, scope: Scope, directive: Directive, printed: ReadonlyMap<Entry, PrintedRecipe>): Meaning {
  const said = saidBy(house, scope, directive);
  const meant = meaningOf(house, scope, directive);
  const target = directive.name.text === "see" && "row" in meant && meant.recipe ? printed.get(meant.recipe) : undefined;
  return { ...("text" in said && { text: said.text }), ...(target && { id: target.id }) };
}
