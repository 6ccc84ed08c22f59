/** A recipe as a book prints it: everything put in the book's words and order, for whatever lays it out. */
import type { Entry } from "../../../grammar/tree.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import { pouredIn } from "../poured.ts";
import { paragraphsOf } from "../prose.ts";
import { flatten } from "../riff.ts";
import { settingsOf } from "../settings.ts";
import { capital } from "../show.ts";
import { suitabilityOf } from "../suitability.ts";
import { showAllergens } from "../suitability-text.ts";
import { spoken } from "./amount.ts";
import type { BookStyle } from "./style.ts";

export interface Recipe {
  readonly entry: Entry;
  readonly kind: "drink" | "prep";
  readonly name: string;
  /** Paragraphs. */
  readonly headnote: readonly string[];
  /** Glass, Serves or Makes, Garnish, Rim, Keeps: in the order of print. */
  readonly facts: readonly Labelled[];
  readonly ingredients: readonly RecipeLine[];
  readonly method: { readonly form: "sentences" | "steps"; readonly texts: readonly string[] };
  /** Strength, a serve's standard drinks, its energy; only what is known. */
  readonly figures: readonly Labelled[];
  /** Always something: silence is never “free from”. */
  readonly allergens: string;
  readonly cautions: readonly string[];
  readonly credit?: string;
  readonly family?: string;
  /** The name of the largest pour of a spirit. */
  readonly spirit?: string;
  readonly strengthPct: number | null;
}

export interface Labelled {
  readonly label: string;
  readonly text: string;
}

export interface RecipeLine {
  /** One for each system of units, in the book's order; equal ones once. */
  readonly amounts: readonly string[];
  readonly name: string;
  readonly note?: string;
  /** Where it is made here and not bought. */
  readonly recipe?: Entry;
  readonly alternatives: readonly Omit<RecipeLine, "alternatives">[];
}

/** The recipe of a drink or a prep. */
export function recipeOf(house: House, entry: Entry, style: BookStyle): Recipe {
  const kind = entry.kind === "prep" ? "prep" : "drink";
  const field = (name: string) => (kind === "drink" ? flatten(house, entry).field(name) : findFieldIn(entry, name))?.field.value?.text;
  const { contains, notStated } = showAllergens(suitabilityOf(house, entry), settingsOf(house, house.scopeOf(entry)).country);
  const [credit, family] = [field("credit"), field("family")];
  const facts = (["glass", "garnish", "rim", "keeps"] as const).flatMap((name) => {
    const text = field(name);
    return text ? [{ label: capital(name), text: capital(text) }] : [];
  });
  return {
    entry,
    kind,
    name: entry.name?.text ?? "",
    headnote: paragraphsOf(entry, "headnote"),
    facts,
    ingredients: pouredIn(house, entry).map(({ amount, ingredient }) => {
      const found = ingredient.resolution.found?.entry;
      return {
        amounts: [...new Set(style.systems.map((system) => spoken(amount, style, system)))],
        name: ingredient.resolution.text,
        alternatives: [],
        ...(found && found.kind !== "stock" && { recipe: found }),
      };
    }),
    method: { form: style.method, texts: paragraphsOf(entry, "steps") },
    figures: [],
    allergens: [contains, notStated].filter(Boolean).join(" "),
    cautions: [],
    ...(credit && { credit }),
    ...(family && { family }),
    strengthPct: null,
  };
}
