/** The shape of `mutchkin cost --format json`, and of the data behind its table. */
import { z } from "zod";
import { anyFigure } from "./assess-schema.ts";

const count = z.int().min(0);
const money = (what: string) => z.number().nullable().describe(`${what}; null where it is not known.`);
const figure = (what: string) => anyFigure.describe(what);
const reasons = z.array(z.string());

const supposed = z
  .strictObject({
    cost: figure("As `cost`."),
    known: z.number().describe("As `known`."),
    share: figure("As `share`."),
    margin: figure("As `margin`."),
    crosses: z.enum(["up", "down"]).nullable().describe("The house's target cost, by the value of the share; null where it does not."),
  })
  .describe("With the supposed prices.");

const costedDrink = z.strictObject({
  section: z.string().nullable(),
  name: z.string().describe("As the menu writes it."),
  line: z.int().min(1).describe("The line in the file, the first one being 1."),
  serves: z.number().describe("What the price buys: costs and margin are of all of them."),
  price: money("As the guest reads it"),
  tax: z.number().nullable().describe("In the price, or on top of it; null where the house states none."),
  net: money("What of the price is the house's"),
  cost: figure("Of all serves, waste, garnish and paid ice counted."),
  known: z.number().describe("What of the cost has a price: known even where the whole is not."),
  without: reasons.describe("Garnish, rim and leaves of no known price: the cost is without them."),
  share: figure("Of the net price, 0 to 1."),
  margin: figure("What the net price leaves."),
  over: z.boolean().nullable().describe("Above the house's target cost; null without a target or a share."),
  near: z.boolean().nullable().describe("Nearer to the target than twice its uncertainty, so that it may be on either side."),
  because: reasons.describe("Why there is no price, or no tax."),
  others: reasons.describe("Further prices of the line, for sizes that are not costed."),
  supposed: supposed.nullable().describe("Null where nothing is supposed, and where it changes nothing here."),
});

const menuCost = z.strictObject({
  menu: z.string(),
  file: z.string().describe("From the current folder, with forward slashes."),
  line: z.int().min(1),
  currency: z.string().nullable(),
  taxRate: z.number().nullable().describe("0 to 1."),
  target: z.number().nullable().describe("The share that the house means its ingredients to take."),
  supposed: z
    .array(z.strictObject({ stock: z.string(), before: z.string().nullable(), after: z.string() }))
    .describe("The prices that were changed, as a spec writes them."),
  drinks: z.array(costedDrink),
  summary: z.strictObject({
    drinks: count,
    costed: count.describe("Drinks whose cost is known."),
    shared: count.describe("Drinks whose share is known."),
    over: count.describe("Drinks above the target."),
    shares: z
      .strictObject({ low: z.number(), median: z.number(), high: z.number() })
      .nullable()
      .describe("Of the known shares. Nothing is added up: how often a drink is sold stands nowhere."),
    moved: count.describe("Drinks that the supposed prices move."),
  }),
});

export const costSchema = z.strictObject({ menus: z.array(menuCost) }).describe("What each drink of a menu costs and brings in.");

export type CostReport = z.infer<typeof costSchema>;
export type MenuCost = CostReport["menus"][number];
export type CostedReport = MenuCost["drinks"][number];
