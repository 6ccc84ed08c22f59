/**
 * What the engine is handed and what it hands back: pure numbers, no text of a spec.
 *
 * Units are in the names: grams, millilitres at 20 °C, °C, % vol, seconds, J/K.
 */

import type { Topic } from "./reasons.ts";
import type { Process, Technique } from "./technique.ts";

/**
 * A number with its standard uncertainty (one sigma). The object is its own source: the same object
 * in two places is one and the same figure, so what two drinks share is not counted twice.
 */
export interface Uncertain {
  readonly value: number;
  readonly u: number;
  /** Where the number or its spread comes from, for a reader: "as measured with the jigger", "larder: lime juice". */
  readonly why: string;
  /** Not stated by the house: taken from the larder or from the kind. */
  readonly assumed?: boolean;
}

/** A number nobody gave. Everything it touches is unknown too, with this reason. */
export interface Unknown {
  readonly because: string;
}

export type Known = Uncertain | Unknown;

export const sugarKinds = ["sucrose", "glucose", "fructose", "lactose", "maltose"] as const;
export type SugarKind = (typeof sugarKinds)[number];
/** As a label may name them: invert sugar is glucose and fructose in equal parts. */
export const sugarNames = [...sugarKinds, "invert"] as const;
export type SugarName = (typeof sugarNames)[number];
export const acidKinds = ["citric", "malic", "tartaric", "lactic", "acetic", "phosphoric", "ascorbic"] as const;
export type AcidKind = (typeof acidKinds)[number];

/** So much of something in 100 ml or in 100 g of the ingredient. */
export interface Content {
  readonly amount: Known;
  readonly per: "100 ml" | "100 g";
}

/** What something costs, in the house's currency, whatever that is. */
export interface Price {
  readonly amount: Known;
  /** For a gram or a millilitre of it, or for all that is poured of it together. */
  readonly per: "g" | "ml" | "all";
  /** Share of what is bought that never reaches a glass, 0…1: what does costs that much more. */
  readonly waste?: Uncertain;
}

/** An ingredient as bought, as far as its label, its house or the larder describe it. */
export interface StockModel {
  readonly type: "stock";
  readonly name: string;
  readonly solid: boolean;
  /** % vol at 20 °C. */
  readonly abvPct: Known;
  readonly sugars: readonly (Content & { readonly sugar: SugarName })[];
  /** `titrated`: the amount is titratable acidity expressed as that acid; otherwise it is the acid's own weight. */
  readonly acids: readonly (Content & { readonly acid: AcidKind; readonly titrated: boolean })[];
  readonly salt: Content;
  /** Protein, fibre, pectin, minerals, and the fat that `fat` does not name. */
  readonly solids: Content;
  /** Absent: none is named. */
  readonly fat?: Content;
  /** Milligrams. */
  readonly caffeineMg: Content;
  /** At 20 °C. Absent: computed from the composition. */
  readonly densityGPerMl?: Uncertain;
  /** Absent: nobody gave it. */
  readonly price?: Price;
}

export type Amount = { readonly ml: Known } | { readonly g: Known };

/** An ingredient made from others, before anything is known of its use. Also a drink poured in a drink. */
export interface PrepModel {
  readonly type: "prep";
  readonly name: string;
  readonly parts: readonly PrepPart[];
  /** Measured values override computed ones. */
  readonly measured?: { readonly brix?: Uncertain; readonly abvPct?: Uncertain; readonly densityGPerMl?: Uncertain };
  /** What is done to it once its parts are together, in that order. */
  readonly steps?: readonly PrepStep[];
  /** Its parts are shares of a whole: how much goes in is nowhere stated. */
  readonly shares?: boolean;
  /** How much the batch makes, where that is stated, whatever went in: the rest stayed behind, but was paid for. */
  readonly makes?: Amount;
}

export interface PrepPart {
  readonly of: Model;
  /** `upTo…`: as much as makes the whole prep that large (`to 100 g water`). */
  readonly amount: Amount | { readonly upToG: Known } | { readonly upToMl: Known };
  /** Strained out or only infused: brings no mass, but was paid for. */
  readonly discarded?: boolean;
  /** Strained out: what sort of thing it is decides what it holds back and what it gives. */
  readonly strained?: SolidSort;
  /** It stays in, but for what of it sets and is strained out: the curd of milk, the fat of butter. */
  readonly sets?: "curd" | "fat";
  /** Instead of the ingredient's own price. */
  readonly price?: Price;
}

