/** Alcohol and what keeps one awake. */
import type { Entry } from "../../../grammar/tree.ts";
import { gramsOf, liquidOf } from "../../engine/composition.ts";
import { at } from "../../engine/liquid.ts";
import type { Amount, ServePlan } from "../../engine/plan.ts";
import { type Assessment, assessDrink } from "../../house/drink.ts";
import type { House } from "../../house/house.ts";
import { type Poured, pouredIn } from "../../house/poured.ts";
import { showFigure } from "../../house/show.ts";
import { headPlace } from "../places.ts";
import { shaken, specimen } from "../specimen.ts";
import { type Cause, caution } from "./caution.ts";

/** Less than a cup of black tea, 32 mg in 150 ml (Institute for Scientific Information on Coffee), is not spoken of: practice. */
const fewestMg = 30;
/** Less is in a dash of bitters: practice, no source. */
const fewestEthanolG = 1;

export const caffeineWithAlcohol = caution({
  code: "caffeine-with-alcohol",
  severity: "information",
  entries: ["drink"],
  advice: "It can hide how drunk a guest is; say that it is in, and check your local code.",
  docs: {
    title: "Alcohol with caffeine",
    why: `Somebody who is kept awake feels less drunk than they are, and orders the next. Looked at is a serve with ${fewestMg} mg of caffeine or more, about a cup of tea, and more than a dash of alcohol; where either cannot be computed in full, what is known of it counts.`,
    source:
      "US FDA, 17 November 2010 (read): caffeine added to packed alcoholic drinks was found unsafe; what comes with coffee was not the subject. EFSA Journal 2015;13(5):4102 (read): 200 mg at once for an adult. Regulation (EU) 1169/2011 Annex III (read): above 150 mg/l a label says so, coffee and tea excepted.",
    bad: specimen(["50 ml vodka, frozen", "40 ml espresso, hot", "15 ml coffee liqueur", "10 ml plain syrup"], shaken),
    good: specimen(["50 ml vodka, frozen", "40 ml decaffeinated espresso, hot", "15 ml coffee liqueur", "10 ml plain syrup"], shaken),
  },
  *causes(house, entry) {
    const assessment = assessDrink(house, entry);
    if (!isStimulating(assessment)) return;
    yield { ...placeIn(house, entry, assessment), what: sentenceOf(assessment) };
  },
});

function isStimulating({ outcome, plan }: Assessment): boolean {
  const each = (name: "caffeineMg" | "ethanolG", index: number) => (outcome.value(name) ?? knownPart(plan, index)) / plan.serves;
  return each("caffeineMg", at.caffeineMg) >= fewestMg && each("ethanolG", at.ethanol) >= fewestEthanolG;
}

/** What is known of it where the whole is not; without end where somebody pours an unknown amount. */
function knownPart({ pours }: ServePlan, index: number): number {
  return pours.reduce((sum, { of, amount }) => {
    const liquid = liquidOf(of);
    const share = liquid.perGram[index]!;
    if (!(share > 0)) return sum;
    const known = "ml" in amount ? amount.ml : "g" in amount ? amount.g : undefined;
    return sum + share * (known && "value" in known ? gramsOf(amount as Amount, known.value, liquid) : Number.POSITIVE_INFINITY);
  }, 0);
}

function sentenceOf({ outcome, plan, proportional }: Assessment): string {
  const { value, plusMinus } = outcome.figure("caffeineMg");
  if (value === null || proportional) return "Caffeine and alcohol stand in one glass.";
  const each = { value: value / plan.serves, plusMinus: (plusMinus ?? 0) / plan.serves };
  return `One serve holds ${showFigure(each, "mg", 0)} of caffeine beside its alcohol.`;
}

/** The pour with the most of it in a gram. A riff that inherits both leaves the matter to its parent. */
function placeIn(house: House, entry: Entry, { flat }: Assessment): Pick<Cause, "entry" | "place"> {
  const strength = ({ ingredient }: Poured) => liquidOf(ingredient.model).perGram[at.caffeineMg]!;
  const poured = pouredIn(house, entry)
    .filter((one) => strength(one) > 0)
    .sort((one, other) => strength(other) - strength(one));
  const own = poured.find((one) => one.entry === entry);
  const inherited = flat.parent && isStimulating(assessDrink(house, flat.parent.entry)) ? poured[0] : undefined;
  const { entry: by, place } = own ?? inherited ?? { entry, place: headPlace(entry) };
  return { entry: by, place };
}
