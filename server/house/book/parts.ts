/** The parts that a book puts together from the whole of itself, and what each is called. */
import { slugOf } from "./slugs.ts";
import { type IndexKind, indexKinds } from "./style.ts";

export const partNames = ["contents", "recipes", "index", "allergens", "equipment", "units", "responsible-service"] as const;

export interface Part {
  readonly name: (typeof partNames)[number];
  /** Of an index. */
  readonly by?: IndexKind;
}

const titles: Readonly<Record<Exclude<Part["name"], "index">, string>> = {
  contents: "Contents",
  recipes: "Every recipe",
  allergens: "Allergens",
  equipment: "Glasses and tools",
  units: "A note on units",
  "responsible-service": "A note on serving",
};

/** Where the preps stand that no chapter prints. */
export const prepsTitle = "Made in house";

export function titleOfPart({ name, by }: Part): string {
  return name === "index" ? `Index by ${by ?? "name"}` : titles[name];
}

/** The id of all that is not the title page. */
export const textId = "text";

/** The ids of the parts, which nothing else in a book may have. */
export const partIds: readonly string[] = [
  textId,
  ...Object.values(titles),
  ...indexKinds.map((by) => titleOfPart({ name: "index", by })),
  prepsTitle,
].map(slugOf);
