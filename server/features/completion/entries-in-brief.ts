/** What is declared, in one line: for whoever chooses among many. */
import type { Entry } from "../../../grammar/tree.ts";
import type { PrepOutcome } from "../../engine/plan.ts";
import { assessPrep } from "../../engine/prep.ts";
import { assessDrink } from "../../house/drink.ts";
import { findFieldIn, linesOf } from "../../house/entry.ts";
import { windowFields } from "../../house/family.ts";
import { findGlass } from "../../house/glass.ts";
import type { House } from "../../house/house.ts";
import { iceFacts } from "../../house/method.ts";
import { assessPrepEntry } from "../../house/prep.ts";
import { settingsOf } from "../../house/settings.ts";
import { showList, showTemperature, showValue, showVolume, showWeight } from "../../house/show.ts";
import { stockFacts } from "../../house/stock.ts";
import { quantityText } from "../../house/written.ts";

/** `spirit, 43 % vol, 26.50 per 700 ml`; a drink's strength and what it pours; plain text. */
export function inBrief(house: House, entry: Entry): string {
  const facts = byKind[entry.kind]?.(house, entry) ?? [];
  const status = findFieldIn(entry, "status")?.field.value?.text.toLowerCase();
  const isOut = status === "out" || status === "retired" || status === "draft";
  return [isOut && status, ...facts].filter(Boolean).join(", ");
}

type Facts = (house: House, entry: Entry) => readonly (string | undefined | false)[];

const byKind: Partial<Record<Entry["kind"], Facts>> = {
  stock: stockFactsInBrief,
  prep: (house, entry) => ["made here", ...composition(assessPrepEntry(house, entry)), keeps(entry)],
  drink: drinkFacts,
  glass: (house, entry) => {
    const glass = findGlass(house, entry);
    const stored = findFieldIn(entry, "stored")?.field.value?.text;
    const measure = settingsOf(house, house.scopeOf(entry));
    return [
      glass && `holds ${showVolume(glass.plan.capacityMl.value, measure)}`,
      stored && (stored === "hot" ? "kept hot" : `from the ${stored}`),
    ];
  },
  ice: (house, entry) => {
    const facts = entry.name && iceFacts(house, house.scopeOf(entry), entry.name.text);
    return facts
      ? [facts.plan.kind, showTemperature(facts.plan.temperatureC.value), facts.pieceG && `${showWeight(facts.pieceG.value)} a piece`]
      : [];
  },
  family: (_house, entry) => {
    return windowFields.flatMap(({ field }) => {
      const text = findFieldIn(entry, field)?.field.value?.text;
      return text && text !== "none" ? [`${field} ${text}`] : [];
    });
  },
  menu: (_house, entry) => [`${[...linesOf(entry, "menu")].length} drinks`],
};

function stockFactsInBrief(house: House, entry: Entry): ReturnType<Facts> {
  const facts = stockFacts(house, entry);
  const { model, kind } = facts;
  const whole = { type: "prep", name: model.name, parts: [{ of: model, amount: { g: { value: 100, u: 0, why: "" } } }] } as const;
  return [kind, ...(model.solid ? [] : composition(assessPrep(whole))), facts.field("price")?.field.value?.text, keeps(entry)];
}

/** Less of it is not worth a word. */
const least = { strengthPct: 0.05, sugarGPer100Ml: 0.5, acidGPer100Ml: 0.05 };

/** Strength, sugar and acid, where they are known and there is some. */
function composition(outcome: PrepOutcome): string[] {
  const rows = [
    ["strengthPct", "% vol", 1],
    ["sugarGPer100Ml", "g/100 ml sugar", 1],
    ["acidGPer100Ml", "g/100 ml acid", 2],
  ] as const;
  return rows.flatMap(([name, unit, finest]) => {
    const figure = outcome.figure(name);
    return figure.value !== null && figure.value >= least[name] ? [`${showValue(figure, finest)} ${unit}`] : [];
  });
}

function keeps(entry: Entry): string | undefined {
  const text = findFieldIn(entry, "keeps")?.field.value?.text;
  return text && text.toLowerCase() !== "none" ? `keeps ${text}` : undefined;
}

function drinkFacts(house: House, entry: Entry): ReturnType<Facts> {
  const { flat, outcome } = assessDrink(house, entry);
  const strength = outcome.figure("strengthPct");
  const pours = flat.pours.map(({ lead, quantity, ingredient }) =>
    [lead?.text, quantity && quantityText(quantity), ingredient.resolution.text].filter(Boolean).join(" "),
  );
  return [strength.value !== null && `${showValue(strength, 1)} % vol`, pours.length > 0 && showList(pours, 8)];
}
