/** A target and the ways to it, as data: what each comes to, what is left over, and which line it changes. */
import type { FigureName, PrepFigureName } from "../engine/plan.ts";
import { asWritten, nameOf, type Reached, type Way } from "../house/bring-to.ts";
import type { Changeable, Computed } from "../house/changeable.ts";
import { amountText, lineAfter } from "../house/changed-line.ts";
import { assessDrink } from "../house/drink.ts";
import { familyOf } from "../house/family.ts";
import type { Edit } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { leftOverText } from "../house/left-over.ts";
import { goalsOf, showTarget, type Target } from "../house/targets.ts";
import { lineOf } from "../rules/cautions/all.ts";
import { isStrongAcid, strongAcid } from "../rules/cautions/strong-acid.ts";
import type { AdjustReport, adjustedFigures, WayReport } from "./adjust-schema.ts";
import { figureReport, rounded } from "./assess.ts";

type Adjusted = (typeof adjustedFigures)[number];
type Figures = AdjustReport["now"];

/** What follows from an amount, beside what can be asked for. */
const more: Readonly<Record<"drink" | "prep", readonly Adjusted[]>> = { drink: ["fillShare"], prep: ["massG", "volumeMl"] };
/** What parts without a size do not say. */
const amounts: ReadonlySet<string> = new Set(["afterVolumeMl", "fillShare", "massG", "volumeMl"]);

/** `written`: whether the file has been changed so. */
export function adjustReport(
  house: House,
  of: Changeable,
  target: Target,
  ways: readonly Way[],
  { pathOf, written }: { pathOf(uri: string): string; written: boolean },
): AdjustReport {
  const { entry } = of;
  const kind = entry.kind as "drink" | "prep";
  const family = kind === "drink" ? familyOf(house, assessDrink(house, entry).flat) : undefined;
  const all = [...goalsOf(entry).map(({ figure }) => figure as Adjusted), ...more[kind]];
  const names = of.proportional ? all.filter((name) => !amounts.has(name)) : all;
  const windows = [...(family?.windows.values() ?? [])].filter(({ figure }) => names.some((name) => name === figure));
  const figures = (computed: Computed): Figures =>
    Object.fromEntries(names.map((name) => [name, figureReport(computed.figure(name as FigureName | PrepFigureName), false)]));
  const start = house.getLineOf(entry);
  return {
    name: entry.name?.text ?? "",
    kind,
    file: pathOf(house.getDocumentOf(entry).uri),
    line: start + 1,
    family: family?.name || null,
    target: {
      figure: target.goal.figure as Adjusted,
      unit: target.goal.unit,
      value: rounded(target.value),
      asked: showTarget(target, of.settings),
    },
    now: figures(of.now),
    usual: Object.fromEntries(windows.map(({ figure, low, high }) => [figure, { low, high }])),
    ways: ways.map((way) => wayReport(way, figures, start, (reached) => leftOverText(target, reached, of.settings))),
    written,
  };
}

function wayReport(
  { pour, reached, problem }: Way,
  figures: (computed: Computed) => Figures,
  start: number,
  says: (reached: Reached) => string,
): WayReport {
  return {
    with: nameOf(pour),
    present: asWritten(pour) || null,
    reached: reached
      ? {
          amount: reached.amount,
          unit: reached.unit.id,
          text: amountText(pour, reached.amount),
          exact: rounded(reached.exact),
          step: reached.step ?? null,
          leftOver: rounded(reached.leftOver),
          says: says(reached),
          after: figures(reached.after),
          change: reached.edit ? changeReport(reached.edit, start) : null,
        }
      : null,
    caution: isStrongAcid(pour.ingredient) ? lineOf(strongAcid) : null,
    problem: problem ?? null,
  };
}

function changeReport(edit: Edit, start: number): NonNullable<WayReport["reached"]>["change"] {
  const { line, text } = lineAfter(edit);
  return { line: start + line + 1, before: line === edit.line ? edit.entry.lines[line]!.text : null, after: text };
}
