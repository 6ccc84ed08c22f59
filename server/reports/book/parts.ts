/** The parts that a book puts together from the whole of itself, each where a chapter asks for it or at the end. */
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import { type Part, prepsTitle, titleOfPart } from "../../house/book/parts.ts";
import { slugOf } from "../../house/book/slugs.ts";
import { spelled } from "../../house/book/spelling.ts";
import type { Block, Section, Words } from "./blocks.ts";
import { equipment } from "./equipment.ts";
import { index } from "./index-part.ts";
import { responsibleService, units } from "./notes.ts";
import { titleOf } from "./recipe-words.ts";
import { allergens, recipeTable } from "./tables.ts";

/** The blocks of a part, without its title. */
export function partBlocks(book: Book, { name, by }: Part): readonly Block[] {
  if (name === "contents") return [{ kind: "contents", items: contents(book) }];
  return by && name === "index" ? index(book, by) : (blocksOf[name]?.(book) ?? []);
}

const blocksOf: Partial<Record<Part["name"], (book: Book) => readonly Block[]>> = {
  recipes: recipeTable,
  allergens,
  equipment,
  units,
  "responsible-service": responsibleService,
};

/** The contents that open the book; absent where a chapter has them in its text. */
export function frontSection(book: Book): Section | undefined {
  return isPlaced(book, { name: "contents" }) ? undefined : sectionOf(book, { name: "contents" });
}

/** What stands behind the chapters: the preps that no chapter prints, then the parts that none has put in its place. */
export function backSections(book: Book): readonly Section[] {
  const preps = book.recipes.filter(({ chapter }) => chapter === undefined);
  const asked: readonly Part[] = [
    { name: "equipment" },
    { name: "units" },
    { name: "recipes" },
    ...book.style.indexes.map((by) => ({ name: "index", by }) as const),
    { name: "allergens" },
    { name: "responsible-service" },
  ];
  return [
    ...(preps.length > 0 ? [prepsSection(book, preps)] : []),
    ...asked.filter((part) => !isPlaced(book, part)).map((part) => sectionOf(book, part)),
  ].filter(({ blocks }) => blocks.length > 0);
}

function isPlaced(book: Book, { name, by }: Part): boolean {
  return book.placed.some((part) => part.name === name && part.by === by);
}

function sectionOf(book: Book, part: Part): Section {
  const title = titleOfPart(part);
  return { id: slugOf(title), title, blocks: partBlocks(book, part) };
}

function prepsSection(book: Book, preps: readonly PrintedRecipe[]): Section {
  const said = "What the recipes call for and nobody sells: each is made before it is wanted.";
  return {
    id: slugOf(prepsTitle),
    title: prepsTitle,
    blocks: [
      { kind: "paragraph", words: [spelled(said, book.style.spelling)] },
      ...preps.map((printed): Block => ({ kind: "recipe", printed })),
    ],
  };
}

function contents(book: Book) {
  const linked = (text: string, to: string): Words => [{ text, to }];
  const named = (recipes: readonly PrintedRecipe[]) => recipes.map((printed) => ({ words: linked(titleOf(printed), printed.id) }));
  // Read off what stands in the book, not off the sections: these hold the contents themselves.
  const chapters = book.chapters
    .filter(({ tokens }) => !tokens.some(({ meta }) => meta?.part?.name === "contents"))
    .map(({ title, id, recipes }) => ({ words: linked(title, id), items: named(recipes) }));
  const back = backSections(book).map(({ title, id, blocks }) => ({
    words: linked(title, id),
    items: named(blocks.flatMap((block) => (block.kind === "recipe" ? [block.printed] : []))),
  }));
  return [...chapters, ...back];
}
