/** A riff beside its parent: what is poured otherwise, and how far its figures lie from the parent's. */
import type { FigureName } from "../../engine/plan.ts";
import { type Assessment, assessDrink } from "../../house/drink.ts";
import { findFieldIn } from "../../house/entry.ts";
import type { House } from "../../house/house.ts";
import { inherited } from "../../house/riff.ts";
import { figureChange, pourChanges } from "../../house/riff-changes.ts";
import { settingsOf } from "../../house/settings.ts";
import { type Measure, showList } from "../../house/show.ts";
import { showChange, showMoneyChange, showPourChanges, showVolumeChange } from "../../house/show-change.ts";
import { isNone } from "../../house/values.ts";
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
  const others = [...inherited].filter((name) => isOther(flat, name));
  const said = [showPourChanges(pourChanges(house, flat)), others.length > 0 && `another ${showList(others)}`].filter(Boolean).join("; ");
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

/** Whether a riff says something of its own in a field that it would take from its parent. */
function isOther({ entry, parent }: Assessment["flat"], name: string): boolean {
  const [own, before] = [findFieldIn(entry, name)?.field, parent?.field(name)?.field];
  const textOf = (field: typeof own) => (field && !isNone(field) ? (field.value?.text ?? "") : "");
  return own !== undefined && textOf(own) !== textOf(before);
}
