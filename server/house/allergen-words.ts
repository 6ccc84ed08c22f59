/**
 * Allergens by the words people use for them: on an `allergens:` line that does not say them as the language
 * does, and in the name of something of which nobody states them. Common knowledge, no source; not complete:
 * where no word is found nothing is proved free from anything.
 */

import type { Allergen } from "./suitability.ts";

/** What stands before the milk, cream or butter of a plant. */
const plants = "coconut|almond|oat|soya?|rice|cashew|hazelnut|peanut|nut|hemp|pea|plant(?:-based)?|vegan|cocoa|apple|shea";

const words: readonly (readonly [Allergen, RegExp])[] = [
  [
    "gluten",
    any(
      "gluten",
      "wheat",
      "barley",
      "oats?",
      "spelt",
      "malt(?! whisk)",
      "(?<!(?:ginger|root|birch) )(?:beer|ale)",
      "stout",
      "lager",
      "bread",
      "biscuits?",
      "wafers?",
    ),
  ],
  [
    "crustaceans",
    any("crustaceans?", "prawns?", "shrimps?", "crab(?! apple)", "lobsters?", "crayfish", "langoustines?", "krill", "shellfish"),
  ],
  ["egg", any("(?<!vegan )eggs?", "meringue", "mayonnaise", "advocaat")],
  ["fish", any("fish", "anchov(?:y|ies)", "bonito", "dashi", "tuna", "salmon", "caviar", "isinglass")],
  ["peanut", any("peanuts?", "groundnuts?")],
  ["soya", any("soya?", "soya?beans?", "tofu", "miso", "edamame", "tamari")],
  [
    "milk",
    any(
      `(?<!\\b(?:${plants}) )(?:milk(?! thistle)|cream(?! of (?:coconut|tartar)| soda| sherry)|butter(?! beans?))`,
      ...["dairy", "lactose", "whey", "casein", "cheese", "yogh?urt", "buttermilk", "ghee", "custard"],
    ),
  ],
  [
    "nuts",
    any(
      "(?<!(?:pine|kola|cola|tiger|betel) )nuts?",
      ...["almonds?", "hazelnuts?", "walnuts?", "cashews?", "pecans?", "pistachios?", "macadamias?", "marzipan", "praline", "orgeat"],
    ),
  ],
  ["celery", any("celery", "celeriac")],
  ["mustard", any("mustard")],
  ["sesame", any("sesame", "tahini")],
  ["sulphites", any("sul(?:ph|f)ites?", "sul(?:ph|f)ur dioxide")],
  ["lupin", any("lupine?s?")],
  [
    "molluscs",
    any(
      "mollus[ck]s?",
      "oysters?(?! mushrooms?| lea(?:f|ves)| plant)",
      ...["clams?", "mussels?", "scallops?", "squid", "octopus", "cuttlefish", "shellfish"],
    ),
  ],
];

/** Those that a text names, unless it says that they are not there: `nut free`. */
export function allergensNamedIn(text: string): Allergen[] {
  if (/\bfree\b|\bno\b|\bnon\b|\bwithout\b/i.test(text)) return [];
  return words.flatMap(([allergen, pattern]) => (pattern.test(text) ? [allergen] : []));
}

function any(...patterns: readonly string[]): RegExp {
  return new RegExp(`(?<![\\p{L}])(?:${patterns.join("|")})(?![\\p{L}])`, "iu");
}
