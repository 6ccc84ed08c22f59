/** What the steps of a drink's method are to the engine: their ice, their water, their temperatures, and the ice in the glass. */
import type { IcePlan, Known, PourPlan, StepPlan, Uncertain } from "../engine/plan.ts";
import type { Technique } from "../engine/technique.ts";
import type { Glass } from "./glass.ts";
import type { House } from "./house.ts";
import { iceFacts, noIce, type Step, wellIceC } from "./method.ts";
import { noTemperature, noWater } from "./reasons.ts";
import type { FlatDrink } from "./riff.ts";
import type { Scope } from "./scope.ts";
import type { Settings } from "./settings.ts";
import { times } from "./values.ts";

interface Chilling {
  readonly settings: Settings;
  /** The ice where a step names none. */
  readonly ice: IcePlan;
  readonly glass: Glass | undefined;
  readonly serves: number;
  /** Something hot is in the vessel. */
  readonly hot: boolean;
}

/** Stirred or put together: what a hot drink is without any ice, where what is shaken hot is shaken to be cold. */
const iceless: ReadonlySet<string> = new Set(["build", "stir"]);

/** From here on, °C, a pour is hot. */
const hotFromC = 45;

export function isHot({ stage, temperatureC }: PourPlan): boolean {
  return stage === "vessel" && temperatureC.value >= hotFromC;
}

/**
 * The steps that the table of techniques knows. What is done to the glass is `glassTemperature`'s. What is hot
 * and only built or stirred, with no word of ice, meets none.
 */
export function stepPlans(steps: readonly Step[], chilling: Chilling): StepPlan[] {
  const staysHot =
    chilling.hot && steps.every(({ technique, ice, over }) => !ice && !over && (!technique?.chill || iceless.has(technique.id)));
  return steps.flatMap((step): StepPlan[] => {
    if (!step.technique || step.toGlass) return [];
    const plan = stepPlan(step, step.technique, chilling);
    return [staysHot && plan.technique.chill ? { ...plan, ice: noIce.plan } : plan];
  });
}

function stepPlan(step: Step, technique: Technique, chilling: Chilling): StepPlan {
  const ice = technique.chill && iceOf(step, technique, chilling);
  return {
    technique,
    ...(step.seconds && { seconds: step.seconds }),
    ...(ice && { ice }),
    ...(technique.dilutes && { waterShare: step.share ?? { because: noWater(technique.words[0]!) } }),
    ...(technique.brings && { toC: temperatureOf(step, technique, chilling.settings) }),
  };
}

function temperatureOf(step: Step, technique: Technique, settings: Settings): Known {
  if (step.temperatureC) return step.temperatureC;
  if (technique.brings === "fridge") return settings.fridgeC;
  return technique.brings === "freezer" ? settings.freezerC : { because: noTemperature(technique.words[0]!) };
}

/** A glass that is built in takes its own ice: a stated weight is each glass's, and so is what fills it. */
function iceOf(step: Step, technique: Technique, { ice, glass, serves }: Chilling): IcePlan | undefined {
  if (!technique.iceInGlass) return step.ice?.plan;
  const each = weightInGlass(step, ice, glass);
  return each && { ...(step.ice?.plan ?? ice), massG: serves === 1 ? each : times(each, serves) };
}

/** The fresh ice that each serve is strained over; absent where there is none. */
export function serveIceOf(steps: readonly Step[], { ice, glass }: Chilling): { kind: IcePlan["kind"]; massG: Uncertain } | undefined {
  const step = steps.findLast((one) => one.over && !one.technique?.chill);
  return step && { kind: (step.ice?.plan ?? ice).kind, massG: weightInGlass(step, ice, glass) ?? usualIceG };
}

/** A stated weight, one large piece, or the glass half filled. */
function weightInGlass(step: Step, houseIce: IcePlan, glass: Glass | undefined): Uncertain | undefined {
  const plan = step.ice?.plan ?? houseIce;
  if (plan.massG) return plan.massG;
  if ((plan.kind === "large cube" || plan.kind === "block") && step.ice?.pieceG) return step.ice.pieceG;
  if (!glass) return undefined;
  const grams = 0.45 * glass.plan.capacityMl.value;
  return { value: grams, u: 0.2 * grams, why: "a glass filled with ice holds about half its volume of it, practice" };
}
const usualIceG: Uncertain = { value: 120, u: 40, why: "the ice in a glass whose size is not stated, practice" };

export function defaultIce(house: House, scope: Scope, flat: FlatDrink, settings: Settings): IcePlan {
  const named = flat.field("ice")?.field.value?.text;
  const facts = (named && iceFacts(house, scope, named)) || iceFacts(house, scope, settings.ice);
  return facts?.plan ?? { kind: "cubed", temperatureC: wellIceC };
}
