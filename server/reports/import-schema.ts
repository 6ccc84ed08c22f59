/** The shape of what `mutchkin import --report json` tells. */
import { z } from "zod";

const misread = z.strictObject({
  where: z.string().describe("In the file: `row 3, column “abv”`; rows count from 1, as a spreadsheet shows them."),
  text: z.string().describe("As it stands there, in one line; of several cells of a column the first."),
  why: z.string().describe("What does not read, in sentences."),
  done: z.string().describe("What was done with it, in a sentence. Nothing is left out of the specs."),
});

export const importSchema = z
  .strictObject({
    entries: z.int().min(0).describe("How many entries the specs hold."),
    misread: z.array(misread).describe("What was not understood; where there is any, the command ends with 1."),
    remarks: z.array(z.string()).describe("What was changed or set aside though it was understood, in sentences."),
  })
  .describe("What an imported file came to.");

/** Something that was not understood. Nothing of it is lost: it stands in the text, mostly as a comment. */
export type Misread = Readonly<z.infer<typeof misread>>;
