/**
 * The fields of the language: one row each. Completion, hover, checking, formatting and the
 * reference page read this table; nothing else lists fields.
 */

export const entryKinds = ["house", "stock", "prep", "drink", "menu", "family", "glass", "ice", "book"] as const;
export type EntryKind = (typeof entryKinds)[number];

/** How a field's value is read. */
export type Shape =
  | "prose" // goes on over deeper lines, raw
  | "text" // one line, free
  | "name" // the name of something declared
  | "words" // closed words, separated by commas or semicolons
  | "choice" // one closed word
  | "items" // `;`-separated items with `,` qualifiers
  | "steps" // a method
  | "quantity" // one quantity (or a range)
  | "window" // `4 to 13`
  | "percent"
  | "temperature"
  | "price" // 26.50 per 700 ml
  | "content" // 2.5 g/100 ml, with `as citric` or a substance after it
  | "date"
  | "yesno"
  | "severity";

export interface Field {
  readonly name: string;
  readonly entries: readonly EntryKind[];
  readonly shape: Shape;
  /** May stand more than once in an entry. */
  readonly repeats?: boolean;
  /** The closed words it takes, where it takes closed words. */
  readonly choices?: readonly string[];
  /** One line for hover and the reference page. */
  readonly doc: string;
  readonly example: string;
}

export const stockKinds = [
  "spirit",
  "liqueur",
  "bitters",
  "fortified wine",
  "vermouth",
  "bitter aperitif",
  "wine",
  "sparkling wine",
  "beer",
  "cider",
  "juice",
  "puree",
  "syrup",
  "sugar",
  "honey",
  "acid",
  "salt",
  "mixer",
  "water",
  "dairy",
  "plant milk",
  "egg",
  "coffee",
  "tea",
  "vinegar",
  "sauce",
  "fruit",
  "vegetable",
  "herb",
  "spice",
  "other",
] as const;
export type StockKind = (typeof stockKinds)[number];

export const iceKinds = ["cubed", "cracked", "crushed", "large cube", "block"] as const;

/** Regulation (EU) 1169/2011 Annex II, in the trade's short words. */
export const allergenWords = [
  "gluten",
  "crustaceans",
  "egg",
  "fish",
  "peanut",
  "soya",
  "milk",
  "nuts",
  "celery",
  "mustard",
  "sesame",
  "sulphites",
  "lupin",
  "molluscs",
] as const;

export const dietWords = ["vegan", "vegetarian", "halal", "kosher", "gluten free"] as const;

const f = (name: string, entries: readonly EntryKind[], shape: Shape, example: string, doc: string, more: Partial<Field> = {}): Field => ({
  name,
  entries,
  shape,
  example,
  doc,
  ...more,
});

