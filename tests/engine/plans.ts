/** Short ways to write what the engine is handed. */

import type {
  AcidKind,
  Amount,
  Model,
  PourPlan,
  PrepModel,
  PrepPart,
  ServePlan,
  StepPlan,
  StockModel,
  SugarName,
  Uncertain,
  Unknown,
} from "../../server/engine/plan.ts";
import { findTechnique } from "../../server/engine/techniques.ts";

export const exactly = (value: number, u = 0): Uncertain => ({ value, u, why: "test" });
export const nobodyKnows = (because: string): Unknown => ({ because });

interface Label {
  readonly abv?: Uncertain | Unknown | number;
  readonly sugar?: Uncertain | Unknown | number;
  readonly sugarKind?: SugarName;
  readonly acid?: Uncertain | Unknown | number;
  readonly acidKind?: AcidKind;
  readonly titrated?: boolean;
  readonly salt?: Uncertain | Unknown | number;
  readonly solids?: Uncertain | Unknown | number;
  readonly fat?: Uncertain | Unknown | number;
  readonly caffeineMg?: Uncertain | Unknown | number;
  readonly density?: number;
  readonly per?: "100 ml" | "100 g";
  readonly solid?: boolean;
}

const quantity = (given: Uncertain | Unknown | number | undefined) => (typeof given === "object" ? given : exactly(given ?? 0));

export function stock(name: string, label: Label): StockModel {
  const per = label.per ?? "100 ml";
  return {
    type: "stock",
    name,
    solid: label.solid ?? false,
    abvPct: quantity(label.abv),
    sugars: label.sugar === undefined ? [] : [{ sugar: label.sugarKind ?? "sucrose", amount: quantity(label.sugar), per }],
    acids:
      label.acid === undefined
        ? []
        : [{ acid: label.acidKind ?? "citric", titrated: label.titrated ?? true, amount: quantity(label.acid), per }],
    salt: { amount: quantity(label.salt), per },
    solids: { amount: quantity(label.solids), per },
    ...(label.fat === undefined ? {} : { fat: { amount: quantity(label.fat), per } }),
    caffeineMg: { amount: quantity(label.caffeineMg), per },
    ...(label.density === undefined ? {} : { densityGPerMl: exactly(label.density) }),
  };
}

export const water = stock("water", {});
export const sugar = stock("white sugar", { sugar: 100, per: "100 g", solid: true });
export const spirit = stock("spirit", { abv: 40 });
export const lime = stock("lime juice", { sugar: 1.7, acid: 6, sugarKind: "glucose" });
export const syrup = stock("1:1 syrup", { sugar: 50, per: "100 g" });

export function prep(
  name: string,
  parts: readonly (readonly [Model, PrepPart["amount"], "discarded"?])[],
  more: Partial<PrepModel> = {},
): PrepModel {
  return {
    type: "prep",
    name,
    parts: parts.map(([of, amount, discarded]) => ({ of, amount, discarded: discarded !== undefined })),
    ...more,
  };
}
export const g = (value: number, u = 0): Amount => ({ g: exactly(value, u) });
export const ml = (value: number, u = 0): Amount => ({ ml: exactly(value, u) });

export const room = exactly(20);

export const pour = (of: Model, amount: number | PourPlan["amount"], more: Partial<PourPlan> = {}): PourPlan => ({
  of,
  amount: typeof amount === "number" ? ml(amount) : amount,
  stage: "vessel",
  temperatureC: room,
  ...more,
});

type StepInShort = Omit<Partial<StepPlan>, "seconds" | "waterShare" | "toC"> & {
  readonly [quantity in "seconds" | "waterShare" | "toC"]?: Uncertain | Unknown | number;
};

/** Plain numbers in it are exact. */
export function step(words: string, { seconds, waterShare, toC, ...more }: StepInShort = {}): StepPlan {
  return {
    technique: findTechnique(words)!,
    ...(seconds !== undefined && { seconds: quantity(seconds) as Uncertain }),
    ...(waterShare !== undefined && { waterShare: quantity(waterShare) }),
    ...(toC !== undefined && { toC: quantity(toC) }),
    ...more,
  };
}

export function plan(pours: readonly PourPlan[], method: string | readonly StepPlan[] = [], more: Partial<ServePlan> = {}): ServePlan {
  return {
    pours,
    steps: typeof method === "string" ? [step(method)] : method,
    ice: { kind: "cubed", temperatureC: exactly(0) },
    ambientC: room,
    serves: 1,
    ...more,
  };
}
