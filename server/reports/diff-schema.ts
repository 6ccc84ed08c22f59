/** The shape of `mutchkin diff --format json`, and of the data behind its other formats. */
import { z } from "zod";

const names = z.array(z.string());
const gained = z.strictObject({ gained: names, lost: names });
const value = z.number().nullable().describe("Null where it is unknown.");

const place = z.strictObject({
  file: z.string().describe("From the repository's or the folder's top, with forward slashes."),
  line: z.int().min(1).describe("The line in the file, the first one being 1."),
});

const field = z.strictObject({
  field: z.string(),
  before: z.string().nullable().describe("As written; null where it is not there, and for prose."),
  after: z.string().nullable(),
});

const figure = z.strictObject({
  figure: z.string(),
  label: z.string(),
  unit: z.string(),
  before: z.strictObject({ value, plusMinus: value }),
  after: z.strictObject({ value, plusMinus: value }),
  window: z
    .strictObject({ low: z.number(), high: z.number(), crossed: z.enum(["left", "entered"]) })
    .nullable()
    .describe("The drink's window, where the figure has left or entered it."),
});

const cost = z.strictObject({
  currency: z.string().nullable(),
  before: value.describe("Of one serve."),
  after: value,
  shareBefore: value.describe("Of the price without tax."),
  shareAfter: value,
});

const effects = z.strictObject({
  allergens: gained,
  notStated: gained.describe("What nobody states the allergens of."),
  diets: gained,
  cost: cost.nullable(),
  figures: z.array(figure).describe("Those that are another, what grows with the drink for one serve."),
  out: gained.describe("Why it cannot be poured now, and could not before: what is out."),
});

const arrival = z.strictObject({
  contains: names.describe("Allergens."),
  notStated: names.describe("What nobody states the allergens of."),
  pours: names,
  strengthPct: z.strictObject({ value, plusMinus: value }),
  cost: z.strictObject({ currency: z.string().nullable(), perServe: value, share: value.describe("Of the price without tax.") }).nullable(),
});

const how = z.enum(["added", "removed", "renamed", "changed", "moved", "rewritten"]);

const drink = z.strictObject({
  name: z.string(),
  oldName: z.string().nullable().describe("Where it was renamed."),
  how: how.describe("Moved: untouched, and comes to something else. Rewritten: only blanks and comments are another."),
  before: place.nullable(),
  after: place.nullable(),
  menus: names.describe("The menus that list it, after the change or else before."),
  pours: z.string().describe("What is poured otherwise, in words; empty where nothing is."),
  reordered: z.boolean().describe("What both pour stands in another order."),
  fields: z.array(field),
  effects: effects.nullable().describe("Null for what was added or removed."),
  arrival: arrival.nullable().describe("What an added drink brings; null for all others."),
  preps: gained.describe("What has to be made for it now, and no more."),
  because: names.describe("The changed things it is made with, such as `prep sugar syrup`."),
});

const thing = z.strictObject({
  kind: z.enum(["house", "stock", "prep", "glass", "ice", "family"]),
  name: z.string(),
  how: z.enum(["added", "removed", "changed"]),
  before: place.nullable(),
  after: place.nullable(),
  fields: z.array(field),
  pours: z.string().describe("What is poured into a prep otherwise, in words; empty where nothing is."),
  moved: z
    .array(
      z.strictObject({ drink: z.string(), what: z.string(), with: names.describe("What else moved it: the figures are of all together.") }),
    )
    .describe("Untouched drinks that come to something else through it."),
  also: names.describe("Drinks that were changed themselves, and are made with it."),
  menus: names.describe("The menus that those drinks are on."),
});

const range = z.tuple([z.number(), z.number()]).nullable();
const menu = z.strictObject({
  name: z.string(),
  how: z.enum(["added", "removed", "changed"]),
  currency: z.string().nullable().describe("Of its prices; null where the house names none."),
  added: names,
  removed: names,
  renamed: z.array(z.strictObject({ before: z.string(), after: z.string() })).describe("What is on it as before, under another name."),
  prices: z.array(z.strictObject({ drink: z.string(), before: value, after: value })),
  rangeBefore: range.describe("The least and the most that is asked; null where nothing has a price."),
  rangeAfter: range,
});

export const diffSchema = z
  .strictObject({
    before: z.string().describe("What is compared, as named."),
    after: z.string(),
    drinks: z.array(drink).describe("What a guest could be hurt by first, then money, then taste, then the rest."),
    things: z.array(thing),
    menus: z.array(menu),
    broken: z
      .array(z.strictObject({ side: z.enum(["before", "after"]), file: z.string(), lines: z.array(z.int()) }))
      .describe("Lines that do not read: what they say is not compared."),
    summary: z.strictObject(Object.fromEntries(how.options.map((one) => [one, z.int()])) as Record<z.infer<typeof how>, z.ZodInt>),
  })
  .describe("What changed between two states of some specs, as drinks and not as lines.");

export type DiffReport = z.infer<typeof diffSchema>;
export type DiffDrink = DiffReport["drinks"][number];
export type DiffThing = DiffReport["things"][number];
export type DiffArrival = NonNullable<DiffDrink["arrival"]>;
export type DiffEffects = NonNullable<DiffDrink["effects"]>;