/** What is strained out of a prep, by what it takes along. */
export type SolidSort = "fruit" | "vegetable" | "herb" | "spice" | "tea" | "coffee" | "fat" | "other";

/** A step of a prep's method that the table of processes knows. */
export interface PrepStep {
  readonly does: Process;
  /** For what boils down: to this much, or to this share of its volume. */
  readonly to?: Amount | { readonly share: Uncertain };
  /** Water that it adds, as a share of the volume before. */
  readonly waterShare?: Known;
}

export type Model = StockModel | PrepModel;

/** When a pour meets the ice: with the method's steps, or after them. */
export type Stage = "vessel" | "after";

export interface PourPlan {
  readonly of: Model;
  /** `topToMl`: that much liquid in the glass after dilution; `top`: up to the washline, less the ice. */
  readonly amount: Amount | { readonly topToMl: Known } | { readonly top: true };
  readonly stage: Stage;
  readonly temperatureC: Uncertain;
  /** Instead of the ingredient's own price, as for what is counted and priced by the piece. */
  readonly price?: Price;
}

/** What is paid for and not drunk: a garnish, a rim, a leaf, ice that is bought. */
export interface Beside {
  readonly of: Model;
  readonly amount: Amount;
  readonly price?: Price;
}

export interface IcePlan {
  readonly kind: "cubed" | "cracked" | "crushed" | "large cube" | "block";
  /** For all serves together. Absent: the technique's usual weight, for each serve. */
  readonly massG?: Uncertain;
  readonly temperatureC: Uncertain;
}

/** One step of a method that the table of techniques knows. */
export interface StepPlan {
  readonly technique: Technique;
  readonly seconds?: Uncertain;
  readonly ice?: IcePlan;
  /** Water that the step adds, as a share of the volume before (`pre-dilute 25 %` is 0.25), as warm as the room. */
  readonly waterShare?: Known;
  /** The temperature that the step brings what is in the vessel to, whatever it takes (`hold at -5 C`). */
  readonly toC?: Known;
}

export interface GlassPlan {
  readonly capacityMl: Uncertain;
  /** Share of the capacity that is poured, 0…1. */
  readonly washline: number;
}

export interface ServePlan {
  readonly pours: readonly PourPlan[];
  readonly steps: readonly StepPlan[];
  /** The house's ice where a step names none. */
  readonly ice: IcePlan;
  /** Fresh ice that each serve is strained over, grams; absent: none, or what the method leaves in the glass. */
  readonly serveIceG?: Uncertain;
  /** What sort of ice that is; absent: as the house's. */
  readonly serveIceKind?: IcePlan["kind"];
  readonly glass?: GlassPlan;
  /** Absent: no glass is named, and none warms or cools the drink. */
  readonly glassC?: Uncertain;
  /** The vessel's and the surroundings' temperature. */
  readonly ambientC: Uncertain;
  /** The pours are for so many serves. */
  readonly serves: number;
  /** For all serves together. */
  readonly beside?: readonly Beside[];
  /** What gives its taste and stays behind: it brings nothing that is counted, and an unknown part of its caffeine. */
  readonly infused?: readonly Model[];
}

/** A figure as it is shown: unknown has a null value and says why. */
export interface Figure {
  readonly value: number | null;
  /** One standard uncertainty, in the figure's own unit; null where the value is. */
  readonly plusMinus: number | null;
  readonly because?: readonly string[];
}

interface FigureRow {
  /** Made of what is in the vessel before its steps, of that after them, or of the whole drink. */
  readonly of: "vessel" | "steps" | "whole";
  /** What has to be known for it. */
  readonly needs: readonly Topic[];
  /** It grows with the drink, so that it means nothing where parts have no size. */
  readonly grows?: boolean;
}

const feeding: readonly Topic[] = ["ethanol", "sugar", "acid", "solids"];

