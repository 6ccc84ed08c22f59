/** The page that says how often each figure's interval held it, and what that does and does not prove. */
import { figureNames } from "../../server/engine/plan.ts";
import { printTable } from "../../server/reports/markers.ts";
import { type Coverage, type Coverages, claimed } from "./coverage.ts";

/** Fewer draws than these say nothing to a few per cent: such a figure is left out. */
export const fewestDraws = 1000;

export function coveragePage(coverages: Coverages, drinks: number, drawsEach: number): string {
  const [one, two] = [percent(claimed.within1), percent(claimed.within2)];
  return [
    "# How often the ± holds",
    "",
    `${drinks.toLocaleString("en-GB")} random drinks, and a riff on every other one. Everything that a drink's figures are computed from and that is not`,
    `certain (jiggers, labels, juices, temperatures, ice, sweetness, the melt model's own factor) was drawn anew at once`,
    `from a normal distribution, ${drawsEach} times, and the drink computed again. A figure with a standard uncertainty claims to`,
    `lie within one of it ${one} % of the time, and within two ${two} %. This is how often it did.`,
    "",
    "**This proves the propagation, not the model.** It shows that the ± of a figure follows from the ± of what it was made",
    "from, and that what two drinks share is not counted twice in their difference. Whether the inputs' own ± are right, and",
    "whether ice melts as the model has it, no draw of numbers can tell: see [the published figures](README.md) and the",
    "sources in the larder for that.",
    "",
    `Written by \`tests/reference/coverage.test.ts\`, which fails where a share is more than 3 points from what is claimed;`,
    "`npm run montecarlo` draws more of them.",
    "",
    coverageTable(coverages),
    "",
    `First order follows a straight line, and not where it bends: no ice is warmer than 0 °C, no pour holds less than none,`,
    `and a quotient is not its parts. ${furthest(coverages)}`,
    "",
  ].join("\n");
}

function furthest({ figures, differences }: Coverages): string {
  const off = (one: Coverage) => Math.max(Math.abs(one.within1 - claimed.within1), Math.abs(one.within2 - claimed.within2));
  const rows = [
    ...enough(figures).map((one) => ({ name: `\`${one.figure}\``, off: off(one) })),
    ...enough(differences).map((one) => ({ name: `a riff's \`${one.figure}\` less its parent's`, off: off(one) })),
  ];
  const most = rows.reduce((worst, one) => (one.off > worst.off ? one : worst));
  return `Furthest from its claim is ${most.name}, by ${percent(most.off)} points.`;
}

/** Each figure's shares, its own and its difference's between riff and parent, and all together. */
export function coverageTable({ figures, differences }: Coverages): string {
  const rows = figureNames.flatMap((name) => {
    const own = enough(figures).find(({ figure }) => figure === name);
    const apart = enough(differences).find(({ figure }) => figure === name);
    return own ? [[`\`${name}\``, ...shares(own), ...shares(apart)]] : [];
  });
  const all = ["all together", ...shares(together(enough(figures))), ...shares(together(enough(differences)))];
  const claim = ["claimed", ...[0, 1].flatMap(() => ["", percent(claimed.within1), percent(claimed.within2)])];
  const head = ["figure", "draws", "within 1 u, %", "within 2 u, %", "riff less parent: draws", "within 1 u, %", "within 2 u, %"];
  return printTable(head, [...rows, all, claim]);
}

export const enough = (coverages: readonly Coverage[]): readonly Coverage[] => coverages.filter(({ draws }) => draws >= fewestDraws);

export function together(coverages: readonly Coverage[]): Pick<Coverage, "draws" | "within1" | "within2"> {
  const draws = coverages.reduce((sum, one) => sum + one.draws, 0);
  const mean = (share: "within1" | "within2") => coverages.reduce((sum, one) => sum + one[share] * one.draws, 0) / draws;
  return { draws, within1: mean("within1"), within2: mean("within2") };
}

function shares(coverage: Pick<Coverage, "draws" | "within1" | "within2"> | undefined): string[] {
  return coverage && coverage.draws > 0 ? [String(coverage.draws), percent(coverage.within1), percent(coverage.within2)] : ["", "", ""];
}

const percent = (share: number): string => (100 * share).toFixed(1);
