/** Something that is to be poured, kept so cold that it does not pour. */
import type { Entry } from "../../grammar/tree.ts";
import { inTheCold } from "../engine/cold.ts";
import type { Model, Uncertain } from "../engine/plan.ts";
import { isCyclic } from "../house/cycles.ts";
import type { Place } from "../house/document.ts";
import { assessDrink } from "../house/drink.ts";
import { findFieldIn } from "../house/entry.ts";
import { batchOfDrink, isMeantToPour, isSolid } from "../house/frozen.ts";
import type { House } from "../house/house.ts";
import { has, temperatureIn } from "../house/modifiers.ts";
import { settingsOf } from "../house/settings.ts";
import { showShare, showTemperature } from "../house/show.ts";
import { stockFacts } from "../house/stock.ts";
import { placeOf, valuePlace } from "./places.ts";
import type { Found, Rule } from "./rule.ts";
import { shaken, specimen } from "./specimen.ts";

interface Kept {
  readonly name: string;
  readonly model: Model;
  readonly temperatureC: Uncertain;
  readonly place: Place;
}

export const freezesInFreezer: Rule = {
  code: "freezes-in-freezer",
  severity: "information",
  entries: ["drink", "prep", "stock"],
  docs: {
    title: "Frozen, and meant to pour",
    why: "A spirit from the freezer is cold and thick; what holds half as much alcohol is a block of slush there. Looked at are alcohol and syrups that are `stored: freezer`, poured `, frozen` or at a stated temperature, and drinks that a step holds at one. A juice or a fruit that is frozen is meant to be hard, and so is what goes into a blender.",
    bad: specimen(["50 ml fino sherry, frozen", "15 ml sweet vermouth"], { ...shaken, method: "stir 20 s; strain" }),
    good: specimen(["50 ml fino sherry, chilled", "15 ml sweet vermouth"], { ...shaken, method: "stir 20 s; strain" }),
  },
  *check(house, entry) {
    if (isCyclic(house, entry)) return;
    for (const { name, model, temperatureC, place } of entry.kind === "drink" ? keptIn(house, entry) : keptAs(house, entry)) {
      if (!isMeantToPour(model)) continue;
      const cold = inTheCold(model, temperatureC);
      if (!isSolid(cold)) continue;
      yield {
        place,
        what: `At ${showTemperature(temperatureC.value)} about ${showShare(cold.iceShare.value!)} of ${name} is ice: it does not pour.`,
        todo: `It starts to freeze at ${showTemperature(cold.freezingC)}. Keep it in the fridge, or make it stronger.`,
      } satisfies Found;
    }
  },
};

/** A stock or a prep that stands in the freezer. */
function keptAs(house: House, entry: Entry): Kept[] {
  const stored = findFieldIn(entry, "stored");
  if (stored?.field.value?.text.toLowerCase() !== "freezer") return [];
  const model = entry.kind === "prep" ? house.modelOf(entry) : stockFacts(house, entry).model;
  return [{ name: "it", model, temperatureC: settingsOf(house, house.scopeOf(entry)).freezerC, place: valuePlace(stored) }];
}

/** The drink's own pours that say how cold they are, and the drink itself where a step holds it. */
function keptIn(house: House, entry: Entry): Kept[] {
  const assessment = assessDrink(house, entry);
  const { flat, plan, pours, steps } = assessment;
  if (steps.some(({ technique }) => technique?.chill?.drunk)) return [];
  const settings = settingsOf(house, house.scopeOf(entry));
  const poured = pours.flatMap((pour, index): Kept[] => {
    const { text, start, end } = pour.ingredient.resolution;
    const stated = temperatureIn(pour.modifiers);
    const temperatureC = stated ?? (has(pour.modifiers, "frozen") ? settings.freezerC : undefined);
    if (!temperatureC || pour.entry !== entry) return [];
    return [{ name: `the ${text}`, model: plan.pours[index]!.of, temperatureC, place: placeOf(pour.line, { start, end }) }];
  });
  const method = flat.field("method");
  const holding = steps.find(({ technique, temperatureC }) => technique?.id === "hold" && temperatureC);
  const batch = holding && method?.entry === entry ? batchOfDrink(assessment) : undefined;
  if (!batch) return poured;
  return [...poured, { name: "it", model: batch, temperatureC: holding!.temperatureC!, place: placeOf(method!.line, holding!.item) }];
}
