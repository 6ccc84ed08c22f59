/** A step that adds water or keeps a temperature, and does not say how much or which. */
import type { Words } from "../../grammar/tree.ts";
import type { Fix } from "../house/finding.ts";
import type { Step } from "../house/method.ts";
import { showShare } from "../house/show.ts";
import { placeOf } from "./places.ts";
import type { Found, Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";
import { stepsWritten } from "./steps.ts";

const bottled = (method: string) => specimen(["60 ml gin", "15 ml dry vermouth"], { ...shaken, method });

export const incompleteStep: Rule = {
  code: "incomplete-step",
  severity: "warning",
  entries: ["drink"],
  docs: {
    title: "A step lacks its figure",
    why: "A pre-dilution adds a share of the volume, and nobody knows how much water it is where none is stated. A drink that is held or heated is as warm as the step says, and of no known temperature where it says nothing. What hangs on it is unknown.",
    bad: bottled("pre-dilute; hold at -5 C"),
    good: bottled("pre-dilute 25 %; hold at -5 C"),
  },
  *check(house, entry) {
    const written = stepsWritten(house, entry);
    for (const step of written?.steps ?? []) {
      const lacking = lackOf(step);
      if (!lacking) continue;
      const { line } = written!.method;
      const number = step.item.parts[0]?.quantities.find(({ unit }) => !unit)?.numeral;
      const fix = (at: Words): Fix => ({
        title: `Write “${at.text} ${lacking.unit}”`,
        safe: false,
        edits: [{ entry, line, start: at.start, end: at.end, text: `${at.text} ${lacking.unit}` }],
      });
      yield { ...lacking.says, place: placeOf(line, step.item), fixes: () => (number && lacking.unit ? [fix(number)] : []) };
    }
  },
};

interface Lack {
  readonly says: Pick<Found, "what" | "todo" | "severity">;
  /** What a bare number would have to be followed by; absent where a number is there. */
  readonly unit?: string;
}

function lackOf({ technique, share, temperatureC, toGlass }: Step): Lack | undefined {
  const word = technique?.words[0];
  if (technique?.dilutes && !share) {
    const todo = `Write the share of the volume before, such as \`${word} 25 %\`; or pour the water as a pour.`;
    return { unit: "%", says: { what: `How much water “${word}” adds is not said, so what follows is unknown.`, todo } };
  }
  if (technique?.dilutes && (share!.value <= 0 || share!.value > 1)) {
    const what = `“${word}” adds ${showShare(share!.value)} of the volume as water: ${share!.value > 1 ? "more than there is drink" : "none"}.`;
    return { says: { what, todo: `Write the share of the volume before, such as \`${word} 25 %\`.` } };
  }
  if (technique?.brings !== "stated" || temperatureC || toGlass) return undefined;
  const example = technique.id === "hold" ? "hold at -5 C" : `${word} to 65 C`;
  const what = `How warm “${word}” makes it is not said, so its temperature is unknown.`;
  return { unit: "C", says: { severity: "information", what, todo: `Write the temperature, such as \`${example}\`.` } };
}
