/** Every caution, the gravest first. Adding one is a line here. */
import type { Entry } from "../../../grammar/tree.ts";
import { isCyclic } from "../../house/cycles.ts";
import type { House } from "../../house/house.ts";
import { settingsOf } from "../../house/settings.ts";
import { caffeineWithAlcohol } from "./caffeine-with-alcohol.ts";
import { type Caution, isAllowed } from "./caution.ts";
import { cinchonaBark } from "./cinchona-bark.ts";
import { coumarin } from "./coumarin.ts";
import { cryogenic } from "./cryogenic.ts";
import { flaming } from "./flaming.ts";
import { grapefruit } from "./grapefruit.ts";
import { hazard } from "./hazard.ts";
import { largeServe } from "./large-serve.ts";
import { liquorice } from "./liquorice.ts";
import { lowAcidInfusion } from "./low-acid-infusion.ts";
import { pressure } from "./pressure.ts";
import { quinine } from "./quinine.ts";
import { rawEgg } from "./raw-egg.ts";
import { stoneFruitKernels } from "./stone-fruit-kernels.ts";
import { strongAcid } from "./strong-acid.ts";
import { tobacco } from "./tobacco.ts";
import { unnamedAllergens } from "./unnamed-allergens.ts";
import { unpasteurised } from "./unpasteurised.ts";

export const cautions: readonly Caution[] = [
  // what can harm at once
  cryogenic,
  hazard,
  lowAcidInfusion,
  stoneFruitKernels,
  tobacco,
  cinchonaBark,
  // what the guest should know
  unnamedAllergens,
  rawEgg,
  unpasteurised,
  caffeineWithAlcohol,
  largeServe,
  quinine,
  grapefruit,
  liquorice,
  coumarin,
  // what whoever makes it should know
  flaming,
  pressure,
  strongAcid,
];

/** The cautions that hold for a drink or a prep, a line each, the gravest first; none that its house or a comment lets stand. */
export function cautionsOf(house: House, entry: Entry): readonly string[] {
  return cautionsHolding(house, entry).map(lineOf);
}

/** The same as they are written in full. */
export function cautionsHolding(house: House, entry: Entry): readonly Caution[] {
  return house.recall(entry, "cautions", () => {
    if (isCyclic(house, entry)) return [];
    const { severities } = settingsOf(house, house.scopeOf(entry));
    return cautions.filter((caution) => severities.get(caution.code) !== "off" && holds(house, entry, caution));
  });
}

function holds(house: House, entry: Entry, { code, entries, causes }: Caution): boolean {
  if (!entries.includes(entry.kind)) return false;
  for (const cause of causes(house, entry)) if (!isAllowed(cause.entry, code, cause.place.line)) return true;
  return false;
}

/** `Raw egg: tell the guest, and check your local code.` */
export function lineOf({ docs, advice }: Caution): string {
  return `${docs.title}: ${advice.slice(0, 1).toLowerCase()}${advice.slice(1)}`;
}
