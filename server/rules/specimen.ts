/** A drink for a rule's examples: whole, so that nothing is found in it but what the example is about. */

/** The usual fields, each replaced or taken out (`undefined`) by name, and the pours below them. */
export function specimen(
  pours: readonly string[],
  changes: Readonly<Record<string, string | undefined>> = {},
  name = "Slip Water",
): string {
  const fields = Object.entries({ ...usual, ...changes }).filter(([, value]) => value !== undefined);
  const lines = [`drink ${name}`, ...fields.map(([field, value]) => `  ${field}: ${value}`), ...pours.map((pour) => `  ${pour}`)];
  return `${lines.join("\n")}\n`;
}

const usual = { glass: "highball", method: "build over cubed ice", garnish: "none" };

/** Served up, off its ice. */
export const shaken = { glass: "coupe", method: "shake 12 s; fine strain" };
