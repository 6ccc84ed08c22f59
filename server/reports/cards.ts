/** Service cards as data: what whoever makes a drink reads at arm's length, in both systems of units. */
import type { Entry } from "../../grammar/tree.ts";
import { type Assessment, assessDrink } from "../house/drink.ts";
import { linesOf } from "../house/entry.ts";
import type { House } from "../house/house.ts";
import { menuEntryOf } from "../house/menu.ts";
import type { FlatPour } from "../house/riff.ts";
import { perServe, serveOf } from "../house/serve.ts";
import { type Beside, besideOf, serviceSpecOf } from "../house/service-spec.ts";
import { type Settings, settingsOf } from "../house/settings.ts";
import { hasNoAlcohol, type Measure, showNumber, showStandardDrinks, showVolume, showWeight } from "../house/show.ts";
import { showStrengthBriefly, showVolumeBriefly } from "../house/show-brief.ts";
import { showPouredInOther, showPouredMl } from "../house/show-other-units.ts";
import { showPour, showPourAmount } from "../house/show-pour.ts";
import { besideAmount, showWaterBeside } from "../house/show-service.ts";
import { suitabilityOf } from "../house/suitability.ts";
import { showAllergens } from "../house/suitability-text.ts";
import { cautionsHolding } from "../rules/cautions/all.ts";
import { capacityOf, figureReport } from "./assess.ts";
import type { Card, CardPour, CardReport } from "./card-schema.ts";

/** Of drinks, and of what menus list, in the order given; each drink once. */
export function cardReport(house: House, entries: readonly Entry[], pathOf: (uri: string) => string): CardReport {
  const unknown: string[] = [];
  const drinks = new Set(entries.flatMap((entry) => (entry.kind === "menu" ? listed(house, entry, unknown) : [entry])));
  const named = [...drinks].filter((entry) => entry.name?.text);
  const [first] = named;
  return {
    country: (first && settingsOf(house, house.scopeOf(first)).country) ?? null,
    cards: named.map((entry) => cardOf(house, entry, pathOf)),
    unknown,
  };
}

function listed(house: House, menu: Entry, unknown: string[]): Entry[] {
  const scope = house.scopeOf(menu);
  return [...linesOf(menu, "menu")].flatMap(({ content }) => {
    const found = menuEntryOf(house, scope, content)?.entry;
    if (!found) unknown.push((content.priced?.name ?? content.whole)?.text ?? "");
    return found ?? [];
  });
}

function cardOf(house: House, entry: Entry, pathOf: (uri: string) => string): Card {
  const scope = house.scopeOf(entry);
  const settings = settingsOf(house, scope);
  const assessment = assessDrink(house, entry);
  const { flat, plan } = assessment;
  const stated = (name: string) => flat.statedField(name)?.field.value?.text ?? null;
  return {
    name: entry.name!.text,
    house: scope.houses[0]?.name?.text ?? null,
    file: pathOf(house.getDocumentOf(entry).uri),
    line: house.getLineOf(entry) + 1,
    serves: plan.serves,
    pours: flat.pours.map((pour) => pourOf(assessment, pour, settings)),
    service: serviceOf(house, assessment, settings),
    method: flat.field("method")?.field.items.map(({ text }) => text) ?? [],
    ice: stated("ice"),
    glass: stated("glass"),
    garnish: stated("garnish"),
    rim: flat.field("rim")?.field.value?.text ?? null,
    allergens: showAllergens(suitabilityOf(house, entry), settings.country),
    cautions: cautionsHolding(house, entry).map(({ docs, advice }) => ({ title: docs.title, advice })),
    strength: strengthOf(house, assessment),
    fill: fillOf(assessment, settings),
    ounce: `${showNumber(settings.ounceMl)} ml`,
  };
}

function pourOf(assessment: Assessment, pour: FlatPour, settings: Settings): CardPour {
  const { ingredient, quantity, modifiers, alternatives } = pour;
  const written = showPourAmount(pour);
  const sized = sizeOfPart(assessment, pour, settings);
  return {
    amount: sized?.amount ?? written,
    other: sized ? sized.other : (quantity && showPouredInOther(quantity, settings)) || null,
    name: ingredient.resolution.text,
    notes: [...(sized ? [written] : []), ...modifiers.map(({ text }) => text)],
    or: alternatives.map((one) => {
      if (one.quantity === quantity) return one.ingredient.resolution.text;
      const other = one.quantity && showPouredInOther(one.quantity, settings);
      return `${showPour(one, one.ingredient)}${other ? ` (${other})` : ""}`;
    }),
  };
}

