/** The shape of `mutchkin card --format json`, and of the data behind a card. */
import { z } from "zod";
import { anyFigure } from "./assess-schema.ts";

const pour = z.strictObject({
  amount: z.string().describe("As it is written, `30 ml` for a part of known size; empty where none is stated."),
  other: z
    .string()
    .nullable()
    .describe(
      "The same as it is poured in the other system of units, `≈ 7/8 oz` where that is rounded; null for what is counted or weighed.",
    ),
  name: z.string(),
  notes: z.array(z.string()).describe("What qualifies it: `frozen`, `optional`, `1 part`."),
  or: z.array(z.string()).describe("What may stand in for it."),
});

const card = z.strictObject({
  name: z.string(),
  house: z.string().nullable().describe("Null where there is none."),
  file: z.string().describe("From the current folder, with forward slashes."),
  line: z.int().min(1).describe("The line of its name, the first one being 1."),
  serves: z.number().positive().describe("How many the pours are for."),
  pours: z.array(pour).describe("The full spec, in its order, with what goes on the rim."),
  service: z.array(pour).nullable().describe("How one serve is poured from the pre-mixed bottle; null where nothing is batched."),
  method: z.array(z.string()).describe("A step each; empty where none is stated."),
  ice: z.string().nullable(),
  glass: z.string().nullable(),
  garnish: z.string().nullable().describe("“none” where the spec says so, null where it says nothing."),
  rim: z.string().nullable(),
  allergens: z.strictObject({
    contains: z.string().describe("In words; empty where nothing is stated at all."),
    notStated: z.string().describe("Of what nobody states them, in words; empty where all is answered for."),
  }),
  cautions: z.array(z.strictObject({ title: z.string(), advice: z.string() })).describe("The gravest first. Local codes decide."),
  strength: z.string().describe("In words: strength, and standard drinks in one serve."),
  fill: z.strictObject({
    volumeMl: anyFigure.describe("Of one serve in the glass, without its ice."),
    capacityMl: anyFigure.describe("To the brim."),
    washline: z.number().nullable().describe("The share of the glass that is meant to be filled."),
    share: anyFigure.describe("The share that is filled, with the ice."),
    volume: z.string().describe("In words; empty where it is unknown."),
    otherVolume: z.string().describe("In the other system."),
    capacity: z.string(),
    otherCapacity: z.string(),
    why: z.array(z.string()).describe("Why the level is unknown."),
  }),
  ounce: z.string().describe("How large an ounce is on this card: `30 ml`."),
});

export const cardSchema = z
  .strictObject({
    country: z.string().nullable().describe("Two letters, of the first drink's house; its paper follows from it."),
    cards: z.array(card),
    unknown: z.array(z.string()).describe("What menus list and nobody declares."),
  })
  .describe("Service cards.");

export type CardReport = z.infer<typeof cardSchema>;
export type Card = CardReport["cards"][number];
export type CardPour = z.infer<typeof pour>;
