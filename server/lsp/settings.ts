/**
 * The editor's settings, each with its default. A wrong one falls back alone and is named to the
 * person with what was given and what is allowed.
 */
// By its namespace: so the bundler leaves out what is not used, which is most of it.
import * as z from "zod";
import { severities } from "../house/settings.ts";

export const settingsSchema = z.object({
  severity: z
    .record(z.string(), z.enum(severities))
    .default({})
    .describe(
      "How loud a rule is, by its code: off, hint, information, warning or error. Goes before the level that a `house` sets; what a house turns off stays off.",
    ),
  units: z.enum(["house", "ml", "cl", "oz"]).default("house").describe("The unit that hovers show amounts in; it never changes a file."),
  maxFindings: z.number().int().min(1).max(10_000).default(500).describe("The most findings that are shown for one file."),
});

export type EditorSettings = z.infer<typeof settingsSchema>;

export const defaultEditorSettings: EditorSettings = settingsSchema.parse({});

/** Reads settings as given by an editor; `wrong` holds one plain sentence for each setting that is not as allowed. */
export function readSettings(given: unknown): { settings: EditorSettings; wrong: string[] } {
  const settings: Record<string, unknown> = { ...defaultEditorSettings };
  const wrong: string[] = [];
  const values = typeof given === "object" && given !== null ? (given as Record<string, unknown>) : {};
  for (const [name, schema] of Object.entries(settingsSchema.shape)) {
    const value = values[name];
    if (value === undefined || value === null) continue;
    if (name === "severity" && typeof value === "object") {
      settings[name] = severitiesOf(value as Record<string, unknown>, wrong);
      continue;
    }
    const read = schema.safeParse(value);
    if (read.success) settings[name] = read.data;
    else
      wrong.push(
        `The setting “mutchkin.${name}” is ${JSON.stringify(value)}, which is not allowed: ${allowed[name]}. The default goes on being used.`,
      );
  }
  return { settings: settings as EditorSettings, wrong };
}

const allowed: Record<string, string> = {
  severity: `it takes rule codes with ${severities.join(", ")}`,
  units: "it takes house, ml, cl or oz",
  maxFindings: "it takes a whole number from 1 to 10,000",
};

/** One wrong severity does not silence the others. */
function severitiesOf(given: Record<string, unknown>, wrong: string[]): EditorSettings["severity"] {
  const found: EditorSettings["severity"] = {};
  for (const [code, level] of Object.entries(given)) {
    const severity = severities.find((one) => one === level);
    if (severity) found[code] = severity;
    else {
      wrong.push(
        `The setting “mutchkin.severity” gives “${code}” the level ${JSON.stringify(level)}, which is not allowed: it takes ${severities.join(", ")}. The rule's own level goes on being used.`,
      );
    }
  }
  return found;
}
