/** The usual cautions, shown only where they apply. They name the thing and defer to local rules. One row each. */
import type { Assessment } from "../house/drink.ts";
import type { FlatPour } from "../house/riff.ts";

interface Caution {
  readonly text: string;
  applies(assessment: Assessment): boolean;
}

/** Less caffeine than in a few sips of coffee is not worth a line: practice, no source. */
const littleCaffeineMg = 10;

const rows: readonly Caution[] = [
  {
    text: "Raw egg: tell the guest, and follow your local food code.",
    applies: ({ flat }) => flat.pours.some((pour) => pour.ingredient.facts?.kind === "egg" && !/pasteuri[sz]ed/i.test(nameOf(pour))),
  },
  {
    text: "Alcohol with caffeine: it can hide how drunk a guest is. Follow your local rules.",
    applies: ({ outcome }) => (outcome.value("caffeineMg") ?? 0) >= littleCaffeineMg && (outcome.value("ethanolG") ?? 0) > 1,
  },
  {
    text: "Dry ice or liquid nitrogen: none may be left in the glass. Only with training, and as your local rules allow.",
    applies: ({ flat, steps }) =>
      [...flat.pours.map(nameOf), ...steps.map(({ item }) => item.text)].some((text) =>
        /\b(?:dry ice|liquid nitrogen|cryogen)/i.test(text),
      ),
  },
];

/** The cautions that apply to a drink, the gravest first. */
export function cautionsOf(assessment: Assessment): string[] {
  return rows.filter((row) => row.applies(assessment)).map((row) => row.text);
}

function nameOf(pour: FlatPour): string {
  return pour.ingredient.resolution.text;
}
