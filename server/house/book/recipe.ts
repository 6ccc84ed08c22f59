/** A recipe as a book prints it: everything put in the book's words and order, for whatever lays it out. */
import type { Entry, FieldLine } from "../../../grammar/tree.ts";
import { assessDrink } from "../drink.ts";
import { findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import { assessPrepEntry, isProportional } from "../prep.ts";
import { paragraphsOf } from "../prose.ts";
import { flatten } from "../riff.ts";
import { serveOf } from "../serve.ts";
import { settingsOf } from "../settings.ts";
import { capital, hasNoAlcohol } from "../show.ts";
import { suitabilityOf } from "../suitability.ts";
import { showAllergens } from "../suitability-text.ts";
import { isNone } from "../values.ts";
import { type Making, makingOf } from "./method.ts";
import { garnishPhrase, glassPhrase, sayQuantity, withAmounts } from "./phrases.ts";
import { type RecipeLine, recipeLines } from "./recipe-lines.ts";
import { spelled } from "./spelling.ts";
import { spiritOf } from "./spirit.ts";
import type { BookStyle } from "./style.ts";
import { type Saying, valueNamed } from "./values.ts";

export type { RecipeLine } from "./recipe-lines.ts";

export interface Recipe {
  readonly entry: Entry;
  readonly kind: "drink" | "prep";
  readonly name: string;
  /** Paragraphs. */
  readonly headnote: readonly string[];
  /** Glass, Serves or Makes, Garnish, Rim, Keeps: in the order of print. */
  readonly facts: readonly Labelled[];
  readonly ingredients: readonly RecipeLine[];
  readonly method: Making;
  /** Strength, a serve's standard drinks, its energy; only what is known, and of alcohol only where there is some. */
  readonly figures: readonly Labelled[];
  /** Always something: silence is never “free from”. */
  readonly allergens: string;
  readonly credit?: string;
  readonly family?: string;
  /** The name of the largest pour of a spirit. */
  readonly spirit?: string;
  readonly strengthPct: number | null;
  /** Known to hold none that is worth a word. */
  readonly hasNoAlcohol: boolean;
}

export interface Labelled {
  readonly label: string;
  readonly text: string;
}

/** The recipe of a drink or a prep. */
export function recipeOf(house: House, entry: Entry, style: BookStyle): Recipe {
  return house.recall(entry, `recipe as ${JSON.stringify(style)}`, () => made(house, entry, style));
}

function made(house: House, entry: Entry, style: BookStyle): Recipe {
  const kind = entry.kind === "prep" ? "prep" : "drink";
  const { contains, notStated } = showAllergens(suitabilityOf(house, entry), settingsOf(house, house.scopeOf(entry)).country);
  const [credit, family, spirit] = [statedIn(house, entry, "credit"), statedIn(house, entry, "family"), spiritOf(house, entry)];
  return {
    entry,
    kind,
    name: entry.name?.text ?? "",
    headnote: paragraphsOf(entry, "headnote"),
    facts: factsOf(house, entry, style),
    ingredients: recipeLines(house, entry, style),
    method: makingOf(house, entry, style),
    figures: figuresOf(house, entry, style),
    allergens: [spelled(contains, style.spelling), notStated].filter(Boolean).join(" "),
    ...(credit && { credit: credit.value!.text }),
    ...(family && { family: family.value!.text }),
    ...(spirit && { spirit }),
    ...alcoholOf(house, entry),
  };
}

function alcoholOf(house: House, entry: Entry): Pick<Recipe, "strengthPct" | "hasNoAlcohol"> {
  const assessment = entry.kind === "drink" ? assessDrink(house, entry) : undefined;
  const strengthPct = (assessment?.outcome ?? assessPrepEntry(house, entry)).value("strengthPct");
  const isWeak = strengthPct !== null && strengthPct < leastPct;
  const isNothing = assessment !== undefined && !assessment.proportional && hasNoAlcohol(serveOf(house, assessment));
  return { strengthPct, hasNoAlcohol: isWeak || isNothing };
}

/** Below this a strength is printed as 0. */
const leastPct = 0.05;

/** A field with something in it, a riff's inherited ones too. */
export function statedIn(house: House, entry: Entry, name: string): FieldLine | undefined {
  const field = (entry.kind === "drink" ? flatten(house, entry).field(name) : findFieldIn(entry, name))?.field;
  return field?.value && !isNone(field) ? field : undefined;
}

function factsOf(house: House, entry: Entry, style: BookStyle): Labelled[] {
  const fact = (label: string, name: string, say: (field: FieldLine) => string): Labelled[] => {
    const field = statedIn(house, entry, name);
    return field ? [{ label, text: capital(say(field)) }] : [];
  };
  if (entry.kind === "drink") {
    const { plan, proportional } = assessDrink(house, entry);
    return [
      ...fact("Glass", "glass", (field) => glassPhrase(field, style)),
      ...(proportional ? [] : [{ label: "Serves", text: String(plan.serves) }]),
      ...fact("Rim", "rim", (field) => rimPhrase(field)),
      ...fact("Garnish", "garnish", (field) => garnishPhrase(field, style)),
    ];
  }
  const makes = said("yield", { house, entry, style, systems: style.systems, numbers: "figures" });
  const parts = statedIn(house, entry, "parts by")?.value?.text;
  return [
    ...(makes ? [{ label: "Makes", text: capital(makes) }] : []),
    ...(parts && isProportional(entry) ? [{ label: "Parts", text: `By ${parts.toLowerCase()}` }] : []),
    ...fact("Keeps", "keeps", (field) =>
      withAmounts(
        field.value!,
        field.items.flatMap(({ parts }) => parts.flatMap(({ quantities }) => quantities)),
        (quantity) => sayQuantity(quantity, style, "figures"),
      ),
    ),
  ];
}

function rimPhrase({ items }: FieldLine): string {
  return items.map(({ text }) => text).join("; ");
}

/** How a recipe's figures call its strength. */
export const strengthLabel = "Strength";

function figuresOf(house: House, entry: Entry, style: BookStyle): Labelled[] {
  const saying: Saying = { house, entry, style, systems: style.systems, numbers: "figures" };
  const figure = (label: string, name: string): Labelled[] => {
    const text = said(name, saying);
    return text ? [{ label, text }] : [];
  };
  const isDrink = entry.kind === "drink";
  // Nobody asks how strong a syrup is, nor how many drinks one without alcohol counts as.
  const ofAlcohol = alcoholOf(house, entry).hasNoAlcohol
    ? []
    : [...figure(strengthLabel, "strength"), ...(isDrink ? figure("A serve holds", "standard-drinks") : [])];
  return [...ofAlcohol, ...(isDrink ? figure("Energy", "energy") : [])];
}

function said(name: string, saying: Saying): string {
  const found = valueNamed(name)?.say(saying, "");
  return found && "text" in found ? found.text : "";
}
