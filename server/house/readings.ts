/** What was read on a prep with an instrument, on which day, and where it speaks against the pours. */
import type { Entry } from "../../grammar/tree.ts";
import type { Figure, PrepFigureName, PrepModel, PrepOutcome, Uncertain } from "../engine/plan.ts";
import { type FieldAt, findFieldIn } from "./entry.ts";
import { isWrong, readDate, readPercent, readQuantity, spreadOf } from "./values.ts";

const instruments = ["brix", "density", "abv", "ph"] as const;

export interface Reading {
  readonly field: (typeof instruments)[number];
  readonly at: FieldAt;
  readonly value: Uncertain;
}

/** In the order of the table above; a reading that does not read is none. */
export function readingsIn(entry: Entry): Reading[] {
  return instruments.flatMap((field): Reading[] => {
    const at = findFieldIn(entry, field);
    const value = at && readAt(field, at);
    return value ? [{ field, at, value }] : [];
  });
}

/** The day they were read, as `2026-03-01`; absent where none is given. */
export function readOn(entry: Entry): string | undefined {
  const at = findFieldIn(entry, "measured");
  const read = at && readDate(at.field);
  return read && !isWrong(read) ? read.value : undefined;
}

/** How well a bar reads: half a degree Brix, half a per cent of a density. Practice, no source. */
function readAt(field: Reading["field"], { field: line }: FieldAt): Uncertain | undefined {
  if (field === "abv") {
    const read = readPercent(line, "20 %", "as measured");
    return isWrong(read) ? undefined : read.value;
  }
  const read = readQuantity(line, field === "brix" ? "66" : field === "ph" ? "2.6" : "1.04 g/ml");
  if (isWrong(read)) return undefined;
  return spreadOf(read.value, (value) => (field === "brix" ? 0.5 : field === "ph" ? 0.1 : 0.005 * value), "as measured");
}

/** The readings that override what is computed. A pH overrides nothing: it does not follow from the acid alone. */
export function measuredIn(entry: Entry): Pick<PrepModel, "measured"> {
  const of = (field: Reading["field"]) => readingsIn(entry).find((reading) => reading.field === field)?.value;
  const [brix, densityGPerMl, abvPct] = [of("brix"), of("density"), of("abv")];
  if (!brix && !densityGPerMl && !abvPct) return {};
  return { measured: { ...(brix && { brix }), ...(densityGPerMl && { densityGPerMl }), ...(abvPct && { abvPct }) } };
}

/** The computed figure that a reading is held against. */
const heldAgainst = { brix: "brix", density: "densityGPerMl", abv: "strengthPct" } as const satisfies Partial<
  Record<Reading["field"], PrepFigureName>
>;

/**
 * What the pours make of a reading, where it lies outside twice the uncertainty of both together; absent
 * where they agree, or nothing is computed. A refractometer sees acid, salt and other solids too, so a °Brix
 * may lie anywhere from the sugar to all that is dissolved.
 */
export function contradicted({ field, value }: Reading, computed: PrepOutcome): Figure | undefined {
  if (field === "ph") return undefined;
  const figure = computed.figure(heldAgainst[field]);
  if (figure.value === null) return undefined;
  const most = field === "brix" ? (computed.value("solubleGPer100G") ?? figure.value) : figure.value;
  const off = Math.max(figure.value - value.value, value.value - Math.max(most, figure.value));
  return off > 2 * Math.hypot(value.u, figure.plusMinus ?? 0) ? figure : undefined;
}
