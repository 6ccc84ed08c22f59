/** The indexes of a book. They refer to recipes by number, since a page has none until the publisher has set it. */
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import { strengthLabel } from "../../house/book/recipe.ts";
import { spelled } from "../../house/book/spelling.ts";
import type { IndexKind } from "../../house/book/style.ts";
import { fold } from "../../house/names.ts";
import { capital } from "../../house/show.ts";
import type { Block, Words } from "./blocks.ts";
import { titleOf } from "./recipe-words.ts";

/** An index of all recipes; of the drinks alone where preps have nothing to be sorted by. */
export function index(book: Book, by: IndexKind): readonly Block[] {
  const entries = by === "strength" ? byStrength(book) : byTerm(book, termsOf[by]);
  if (entries.length === 0) return [];
  return [
    { kind: "paragraph", words: [spelled("The figures are the numbers of the recipes.", book.style.spelling)] },
    { kind: "index", entries },
  ];
}

const termsOf: Record<Exclude<IndexKind, "strength">, (printed: PrintedRecipe) => readonly string[]> = {
  spirit: ({ recipe }) => (recipe.kind === "drink" ? [recipe.spirit ?? withoutSpirit] : []),
  family: ({ recipe }) => (recipe.family ? [recipe.family] : []),
  ingredient: ({ recipe }) => recipe.ingredients.flatMap((line) => [line, ...line.alternatives]).map(({ name }) => name),
};

const withoutSpirit = "no spirit";
const alphabet = new Intl.Collator("en", { sensitivity: "base" });

function byTerm(book: Book, terms: (printed: PrintedRecipe) => readonly string[]) {
  const found = new Map<string, { term: string; recipes: Set<PrintedRecipe> }>();
  for (const printed of book.recipes) {
    for (const term of terms(printed)) {
      const key = fold(term);
      const there = found.get(key) ?? { term, recipes: new Set() };
      there.recipes.add(printed);
      found.set(key, there);
    }
  }
  const isLast = ({ term }: { term: string }) => Number(term === withoutSpirit);
  return [...found.values()]
    .sort((one, other) => isLast(one) - isLast(other) || alphabet.compare(one.term, other.term))
    .map(({ term, recipes }) => ({
      term: capital(term),
      words: [...recipes].sort((one, other) => alphabet.compare(one.recipe.name, other.recipe.name)).map(reference),
    }));
}

/** The strong first, since that is what is looked for when somebody wants something lighter. */
const bands = [
  [30, "30 % and above"],
  [20, "20 % to 30 %"],
  [10, "10 % to 20 %"],
  [0.5, "Below 10 %"],
  [-1, "Without alcohol, or below 0.5 %"],
] as const;

function byStrength({ recipes }: Book) {
  const drinks = recipes.filter(({ recipe }) => recipe.kind === "drink");
  const known = drinks.filter(({ recipe }) => recipe.strengthPct !== null);
  const strong = ({ recipe }: PrintedRecipe) => recipe.strengthPct ?? 0;
  const sorted = known.sort((one, other) => strong(other) - strong(one) || one.number - other.number);
  const entries = bands.map(([least, term], band) => ({
    term,
    words: sorted
      .filter((one) => strong(one) >= least && strong(one) < (bands[band - 1]?.[0] ?? Number.POSITIVE_INFINITY))
      .map((one): Words => [...reference(one), behind(one)]),
  }));
  const unknown = drinks.filter(({ recipe }) => recipe.strengthPct === null);
  return [...entries, { term: "Strength not known", words: unknown.map(reference) }].filter(({ words }) => words.length > 0);
}

/** As the recipe itself says it; nothing of what holds none. */
function behind({ recipe: { figures } }: PrintedRecipe): string {
  const strength = figures.find(({ label }) => label === strengthLabel);
  return strength ? ` (${strength.text})` : "";
}

function reference(printed: PrintedRecipe): Words {
  return [{ text: titleOf(printed), to: printed.id }, `\u00a0${printed.number}`];
}
