/**
 * What the engine is handed and what it hands back: pure numbers, no text of a spec.
 *
 * Units are in the names: grams, millilitres at 20 °C, °C, % vol, seconds, J/K.
 */

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

export const sugarKinds = ["sucrose", "glucose", "fructose", "lactose", "maltose", "invert"] as const;
export type SugarKind = (typeof sugarKinds)[number];
export const acidKinds = ["citric", "malic", "tartaric", "lactic", "acetic", "phosphoric", "ascorbic"] as const;
export type AcidKind = (typeof acidKinds)[number];

/** So much of something in 100 ml or in 100 g of the ingredient. */
export interface Content {
  readonly amount: Known;
  readonly per: "100 ml" | "100 g";
}

/** An ingredient as bought, as far as its label, its house or the larder describe it. */
export interface StockModel {
  readonly type: "stock";
  readonly name: string;
  readonly solid: boolean;
  /** % vol at 20 °C. */
  readonly abvPct: Known;
  readonly sugars: readonly (Content & { readonly sugar: SugarKind })[];
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
}

export type Amount = { readonly ml: Known } | { readonly g: Known };

/** An ingredient made from others, before anything is known of its use. Also a drink poured in a drink. */
export interface PrepModel {
  readonly type: "prep";
  readonly name: string;
  readonly parts: readonly PrepPart[];
  /** Measured values override computed ones. */
  readonly measured?: { readonly brix?: Uncertain; readonly abvPct?: Uncertain; readonly densityGPerMl?: Uncertain };
  /** Set where a step makes the composition unknowable (ferment, infuse …), with the reason. */
  readonly unknown?: Unknown;
}

export interface PrepPart {
  readonly of: Model;
  /** `upTo…`: as much as makes the whole prep that large (`to 100 g water`). */
  readonly amount: Amount | { readonly upToG: Known } | { readonly upToMl: Known };
  /** Strained out or only infused: brings no mass. */
  readonly discarded?: boolean;
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
  readonly seconds?: number;
  readonly ice?: IcePlan;
  /** Water that the step adds, as a share of the volume before (`pre-dilute 25 %` is 0.25). */
  readonly waterShare?: number;
}

/** What a technique does to heat and water. One row each in `techniques.ts`. */
export interface Technique {
  readonly id: string;
  /** The words that name it in a method, the first one canonical. */
  readonly words: readonly string[];
  /** For hover and the reference page: what it does to water and temperature. */
  readonly doc: string;
  /** Absent: no ice, no change of water or temperature (fine strain, dry shake). */
  readonly chill?: Chill;
  /** The ice stays in the glass with the drink (build, swizzle, strain over). */
  readonly iceInGlass?: boolean;
  /** Where its figures come from; "practice, no source" where they come from nowhere. */
  readonly source: string;
  /** For preps: composition can no longer be computed, with the reason. */
  readonly clouds?: string;
}

export interface Chill {
  /** T = alpha × the freezing point of the diluted drink. */
  readonly alpha: number;
  readonly vesselJPerK: number;
  /** Water that clings to the ice and comes along, in ml, per 150 g of cubed ice. */
  readonly clingingMl: number;
  /** The usual weight of ice, g. */
  readonly iceG: number;
  /** Relative standard uncertainty of the melt that the model itself has. */
  readonly spread: number;
  /** Seconds to come within 1/e of its end. */
  readonly timeConstantS: number;
  /** Seconds taken where the method states none. */
  readonly usualS: number;
  /** Seconds in which it comes to alpha; absent: the usual ones. */
  readonly settledS?: number;
  /** All the ice ends up in the drink, melted or not (blend): it counts as water. */
  readonly drunk?: boolean;
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
  /** Ice that each serve is poured over, grams; absent: none, or the technique's own ice. */
  readonly serveIceG?: Uncertain;
  readonly glass?: GlassPlan;
  /** The vessel's and the surroundings' temperature. */
  readonly ambientC: Uncertain;
  /** The pours are for so many serves. */
  readonly serves: number;
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

export const figureNames = [
  "beforeVolumeMl",
  "beforeMassG",
  "beforeStrengthPct",
  "waterMl",
  "dilutionShare",
  "afterVolumeMl",
  "strengthPct",
  "sugarGPer100Ml",
  "sweetnessGPer100Ml",
  "acidGPer100Ml",
  "ratio",
  "saltGPer100Ml",
  "temperatureC",
  "fillShare",
  "ethanolG",
  "caffeineMg",
  "energyKJ",
  "energyKcal",
] as const;
export type FigureName = (typeof figureNames)[number];

/**
 * One drink, computed. Volumes and masses are for all serves together; `fillShare` is per serve.
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
] as const;
export type PrepFigureName = (typeof prepFigureNames)[number];

export interface PrepOutcome {
  value(name: PrepFigureName): number | null;
  figure(name: PrepFigureName): Figure;
}
