/** A batch as data: amounts, what stands apart, what it comes to, and the words for the kitchen wall. */
import type { Batch } from "../house/batch.ts";
import type { Measured } from "../house/batch-measure.ts";
import type { House } from "../house/house.ts";
import { cautionsOfBottle, coldOf, labelOf, serviceOf, workOf } from "../house/show-batch.ts";
import { showKeeping } from "../house/suitability-text.ts";
import { cautionsOf } from "../rules/cautions/all.ts";
import { figureReport, rounded } from "./assess.ts";
import type { BatchReport } from "./batch-schema.ts";

export function batchReport(house: House, batch: Batch, pathOf: (uri: string) => string): BatchReport {
  const { assessment, made, serves, pours, water, apart, bottles, cold, settings, served, useBy, allergens } = batch;
  const { entry } = assessment.flat;
  const { count } = bottles;
  return {
    name: entry.name?.text ?? "",
    house: house.scopeOf(entry).houses[0]?.name?.text ?? null,
    file: pathOf(house.getDocumentOf(entry).uri),
    line: house.getLineOf(entry) + 1,
    made,
    serves: rounded(serves),
    pours: pours.map(({ pour, exact, unit, measured, weighed, doubt }) => ({
      name: pour.ingredient.resolution.text,
      exact: rounded(exact),
      unit,
      measured: measuredReport(measured),
      weighed: weighed ? measuredReport(weighed) : null,
      doubt: doubt ?? null,
    })),
    water: {
      exactMl: rounded(water.exactMl),
      plusMinusMl: rounded(water.plusMinus),
      measured: water.measured ? measuredReport(water.measured) : null,
      why: water.why,
    },
    apart: apart.map(({ name, why }) => ({ name, why })),
    volumeMl: figureReport(batch.volumeMl, false),
    strengthPct: figureReport(batch.strengthPct, false),
    serveMl: figureReport(batch.serveMl, false),
    jiggerMl: batch.jiggerMl,
    bottles: { ...bottles, count },
    freezingC: figureReport(cold.freezingC, false),
    freezer: { atC: settings.freezerC.value, iceShare: figureReport(cold.iceShare, false), says: coldOf(batch) },
    served: served.map(({ figure, own, batch: now }) => ({ figure, own: rounded(own), batch: rounded(now) })),
    useBy: { date: useBy.date ?? null, by: useBy.keeping ? showKeeping(useBy.keeping) : null, notStated: [...useBy.notStated] },
    allergens: {
      contains: allergens.contains.map(({ allergen, names, assumed }) => ({ allergen, names: [...names], assumed })),
      notStated: [...allergens.notStated],
    },
    work: workOf(batch),
    service: serviceOf(house, batch),
    label: labelOf(batch),
    cautions: [...cautionsOf(house, entry), ...cautionsOfBottle(house, batch)],
  };
}

function measuredReport({ text, way, amount, off }: Measured): BatchReport["pours"][number]["measured"] {
  return { text, way, amount: rounded(amount), off: rounded(off) };
}
