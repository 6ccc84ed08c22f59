/** A drink in layers, the lowest first: what is layered, or floated on the rest of it. */
import { assess } from "../engine/assess.ts";
import type { Amount, Outcome } from "../engine/plan.ts";
import type { Assessment } from "./drink.ts";
import { has } from "./modifiers.ts";
import type { FlatPour } from "./riff.ts";

export interface Layer {
  readonly name: string;
  /** The pour that is laid on what is below; absent where several are mixed first. */
  readonly pour?: FlatPour;
  /** Its figures by itself; how much of it there is does not matter to them. */
  readonly outcome: Outcome;
}

/** Fewer than two where nothing is layered. Densities are at 20 °C, however cold each is poured. */
export function layersOf({ plan, pours, steps }: Assessment): readonly Layer[] {
  const floated = pours.filter(({ modifiers }) => has(modifiers, "floated"));
  const layering = steps.findIndex(({ technique }) => technique?.id === "layer");
  if (layering < 0 && floated.length === 0) return [];
  const others = pours.filter((pour) => !floated.includes(pour));
  const mixedFirst = layering < 0 || steps.slice(0, layering).some(({ technique }) => technique?.chill);
  const mixed = mixedFirst ? others.filter(({ stage }) => layering < 0 || stage === "vessel") : [];
  const laid = [...others.filter((pour) => !mixed.includes(pour)), ...floated];
  const planned = (pour: FlatPour) => plan.pours[pours.indexOf(pour)]!;
  return [
    ...(mixed.length > 0
      ? [{ name: mixed.length > 1 ? "the drink" : nameOf(mixed[0]!), outcome: assess({ ...plan, pours: mixed.map(planned) }) }]
      : []),
    ...laid.map((pour) => ({
      name: nameOf(pour),
      pour,
      outcome: assess({ ...plan, steps: [], pours: [{ ...planned(pour), amount: some }] }),
    })),
  ];
}

const some: Amount = { ml: { value: 30, u: 0, why: "some of it" } };

/** Beaten with air it weighs what nobody can tell. */
export function isAerated({ name, pour }: Layer): boolean {
  const texts = [name, ...(pour?.modifiers ?? []).map(({ text }) => text)];
  return texts.some((text) => /\b(?:whipped|frothed|foam|foamed|aerated)\b/i.test(text));
}

function nameOf({ ingredient }: FlatPour): string {
  return ingredient.resolution.text;
}
