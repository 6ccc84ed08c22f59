/** A riff beside its parent: what is poured otherwise, and how far its figures lie from the parent's. */
import type { FigureName } from "../../engine/plan.ts";
import { type Assessment, assessDrink } from "../../house/drink.ts";
import type { House } from "../../house/house.ts";
import { figureChange, otherFields, pourChanges } from "../../house/riff-changes.ts";
import { settingsOf } from "../../house/settings.ts";
import type { Measure } from "../../house/show.ts";
import { showChange, showChanges, showMoneyChange, showVolumeChange } from "../../house/show-change.ts";
import { asText } from "../markdown.ts";

/** The rows of a drink's table in which it is compared, and the digits that anybody reads there. One row each. */
const compared: Readonly<Record<string, { readonly figure: FigureName; readonly finest?: number }>> = {
  strength: { figure: "strengthPct", finest: 1 },
  volume: { figure: "afterVolumeMl" },
  sugar: { figure: "sugarGPer100Ml", finest: 2 },
  acid: { figure: "acidGPer100Ml", finest: 2 },
  ratio: { figure: "ratio", finest: 1 },
  cost: { figure: "costPerServe" },
};

/** `Made from it with 60 ml oloroso sherry for 50 ml aged rum; without egg white; another method and garnish.` Absent for a drink that is no riff. */
export function describeChanges(house: House, { flat }: Assessment): string | undefined {
  if (!flat.parent) return undefined;
  const said = showChanges(pourChanges(house, flat), otherFields(flat));
  return `From ${asText(flat.parent.entry.name?.text ?? "its parent")}: ${asText(said || "nothing is changed")}.`;
}

/** A cell of the parent's figure and how far from it the riff lies, by the row's label; empty where there is nothing to compare. */
export function parentColumn(house: House, assessment: Assessment, measure: Measure): ((label: string) => string) | undefined {
  const { flat } = assessment;
  if (!flat.parent) return undefined;
  const parent = assessDrink(house, flat.parent.entry);
  const { currency } = settingsOf(house, house.scopeOf(flat.entry));
  return (label) => {
    const row = compared[label];
    const change = row && figureChange(assessment, parent, row.figure);
    if (!row || !change) return "";
    if (label === "cost") return showMoneyChange(change, currency);
    return label === "volume" ? showVolumeChange(change, measure) : showChange(change, row.finest);
  };
}
