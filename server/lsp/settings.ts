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
  inlayHints: z
    .object({
      // What a drink comes to is what nobody sees in a list of pours, and it is one hint a drink.
      figures: z.boolean().default(true).describe("A drink's strength, volume and ratio, behind its name."),
      // A house pours in one system, and this would double every line: it is for whoever writes for both, and hovers tell it anyway.
      otherUnits: z.boolean().default(false).describe("The same amount in ounces, or of ounces in millilitres, behind a pour."),
      // A part cannot be poured before somebody has done the sum.
      parts: z.boolean().default(true).describe("What parts come to, where the drink says how much they make together."),
      // It stands only where somebody looks for what changed.
      changes: z.boolean().default(true).describe("What each change does, beside a text that is shown next to an earlier one."),
    })
    .prefault({}),
  codeLens: z.boolean().default(true).describe("Who uses a drink, a stock or a prep, above its name."),
});

export type EditorSettings = z.infer<typeof settingsSchema>;

export const defaultEditorSettings: EditorSettings = settingsSchema.parse({});

/**
 * Our settings in what an editor sends unasked: all its settings or ours alone, a name of two parts nested or with a
 * dot. Absent where there is nothing of ours.
 */
export function ownSection(sent: unknown): Record<string, unknown> | undefined {
  if (typeof sent !== "object" || sent === null) return undefined;
  const own: Record<string, unknown> = {};
  let found = false;
  for (const [key, value] of Object.entries(sent)) {
    const [name = "", part] = key.replace(/^mutchkin\./, "").split(".");
    if (key === "mutchkin") Object.assign(own, ownSection(value));
    else if (name in settingsSchema.shape) own[name] = part ? { ...(own[name] as object | undefined), [part]: value } : value;
    else continue;
    found = true;
  }
  return found ? own : undefined;
}

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
    if (name === "inlayHints" && typeof value === "object") {
      settings[name] = switchesOf(value as Record<string, unknown>, wrong);
      continue;
    }
    const read = schema.safeParse(value);
    if (read.success) settings[name] = read.data;
    else wrong.push(notAllowed(name, value, allowed[name]!));
  }
  return { settings: settings as EditorSettings, wrong };
}

function notAllowed(name: string, value: unknown, what: string): string {
  return `The setting “mutchkin.${name}” is ${JSON.stringify(value)}, which is not allowed: ${what}. The default goes on being used.`;
}

/** One wrong switch leaves the others as they are set. */
function switchesOf(given: Record<string, unknown>, wrong: string[]): EditorSettings["inlayHints"] {
  const found = { ...defaultEditorSettings.inlayHints };
  for (const name of Object.keys(found) as (keyof typeof found)[]) {
    const value = given[name];
    if (typeof value === "boolean") found[name] = value;
    else if (value !== undefined && value !== null) wrong.push(notAllowed(`inlayHints.${name}`, value, "it takes true or false"));
  }
  return found;
}

const allowed: Record<string, string> = {
  severity: `it takes rule codes with ${severities.join(", ")}`,
  units: "it takes house, ml, cl or oz",
  maxFindings: "it takes a whole number from 1 to 10,000",
  codeLens: "it takes true or false",
  inlayHints: "it takes figures, otherUnits and parts, each true or false",
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
