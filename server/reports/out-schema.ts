/** The shape of `mutchkin check --out --format json`, and of the data behind its text. */
import { z } from "zod";

const count = z.int().min(0);

const outDrink = z.strictObject({
  name: z.string(),
  file: z.string().describe("From the current folder, with forward slashes."),
  line: z.int().min(1).describe("The line in the file, the first one being 1."),
  state: z.enum(["off", "falls back"]).describe("Off: something is out that nothing stands in for."),
  missing: z
    .array(
      z.strictObject({
        out: z.string().describe("What says that it is out."),
        through: z
          .string()
          .nullable()
          .describe("The ingredient that is made of it, as the drink names it; null where the drink pours it itself."),
        instead: z.string().nullable().describe("The `or` line that stands in; null where none does."),
      }),
    )
    .min(1),
  menus: z.array(z.string()).describe("The menus among these files that list it."),
});

export const outSchema = z
  .strictObject({
    drinks: z.array(outDrink),
    summary: z.strictObject({
      drinks: count.describe("How many drinks were looked at; retired ones are not."),
      off: count,
      fallBack: count.describe("Drinks that can be made with something else."),
    }),
  })
  .describe("Drinks that lack something tonight, by what says `status: out`.");

export type OutReport = z.infer<typeof outSchema>;
export type OutDrink = OutReport["drinks"][number];
