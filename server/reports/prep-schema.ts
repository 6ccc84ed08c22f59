/** The shape of `mutchkin prep --format json`, and of the data behind its text. */
import { z } from "zod";

const units = z.enum(["ml", "g", "piece"]);
const reasons = z.array(z.string());
const nullable = (what: string) => z.number().nullable().describe(`${what}; null where it cannot be told.`);
const day = z.iso.date();

const drink = z.strictObject({
  name: z.string(),
  serves: z.number().describe("On average: so many of all serves as its share says, not rounded."),
  off: z.boolean().describe("Something is out tonight that nothing stands in for; it is counted all the same."),
});

const made = z.strictObject({
  name: z.string(),
  kind: z.enum(["prep", "drink"]).describe("A drink where it is poured in another."),
  unit: z.enum(["ml", "g"]),
  needed: z.number().describe("By what is poured and by the preps above it, in `unit`."),
  batches: z
    .int()
    .nullable()
    .describe("Whole ones; null where it is written in parts, so that any size will do, and where it cannot be told."),
  makes: nullable("How much there is of it then, in `unit`"),
  leftOver: nullable("Of that, in `unit`"),
  parts: z
    .array(
      z.strictObject({ name: z.string(), amount: z.number().nullable(), unit: units.nullable() }).describe("Null where it is not known."),
    )
    .describe("What goes into all of it."),
  long: reasons.describe("The steps that take an hour or longer, as they are written: to be begun in time."),
  keeps: z.string().nullable().describe("As it is written; null where it says nothing."),
  useBy: day.nullable().describe("The day it is made, and so long after; null where it says nothing."),
  shortest: z
    .strictObject({ name: z.string(), keeps: z.string() })
    .nullable()
    .describe("Where it says nothing: what goes into it and is said to keep shortest. It is no statement about the prep."),
});

const purchase = z.strictObject({
  name: z.string(),
  unit: units,
  needed: z.number().describe("With what is wasted of it, in `unit`; what is known of it where `because` says something."),
  by: reasons.describe("The drinks and preps that call for it."),
  pack: z
    .strictObject({ text: z.string().describe("As its price writes it."), size: z.number().describe("In `unit`."), price: z.number() })
    .nullable(),
  packs: z.int().nullable().describe("Rounded up."),
  leftOver: nullable("Of what is bought, in `unit`"),
  cost: nullable("Of the packs"),
  used: nullable("Of what is needed out of them"),
  because: reasons.describe("Why there is no pack, or not all of what is needed is known."),
});

export const prepSchema = z
  .strictObject({
    menu: z.string(),
    date: day.describe("The day on which it is made."),
    covers: z.number(),
    drinksPerCover: z.number(),
    serves: z.number().describe("Covers times drinks per cover."),
    currency: z.string().nullable(),
    mix: z
      .strictObject({
        unlisted: z
          .array(z.strictObject({ name: z.string(), line: z.int().min(1), near: reasons }))
          .describe("Names that are not on the menu; nothing is counted for them."),
        without: reasons.describe("Drinks of the menu that the mix does not name, or gives no share: none of them is counted on."),
      })
      .nullable()
      .describe("Null where each drink is as likely as the others."),
    drinks: z.array(drink),
    unknown: reasons.describe("Lines of the menu that name no drink."),
    preps: z.array(made).describe("What is needed first stands first."),
    purchases: z.array(purchase),
    untold: z
      .array(z.strictObject({ name: z.string(), of: z.string(), because: z.string() }))
      .describe("What cannot be told: of what, in which drink or prep, and why. It is not in the sums."),
    total: z.strictObject({
      cost: z.number().describe("Of all packs whose price is known."),
      used: z.number().describe("Of what is needed out of them."),
      complete: z.boolean().describe("Nothing is left out of it."),
    }),
  })
  .describe("What to make and what to buy for an evening, as if nothing were there.");

export type PrepSheet = z.infer<typeof prepSchema>;
