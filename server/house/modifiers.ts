/** The words behind a pour's name that mean something. Anything else is a note. One row each. */
import { findUnit } from "../../grammar/units.ts";
import type { Uncertain } from "../engine/plan.ts";
import { slipsBetween } from "./nearest.ts";
import type { ModifierText } from "./scope.ts";

export interface Modifier {
  readonly word: string;
  readonly doc: string;
}

export const modifiers: readonly Modifier[] = [
  { word: "frozen", doc: "At the freezer's temperature: it melts less ice." },
  { word: "chilled", doc: "At the fridge's temperature." },
  { word: "hot", doc: "At the house's hot temperature." },
  { word: "optional", doc: "Figures are without it, allergens and diets with it." },
  { word: "muddled", doc: "Pressed in the vessel: what it holds counts in the drink." },
  { word: "floated", doc: "Poured last, on top; no ice melts for it." },
  { word: "after", doc: "Poured after the ice; no ice melts for it in the tin." },
  { word: "to rim", doc: "On the rim: not in the drink." },
  { word: "discarded", doc: "Coats the glass and is poured away." },
  { word: "juiced", doc: "Only its juice goes in, by the yield of the stock." },
  { word: "strained out", doc: "Gives its taste and stays behind." },
  { word: "batched", doc: "Belongs to the drink's pre-mixed bottle." },
  { word: "to taste", doc: "An amount nobody knows beforehand: what it touches is unknown." },
];

const words = new Set(modifiers.map((modifier) => modifier.word));

/** Whether the pour carries a modifier. */
export function has(texts: readonly ModifierText[], word: string): boolean {
  return texts.some(({ text }) => text.toLowerCase() === word);
}

/** `at -18 C`, `at 150 F` as °C; absent where the text is something else. */
export function temperatureIn(texts: readonly ModifierText[]): Uncertain | undefined {
  for (const { text } of texts) {
    const match = /^at\s+([-−]?\d+(?:\.\d+)?)\s*(°?[CF])$/i.exec(text);
    if (!match) continue;
    const degrees = Number(match[1]!.replace("−", "-"));
    const unit = findUnit(match[2]!)?.id;
    const why = "the temperature stated on the pour";
    return unit === "F" ? { value: ((degrees - 32) * 5) / 9, u: 1, why } : { value: degrees, u: 1, why };
  }
  return undefined;
}

/** The modifier that a note is one slip away from; absent for a modifier itself and for any other note. */
export function nearModifier(text: string): string | undefined {
  const note = text.toLowerCase();
  if (words.has(note) || note.length < 4) return undefined;
  return modifiers.find(({ word }) => word.length > 3 && slipsBetween(word, note) === 1)?.word;
}