/** What a part comes to, for nobody holds a jigger of parts; absent where that is unknown, and for what is in no parts. */
function sizeOfPart(assessment: Assessment, pour: FlatPour, settings: Settings): Pick<CardPour, "amount" | "other"> | undefined {
  const { part } = besideOf(assessment, pour);
  const known = part && ("ml" in part ? part.ml : part.g);
  if (!known || "because" in known) return undefined;
  if (!("ml" in part)) return { amount: showWeight(known.value), other: null };
  return { amount: showVolume(known.value, settings), other: showPouredMl(known.value, settings.units !== "oz", settings) };
}

function serviceOf(house: House, assessment: Assessment, settings: Settings): CardPour[] | null {
  const spec = serviceSpecOf(house, assessment);
  if (!spec) return null;
  const { batchMl, jiggerMl, beside, waterMl } = spec;
  const other = (ml: number) => showPouredMl(ml, settings.units !== "oz", settings);
  const batch = jiggerMl === null ? showVolumeBriefly(batchMl, settings) : showVolume(jiggerMl, settings);
  const row = { notes: [], or: [] };
  return [
    batchMl.value === null
      ? { ...row, amount: "", other: null, name: "batch, nobody knows how much" }
      : { ...row, amount: batch, other: other(jiggerMl ?? batchMl.value), name: "batch" },
    ...beside.map((one) => ({
      ...row,
      amount: besideAmount(one, assessment.plan.serves, settings),
      other: besideOther(assessment, one, settings),
      name: one.pour.ingredient.resolution.text,
      notes: one.pour.modifiers.map(({ text }) => text),
    })),
    ...(waterMl > 0 ? [{ ...row, amount: showWaterBeside(waterMl, settings), other: other(waterMl), name: "water" }] : []),
  ];
}

/** What a figure of the house is told in beside the house's own unit. */
function otherMeasure({ units, ounceMl }: Measure): Measure {
  return { units: units === "oz" ? "ml" : "oz", ounceMl };
}

/** Of one serve. */
function besideOther({ plan, pours }: Assessment, { pour, part }: Beside, settings: Settings): string | null {
  if (!pour.quantity) return null;
  if (!part && plan.serves === 1) return showPouredInOther(pour.quantity, settings) ?? null;
  const amount = plan.pours[pours.indexOf(pour)]?.amount;
  const isMeasured = part !== undefined || showPouredInOther(pour.quantity, settings) !== undefined;
  if (!amount || !("ml" in amount) || "because" in amount.ml || !isMeasured) return null;
  const isOunces = pour.quantity.unit?.unit.id === "oz" || (part !== undefined && settings.units === "oz");
  return showPouredMl(amount.ml.value / plan.serves, !isOunces, settings);
}

/** `25 % vol, 2.4 UK units`. */
function strengthOf(house: House, assessment: Assessment): string {
  const serve = serveOf(house, assessment);
  const strength = showStrengthBriefly(assessment.outcome.figure("strengthPct"));
  if (!strength) return "strength unknown";
  if (assessment.proportional || serve.ethanolG.value === null) return `${strength}, alcohol in one serve unknown`;
  return hasNoAlcohol(serve) ? "no alcohol" : `${strength}, ${showStandardDrinks(serve)}`;
}

function fillOf({ flat, outcome, plan, proportional }: Assessment, settings: Settings): Card["fill"] {
  const volume = figureReport(perServe(outcome.figure("afterVolumeMl"), plan.serves), proportional);
  const share = figureReport(outcome.figure("fillShare"), proportional);
  const capacityMl = capacityOf(plan.glass?.capacityMl, flat.field("glass")?.field.value?.text);
  const other = otherMeasure(settings);
  const words = (figure: Card["fill"]["share"], measure: Measure) => (figure.value === null ? "" : showVolumeBriefly(figure, measure));
  return {
    volumeMl: volume,
    capacityMl,
    washline: plan.glass?.washline ?? null,
    share,
    volume: words(volume, settings),
    otherVolume: words(volume, other),
    capacity: words(capacityMl, settings),
    otherCapacity: words(capacityMl, other),
    why: [...new Set([capacityMl, volume, share].flatMap(({ because = [] }) => because))],
  };
}
