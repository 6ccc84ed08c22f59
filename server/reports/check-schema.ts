/** The shape of `mutchkin check --format json`, and of the data behind its text. */
import { z } from "zod";
import { severitySchema } from "./assess-schema.ts";

const place = (what: string) => z.int().min(1).describe(what);
const count = z.int().min(0);

export const checkSchema = z
  .strictObject({
    findings: z.array(
      z.strictObject({
        file: z.string().describe("From the current folder, with forward slashes."),
        line: place("The line in the file, the first one being 1."),
        column: place("Where the finding starts in that line, the first UTF-16 unit being 1, as editors count."),
        endColumn: place("Where it ends in the same line: the first unit behind it."),
        code: z.string().describe("The rule's code, for `severity:` in a house and for `# allow CODE: reason`."),
        severity: severitySchema,
        message: z.string().describe("What is wrong and why it matters."),
        todo: z.string().describe("What to do about it."),
        docs: z.string().describe("Where the rule is explained: a page of Mutchkin's own, and the place in it."),
      }),
    ),
    summary: z.strictObject({
      files: count.describe("How many files were checked."),
      errors: count,
      warnings: count,
      information: count,
      hints: count,
    }),
  })
  .describe("What the rules find, by file and line.");

export type CheckReport = z.infer<typeof checkSchema>;
export type FindingReport = CheckReport["findings"][number];
