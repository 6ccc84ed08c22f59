/** The shape of `mutchkin batch --format json`, and of the data behind its text. */
import { z } from "zod";
import { anyFigure } from "./assess-schema.ts";

const measured = z.strictObject({
  text: z.string().describe("As it is measured: `1250 ml`, `45.2 g`, `9 dashes`."),
  way: z.enum(["jigger", "jug", "scale", "count"]),
  amount: z.number().describe("What then goes in, in the unit of what was to go in."),
  off: z.number().describe("How much more than the exact amount that is, as a share; less where negative."),
});

export const batchSchema = z
  .strictObject({
    name: z.string(),
    house: z.string().nullable().describe("Null where there is none."),
    file: z.string().describe("From the current folder, with forward slashes."),
    line: z.int().min(1).describe("The line of its name, the first one being 1."),
    made: z.string().describe("The day on which it is made, year, month and day."),
    serves: z.number().positive(),
    pours: z
      .array(
        z.strictObject({
          name: z.string(),
          exact: z.number().describe("In `unit`."),
          unit: z.enum(["ml", "g"]),
          measured,
          weighed: measured.nullable().describe("The same on the scale, in g; null where that is unknown or `measured` already."),
          doubt: z.string().nullable().describe("Why it would be left out of a bottle if it were not marked `batched`."),
        }),
      )
      .describe("What goes in the bottle, in the spec's order."),
    water: z.strictObject({
      exactMl: z.number().min(0).describe("What the ice would have melted; 0 where it is left out."),
      plusMinusMl: z.number().min(0),
      measured: measured.nullable(),
      why: z.string(),
    }),
    apart: z.array(z.strictObject({ name: z.string(), why: z.string() })).describe("What is not in the bottle."),
    volumeMl: anyFigure.describe("In the bottles."),
    strengthPct: anyFigure.describe("In the bottles."),
    serveMl: anyFigure.describe("Of the batch in one serve."),
    jiggerMl: z.number().nullable().describe("The same as the jigger measures it; null where it measures nothing that near."),
    bottles: z.strictObject({
      sizeMl: z.number(),
      headspace: z.number().describe("The share of each that is left empty."),
      count: z.int().nullable().describe("Null where the volume is unknown."),
    }),
    freezingC: anyFigure.describe("Where it starts to freeze."),
    freezer: z.strictObject({ atC: z.number(), iceShare: anyFigure.describe("Of its weight, 0 to 1."), says: z.string() }),
    served: z
      .array(
        z.strictObject({
          figure: z.enum(["strengthPct", "sugarGPer100Ml", "acidGPer100Ml"]),
          own: z.number().describe("As the spec has it."),
          batch: z.number().describe("As it is from this batch: only rounding lies between."),
        }),
      )
      .describe("Without what is unknown."),
    useBy: z.strictObject({
      date: z.string().nullable().describe("Null where nobody states how long anything in it keeps."),
      by: z.string().nullable().describe("What goes off first, of what is stated."),
      notStated: z.array(z.string()),
    }),
    allergens: z.strictObject({
      contains: z.array(z.strictObject({ allergen: z.string(), names: z.array(z.string()), assumed: z.boolean() })),
      notStated: z.array(z.string()),
    }),
    work: z.array(z.string()).describe("What to do, in this order."),
    service: z.array(z.string()).describe("What is done at the bar."),
    label: z.array(z.string()).describe("A line each."),
    cautions: z.array(z.string()).describe("The usual ones, the gravest first. Local codes decide."),
  })
  .describe("A drink mixed ahead.");

export type BatchReport = z.infer<typeof batchSchema>;
