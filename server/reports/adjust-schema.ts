/** The shape of `mutchkin adjust --format json`, and of the data behind its text. */
import { z } from "zod";
import { anyFigure } from "./assess-schema.ts";

export const adjustedFigures = [
  "ratio",
  "strengthPct",
  "sweetnessGPer100Ml",
  "acidGPer100Ml",
  "saltGPer100Ml",
  "afterVolumeMl",
  "fillShare",
  "brix",
  "acidGPer100G",
  "saltGPer100G",
  "massG",
  "volumeMl",
] as const;
const figures = (what: string) => z.partialRecord(z.enum(adjustedFigures), anyFigure).describe(what);

const reached = z.strictObject({
  amount: z.number().describe("The nearest that can be measured, in `unit`."),
  unit: z.string(),
  text: z.string().describe("The amount as a spec writes it."),
  exact: z.number().describe("What meets the target, in `unit`."),
  step: z.number().nullable().describe("In which steps it is measured, in `unit`; null where nothing measures it."),
  leftOver: z.number().describe("How far the figure then stands above the target; below it where negative."),
  says: z.string().describe("The same in words, with how sure the figure is."),
  after: figures("What the drink or the prep comes to."),
  change: z
    .strictObject({
      line: z.int().min(1).describe("The line in the file, the first one being 1."),
      before: z.string().nullable().describe("The line as it stands; null where it is a new one."),
      after: z.string(),
    })
    .nullable()
    .describe("Null where the line stays as it is, and where a riff has no line to write it on."),
});

export const adjustSchema = z
  .strictObject({
    name: z.string(),
    kind: z.enum(["drink", "prep"]),
    file: z.string().describe("From the current folder, with forward slashes."),
    line: z.int().min(1).describe("The line of its name, the first one being 1."),
    family: z.string().nullable().describe("Null where there is none."),
    target: z.strictObject({
      figure: z.enum(adjustedFigures),
      unit: z.string().describe("What it is counted in; empty for a ratio."),
      value: z.number(),
      asked: z.string().describe("In words."),
    }),
    now: figures("As it stands."),
    usual: z
      .partialRecord(z.enum(adjustedFigures), z.strictObject({ low: z.number(), high: z.number() }))
      .describe("The windows it is held against."),
    ways: z
      .array(
        z.strictObject({
          with: z.string().describe("The pour whose amount is changed."),
          present: z.string().nullable().describe("Its amount as it stands; null where it is not poured yet."),
          reached: reached.nullable(),
          caution: z.string().nullable().describe("The usual one, where what is weighed can hurt."),
          problem: z.string().nullable().describe("Why the target is not reached this way, and how near it comes."),
        }),
      )
      .describe("One where a pour was named; else one for each pour that does it, the smallest change first, then those that do not."),
    written: z.boolean().describe("Whether the file was changed."),
  })
  .describe("A target, and the amount of one pour that comes nearest to it.");

export type AdjustReport = z.infer<typeof adjustSchema>;
export type WayReport = AdjustReport["ways"][number];