const rows = {
  beforeVolumeMl: { of: "vessel", needs: ["volume"], grows: true },
  beforeMassG: { of: "vessel", needs: ["volume"], grows: true },
  beforeStrengthPct: { of: "vessel", needs: ["volume", "ethanol"] },
  waterMl: { of: "steps", needs: ["volume"], grows: true },
  dilutionShare: { of: "steps", needs: ["volume"] },
  vesselTemperatureC: { of: "steps", needs: ["volume", "heat"] },
  afterVolumeMl: { of: "whole", needs: ["volume"], grows: true },
  strengthPct: { of: "whole", needs: ["volume", "ethanol"] },
  sugarGPer100Ml: { of: "whole", needs: ["volume", "sugar"] },
  sweetnessGPer100Ml: { of: "whole", needs: ["volume", "sugar"] },
  acidGPer100Ml: { of: "whole", needs: ["volume", "acid"] },
  ratio: { of: "whole", needs: ["volume", "sugar", "acid"] },
  saltGPer100Ml: { of: "whole", needs: ["volume", "salt"] },
  temperatureC: { of: "whole", needs: ["volume", "heat"] },
  fillShare: { of: "whole", needs: ["volume"], grows: true },
  ethanolG: { of: "whole", needs: ["ethanol"], grows: true },
  caffeineMg: { of: "whole", needs: ["caffeine"], grows: true },
  densityGPerMl: { of: "whole", needs: ["volume"] },
  freezingC: { of: "whole", needs: ["volume", "ethanol", "sugar", "salt"] },
  costPerServe: { of: "whole", needs: [], grows: true }, // see `cost.ts`
  pricedPerServe: { of: "whole", needs: [], grows: true },
  energyKJ: { of: "whole", needs: feeding, grows: true },
  energyKcal: { of: "whole", needs: feeding, grows: true },
} satisfies Record<string, FigureRow>;
export type FigureName = keyof typeof rows;
export const figures: Readonly<Record<FigureName, FigureRow>> = rows;
export const figureNames = Object.keys(figures) as FigureName[];

/**
 * One drink, computed. Volumes and masses are for all serves together; `fillShare` and costs are per serve.
 * `pricedPerServe` is the cost of what has a price: known even where the whole cost is not.
 * `value` is cheap and always there; `figure` also propagates the uncertainty, on first use.
 */
export interface Outcome {
  value(name: FigureName): number | null;
  figure(name: FigureName): Figure;
  /**
   * The figure's derivative after each of its sources, those without uncertainty left out. Two drinks that
   * share sources differ by the root of the sum of ((derivative here − derivative there) × u)².
   */
  gradient(name: FigureName): ReadonlyMap<Uncertain, number>;
  /** How much of the pour at this place of the plan went in, `top` worked out; null where it is unknown. */
  poured(index: number): { readonly g: number; readonly ml: number } | null;
  /** Melt model's plain parts, for hovers: the ice that went in, what of it melted, its clinging water. */
  readonly melt: { readonly iceG: number; readonly meltG: number; readonly clingingG: number } | null;
  /** Each contact with ice, in the order of the steps; the values mean something where `waterMl` is known. */
  readonly contacts: readonly Contact[];
  /** Water that one serve takes up from the ice in its glass in so many minutes; null without ice there, and where the drink is unknown. */
  standing(minutes: number): { readonly lowMl: number; readonly highMl: number } | null;
}

/** One contact with ice, taken apart; all serves together. */
export interface Contact {
  readonly step: StepPlan;
  readonly iceG: number;
  readonly meltG: number;
  readonly clingingG: number;
  /** How much of the ice and of the vessel took part, 0…1: short contacts have less of both. */
  readonly share: number;
  /** Of the way from 0 °C to the freezing point, as far as the technique goes in its time. */
  readonly alpha: number;
  /** Before, and where what is in the vessel freezes after it, and what it came to; °C. */
  readonly beforeC: number;
  readonly freezingC: number;
  readonly afterC: number;
  /** J: what the drink and the vessel gave up is what the melting took, and the warming of the rest of the ice (or its cooling gave). */
  readonly fromDrinkJ: number;
  readonly fromVesselJ: number;
  readonly meltingJ: number;
  readonly restOfIceJ: number;
}

export const prepFigureNames = [
  "massG",
  "volumeMl",
  "densityGPerMl",
  "brix",
  "strengthPct",
  "acidGPer100G",
  "sugarGPer100Ml",
  "acidGPer100Ml",
  "saltGPer100G",
  /** Sugar to one of water, by weight: what a syrup is called by. */
  "sugarToWater",
  /** Everything dissolved or suspended, as a refractometer sees it: sugars, acids, salt, other solids. */
  "solubleGPer100G",
  "massInG",
  "boiledOffG",
  /** Held back by what is strained out, with what set, and what else a stated yield leaves behind. */
  "leftBehindG",
] as const;
export type PrepFigureName = (typeof prepFigureNames)[number];

export interface PrepOutcome {
  value(name: PrepFigureName): number | null;
  figure(name: PrepFigureName): Figure;
}
