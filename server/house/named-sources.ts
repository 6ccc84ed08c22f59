/** What each uncertain number of a drink is, in words: "strength of aged rum", "how much lemon juice is poured". */
import type { Known, Model, Uncertain } from "../engine/plan.ts";
import type { Assessment } from "./drink.ts";

export interface NamedSource {
  /** Whose it is: an ingredient, the ice, the glass. */
  readonly of: string;
  /** Complete, with its owner: "strength of aged rum". */
  readonly what: string;
  /** Without its owner: "strength". */
  readonly short: string;
  /** As people read it; empty for a plain number. */
  readonly unit: string;
}

/** Every number that a drink's figures are made from and that is some ingredient's, the house's, the ice's or the glass's. */
export function namedSources({ plan, pours }: Assessment): ReadonlyMap<Uncertain, NamedSource> {
  const found = new Map<Uncertain, NamedSource>();
  const add: Add = (known, of, short, unit, what = `${short} of ${of}`) => {
    if (known && !("because" in known) && !found.has(known)) found.set(known, { of, short, unit, what });
  };
  for (const [index, pour] of plan.pours.entries()) {
    const name = pours[index]?.ingredient.resolution.text ?? pour.of.name;
    for (const [key, known] of Object.entries(pour.amount)) {
      if (known !== true) add(known, name, "amount", unitOfAmount(key), `how much ${name} is poured`);
    }
    add(pour.temperatureC, name, "temperature", "°C");
    nameModel(pour.of, add, new Set());
  }
  add(plan.ambientC, "the back bar", "temperature", "°C");
  for (const ice of [plan.ice, ...plan.steps.map((step) => step.ice)]) {
    add(ice?.temperatureC, "the ice", "temperature", "°C");
    add(ice?.massG, "the ice", "weight", "g");
  }
  for (const { technique, seconds, waterShare, toC } of plan.steps) {
    const step = technique.words[0]!;
    add(seconds, step, "time", "s", `how long it takes to ${step}`);
    add(waterShare, step, "water", "", `how much water is added (${step})`);
    add(toC, step, "temperature", "°C", `the temperature it is brought to (${step})`);
  }
  add(plan.serveIceG, "the ice in the glass", "weight", "g");
  add(plan.glassC, "the glass", "temperature", "°C");
  add(plan.glass?.capacityMl, "the glass", "size", "ml");
  return found;
}

type Add = (known: Known | undefined, of: string, short: string, unit: string, what?: string) => void;

function nameModel(model: Model, add: Add, seen: Set<Model>): void {
  if (seen.has(model)) return;
  seen.add(model);
  const { name } = model;
  if (model.type === "prep") {
    for (const { of, amount } of model.parts) {
      for (const [key, known] of Object.entries(amount))
        add(known, of.name, "amount", unitOfAmount(key), `how much ${of.name} is in ${name}`);
      nameModel(of, add, seen);
    }
    add(model.measured?.abvPct, name, "strength", "% vol");
    add(model.measured?.brix, name, "sugar", "°Bx");
    add(model.measured?.densityGPerMl, name, "density", "g/ml");
    return;
  }
  add(model.abvPct, name, "strength", "% vol");
  for (const { amount, per, sugar } of model.sugars) add(amount, name, model.sugars.length > 1 ? sugar : "sugar", `g/${per}`);
  for (const { amount, per, acid } of model.acids) add(amount, name, model.acids.length > 1 ? `${acid} acid` : "acid", `g/${per}`);
  add(model.salt.amount, name, "salt", `g/${model.salt.per}`);
  add(model.solids.amount, name, "solids", `g/${model.solids.per}`);
  add(model.fat?.amount, name, "fat", `g/${model.fat?.per}`);
  add(model.caffeineMg.amount, name, "caffeine", `mg/${model.caffeineMg.per}`);
  add(model.densityGPerMl, name, "density", "g/ml");
}

function unitOfAmount(key: string): string {
  return /g$/i.test(key) ? "g" : "ml";
}
