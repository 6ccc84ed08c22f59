/** What the reader needs beside bottles: the glasses with what is served in each, and the tools. */
import type { Book, PrintedRecipe } from "../../house/book/book.ts";
import { fold } from "../../house/names.ts";
import { flatten } from "../../house/riff.ts";
import { capital } from "../../house/show.ts";
import type { Block, Words } from "./blocks.ts";
import { titleOf } from "./recipe-words.ts";

export function equipment(book: Book): readonly Block[] {
  const { glassware, tools } = book.style;
  const served = new Map<string, PrintedRecipe[]>();
  const names = new Map(glassware.map((name) => [fold(name), name]));
  for (const printed of book.recipes) {
    const glass = glassOf(book, printed);
    if (!glass) continue;
    const key = fold(glass);
    if (!names.has(key)) names.set(key, glass);
    served.set(key, [...(served.get(key) ?? []), printed]);
  }
  const glasses = [...names].map(([key, name]) => ({
    term: capital(name),
    words: (served.get(key) ?? []).map((printed): Words => [{ text: titleOf(printed), to: printed.id }, `\u00a0${printed.number}`]),
  }));
  return [
    ...(glasses.length > 0 ? [{ kind: "heading", text: "Glasses" } as const, { kind: "index", entries: glasses } as const] : []),
    ...(tools.length > 0
      ? [{ kind: "heading", text: "Tools" } as const, { kind: "list", items: tools.map((tool) => ({ words: [capital(tool)] })) } as const]
      : []),
  ];
}

function glassOf({ house }: Book, { recipe }: PrintedRecipe): string | undefined {
  return recipe.kind === "drink" ? flatten(house, recipe.entry).field("glass")?.field.items[0]?.parts[0]?.text : undefined;
}