export const fields: readonly Field[] = [
  // house
  f("country", ["house"], "text", "GB", "The country by its two letters: standard drinks, allergen list and tax follow it."),
  f("currency", ["house"], "text", "GBP", "The three letters of the currency that prices are in."),
  f("tax", ["house"], "percent", "20 %", "Sales tax on a served drink."),
  f(
    "prices",
    ["house"],
    "choice",
    "with tax",
    "Whether menu prices already hold the tax; where a tax is stated and this is not, they do.",
    { choices: ["with tax", "without tax"] },
  ),
  f("units", ["house"], "choice", "ml", "The unit that the house writes and reads.", { choices: ["ml", "cl", "oz"] }),
  f("ounce", ["house"], "quantity", "30 ml", "How large an ounce is here: `us`, `imperial`, or so many ml for a pouring ounce."),
  f("jigger", ["house"], "quantity", "2.5 ml", "The smallest step that the bar measures; a pour is right to half of it."),
  f("scale", ["house"], "quantity", "0.1 g", "The smallest step that the bar weighs."),
  f("dash", ["house", "stock"], "quantity", "0.8 ml", "How large one dash is."),
  f("barspoon", ["house"], "quantity", "5 ml", "How large one barspoon is."),
  f("drop", ["house", "stock"], "quantity", "0.05 ml", "How large one drop is."),
  f("splash", ["house"], "quantity", "7 ml", "How large one splash is."),
  f("pinch", ["house"], "quantity", "0.3 g", "How heavy one pinch is."),
  f("ambient", ["house"], "temperature", "20 C", "The temperature of the back bar."),
  f("freezer", ["house"], "temperature", "-18 C", "The temperature of the freezer: what `frozen` means."),
  f("fridge", ["house"], "temperature", "4 C", "The temperature of the fridge: what `chilled` means."),
  f("hot", ["house"], "temperature", "85 C", "The temperature of what is poured `hot`."),
  f("ice", ["house", "drink"], "items", "cubed ice", "The ice used where a method names none."),
  f("waste", ["house", "stock"], "percent", "5 %", "The share of what is bought that is lost between the bottle and the glass."),
  f("target cost", ["house"], "percent", "22 %", "The share of the price, without its tax, that the ingredients may cost."),
  f("bottle", ["house"], "quantity", "700 ml", "The bottle that pre-mixed drinks are kept in: what a drink is scaled up to."),
  f(
    "order",
    ["house", "book"],
    "items",
    "spirit; vermouth, fortified wine; liqueur",
    "The order in which pours are written, by kind; kinds between two `;` stay as they are written.",
  ),
  f("cautions", ["house"], "choice", "shown", "Whether cards print the usual cautions.", { choices: ["shown", "short"] }),
  f("serve limit", ["house"], "quantity", "32 g", "The most alcohol that one serve holds without a remark; `none` for no limit."),
  f("severity", ["house"], "severity", "glass-too-small off", "How loud one rule is here: off, hint, information, warning or error.", {
    repeats: true,
  }),
  // family
  f(
    "ratio",
    ["family", "drink"],
    "window",
    "4 to 13",
    "The window of the finished drink's sweetness ÷ acid. `none` where the two are not weighed against each other.",
  ),
  f("strength", ["family", "drink"], "window", "13 to 21 %", "The window of the finished drink's alcohol by volume."),
  f("sugar", ["family", "drink"], "window", "4 to 10.5 g/100 ml", "The window of the finished drink's sweetness, as sucrose."),
  f("acid", ["family", "drink"], "window", "0.65 to 1.25 g/100 ml", "The window of the finished drink's titratable acid, as citric."),
  f("salt", ["family", "drink"], "window", "0.3 to 1.0 g/100 ml", "The window of the finished drink's salt."),
  f("dilution", ["family", "drink"], "window", "20 to 60 %", "The window of the water added ÷ the volume before."),
  // glass
  f("holds", ["glass"], "quantity", "240 ml", "The volume to the brim."),
  f("washline", ["glass"], "percent", "90 %", "How full the glass is poured."),
  f("stored", ["glass", "stock", "prep"], "choice", "freezer", "Where it stands before service: it is as warm as that.", {
    choices: ["back bar", "fridge", "freezer", "hot"],
  }),
  // ice
  f("kind", ["ice"], "choice", "cubed", "What sort of ice it is: it decides how much water clings to it.", { choices: iceKinds }),
  f("weight", ["ice"], "quantity", "25 g", "The weight of one piece."),
  f("temperature", ["ice"], "temperature", "-1 C", "How cold the ice is when it is used."),
  // stock
  f(
    "kind",
    ["stock"],
    "choice",
    "spirit",
    "What sort of thing it is; figures that the label leaves out come from the kind, marked as assumed.",
    { choices: stockKinds },
  ),
  f("abv", ["stock", "prep"], "percent", "43 %", "Alcohol by volume at 20 °C, as on the label."),
  f("sugar", ["stock"], "content", "2.5 g/100 ml", "Sugars; the kinds may be named: `3 g/100 g fructose; 1 g/100 g glucose`."),
  f("brix", ["stock", "prep"], "quantity", "66", "Sugar by weight, in °Brix."),
  f(
    "acid",
    ["stock"],
    "content",
    "6 g/100 ml as citric",
    "Acid: titrated (`as citric`) or weighed (`3 g/100 ml citric; 3 g/100 ml malic`).",
  ),
  f("salt", ["stock"], "content", "20 g/100 g", "Salt."),
  f(
    "solids",
    ["stock"],
    "content",
    "1 g/100 ml",
    "What else is dissolved or suspended: protein, pectin, minerals, and fat that `fat` does not name.",
  ),
  f("fat", ["stock"], "content", "36 g/100 g", "Fat, as on the label; `solids` beside it is then what is neither sugar nor fat."),
  f("caffeine", ["stock"], "content", "212 mg/100 g", "Caffeine."),
  f("density", ["stock", "prep"], "quantity", "1.04 g/ml", "Weight of a millilitre at 20 °C."),
  f("fizz", ["stock"], "yesno", "yes", "Whether it bubbles; what bubbles is poured after the shaking."),
  f(
    "price",
    ["stock", "drink", "ice"],
    "price",
    "26.50 per 700 ml",
    "What it costs to buy, without tax; on a drink, what the guest pays for all that its pours make.",
  ),
  f("keeps", ["stock", "prep"], "items", "1 day chilled", "How long it is good for. Only what is stated is ever shown."),
  f("each", ["stock"], "items", "leaf 0.1 g; sprig 2 g", "What one piece weighs or holds, by form."),
  f("yield", ["stock", "prep"], "items", "juiced 25 ml", "What one piece gives, or how much a batch makes."),
  f("allergens", ["stock", "prep"], "words", "milk", "Allergens on the label. `none` is an answer; silence is not.", {
    choices: allergenWords,
  }),
  f("diet", ["stock", "prep", "drink"], "words", "vegan", "Diets it is known to suit.", { choices: dietWords }),
  f(
    "pasteurised",
    ["stock", "prep"],
    "yesno",
    "yes",
    "Whether it was made safe by heat. Raw egg and unpasteurised juice carry a caution; only what is stated counts.",
  ),
  f("origin", ["stock"], "text", "Ennick Sound", "Where it is from."),
  f("aka", ["stock", "prep", "drink", "glass", "family", "ice"], "items", "lemon; fresh lemon", "Other names, split by `;`.", {
    repeats: true,
  }),
  f(
    "status",
    ["stock", "prep", "drink"],
    "choice",
    "out",
    "For stock and preps `in` or `out`: what is out takes its drinks off tonight. For a drink `draft`, `live` or `retired`.",
    {
      choices: ["in", "out", "draft", "live", "retired"],
    },
  ),
  // prep
  f("parts by", ["prep", "drink"], "choice", "weight", "Whether `parts` are weighed or measured.", { choices: ["weight", "volume"] }),
  f("method", ["prep", "drink"], "steps", "shake 12 s; fine strain", "The steps, split by `;`."),
  f("ph", ["prep", "stock"], "quantity", "2.6", "Measured pH."),
  f("measured", ["prep"], "date", "2026-03-01", "The day the measured values were read."),
  f("steps", ["prep", "drink"], "prose", "Stir until even.", "How it is made, in sentences."),
  // drink
  f("family", ["drink"], "name", "egg sour", "The pattern it is held against."),
  f("glass", ["drink"], "items", "coupe, chilled", "What it is served in, and how it comes: `chilled`, `frozen`, `warm`, `at -8 C`."),
  f("garnish", ["drink"], "items", "lemon zest, expressed", "What goes on top. `none` is an answer."),
  f("rim", ["drink"], "items", "salt, half", "What the rim carries."),
  f("serves", ["drink"], "quantity", "1", "How many the pours are for."),
  f("total", ["drink"], "quantity", "120 ml", "What the parts pour together, before ice."),
  f("part", ["drink"], "quantity", "30 ml", "How large one part is."),
  f("from", ["drink"], "name", "Lantern Sour", "The drink that this one is a riff of."),
  f("credit", ["drink", "prep"], "text", "the late shift", "Whose it is."),
  f("story", ["drink", "menu"], "prose", "Named for the lamp.", "For whoever asks."),
  f("guest", ["drink"], "prose", "Bright, smoky, dry.", "What the guest reads."),
  f("headnote", ["drink", "prep"], "prose", "Make this in March.", "What the book prints above."),
  f("notes", ["house", "drink", "prep", "stock"], "prose", "Pour slowly.", "For the team."),
  f("note", ["family", "menu", "glass", "ice", "stock", "prep"], "prose", "Common practice.", "A remark."),
  f("tags", ["drink", "prep", "stock"], "words", "winter, smoky", "Words to find it by."),
  f("season", ["drink"], "text", "winter", "When it is poured."),
  f("tasted", ["drink"], "date", "2026-02-11", "The day it was last tasted."),
  // menu
  f("allergens", ["menu"], "text", "a list lies at the bar", "Where a guest reads which allergens the drinks hold."),
  f("valid from", ["menu"], "date", "2026-11-01", "The first day."),
  f("valid until", ["menu"], "date", "2027-02-28", "The last day."),
  // book
  f("subtitle", ["book"], "text", "Drinking on ferries", "What stands below the title."),
  f("author", ["book"], "text", "the night purser", "Whose book it is."),
  f("rights", ["book"], "text", "© the night purser, 2026", "The line that says who holds the rights."),
  f(
    "chapters",
    ["book"],
    "items",
    "preface.md; first-bell.md",
    "The chapters in their order, as files beside the book; where it is not given, every Markdown file there, by name.",
  ),
  f("units shown", ["book"], "choice", "metric first", "Which units a recipe is printed in; the first is the one that prose speaks in.", {
    choices: ["metric first", "US first", "metric", "US"],
  }),
  f("ounce step", ["book"], "quantity", "1/4 oz", "The step that printed ounces are rounded to."),
  f("numbers", ["book"], "choice", "words to ten", "How numbers stand in prose that says a value.", {
    choices: ["figures", "words to ten", "words"],
  }),
  f("method as", ["book"], "choice", "sentences", "Whether a method is printed in sentences or as numbered steps.", {
    choices: ["sentences", "steps"],
  }),
  f("typeface", ["book"], "choice", "serif", "What the book is set in.", { choices: ["serif", "sans"] }),
  f("spelling", ["book"], "choice", "British", "How the trade's words are spelt: millilitre or milliliter.", {
    choices: ["British", "American"],
  }),
  f("recipes have", ["book"], "words", "headnote, glass, garnish, yield", "What no recipe may lack.", {
    choices: ["headnote", "glass", "garnish", "yield", "credit", "family", "method"],
  }),
  f("avoid", ["book"], "items", "utilize; mixologist", "Words that shall not stand in the text."),
  f("glassware", ["book"], "items", "coupe; highball", "The glasses that the book tells the reader to have."),
  f("tools", ["book"], "items", "shaker; fine strainer", "The tools that the book tells the reader to have."),
  f("indexes", ["book"], "words", "spirit, family, ingredient, strength", "The indexes at the end; all of them where it is not given.", {
    choices: ["spirit", "family", "ingredient", "strength"],
  }),
];

const byName = new Map<string, Field[]>();
for (const field of fields) byName.set(field.name, [...(byName.get(field.name) ?? []), field]);

/** The row of a field in an entry of this kind; without a kind, the first row of that name. Any case. */
export function findField(name: string, kind?: EntryKind): Field | undefined {
  const rows = byName.get(name.toLowerCase());
  return kind ? rows?.find((row) => row.entries.includes(kind)) : rows?.[0];
}

/** The fields that an entry of this kind takes, in the order of the table. */
export function fieldsOf(kind: EntryKind): readonly Field[] {
  return fields.filter((field) => field.entries.includes(kind));
}
