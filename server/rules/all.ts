/** Every rule, in the order of the reference page. Adding one is a line here. */
import { bookRules } from "./book/all.ts";
import { cautions } from "./cautions/all.ts";
import { curdling } from "./curdling.ts";
import { cyclic } from "./cyclic.ts";
import { dilutionOutside } from "./dilution-outside.ts";
import { duplicateHouse } from "./duplicate-house.ts";
import { duplicateName } from "./duplicate-name.ts";
import { freezesInFreezer } from "./freezes-in-freezer.ts";
import { glassTooSmall } from "./glass-too-small.ts";
import { incompleteStep } from "./incomplete-step.ts";
import { layerOrder } from "./layer-order.ts";
import { misplacedLine } from "./misplaced-line.ts";
import { missingGarnish } from "./missing-garnish.ts";
import { missingGlass } from "./missing-glass.ts";
import { missingMethod } from "./missing-method.ts";
import { missingParent } from "./missing-parent.ts";
import { missingSwap } from "./missing-swap.ts";
import { misspeltModifier } from "./misspelt-modifier.ts";
import { misspeltTechnique } from "./misspelt-technique.ts";
import { mixedUnits } from "./mixed-units.ts";
import { orphanOr } from "./orphan-or.ts";
import { outOfStock } from "./out-of-stock.ts";
import { overTargetCost } from "./over-target-cost.ts";
import { readingDiffers } from "./reading-differs.ts";
import { readingUndated } from "./reading-undated.ts";
import { repeatedField } from "./repeated-field.ts";
import type { Rule } from "./rule.ts";
import { salty } from "./salty.ts";
import { shakenBubbles } from "./shaken-bubbles.ts";
import { strengthOutside } from "./strength-outside.ts";
import { syntaxRules } from "./syntax.ts";
import { unbalanced } from "./unbalanced.ts";
import { unknownFamily } from "./unknown-family.ts";
import { unknownField } from "./unknown-field.ts";
import { unknownFigures } from "./unknown-figures.ts";
import { unknownGlass } from "./unknown-glass.ts";
import { unknownIce } from "./unknown-ice.ts";
import { unknownIngredient } from "./unknown-ingredient.ts";
import { unknownRule } from "./unknown-rule.ts";
import { unknownUnit } from "./unknown-unit.ts";
import { unmeasurable } from "./unmeasurable.ts";
import { unusedAllowance } from "./unused-allowance.ts";
import { volumeOfSolid } from "./volume-of-solid.ts";
import { wrongValue } from "./wrong-value.ts";

export const rules: readonly Rule[] = [
  // the text
  ...syntaxRules,
  misplacedLine,
  unknownField,
  repeatedField,
  wrongValue,
  unusedAllowance,
  unknownRule(() => rules.map(({ code }) => code)),
  // names
  unknownIngredient,
  unknownUnit,
  unknownGlass,
  unknownFamily,
  unknownIce,
  misspeltModifier,
  misspeltTechnique,
  duplicateName,
  duplicateHouse,
  // riffs
  missingParent,
  missingSwap,
  orphanOr,
  cyclic,
  // the drink
  unbalanced,
  strengthOutside,
  dilutionOutside,
  salty,
  glassTooSmall,
  curdling,
  shakenBubbles,
  layerOrder,
  freezesInFreezer,
  // its making
  unmeasurable,
  mixedUnits,
  volumeOfSolid,
  incompleteStep,
  missingMethod,
  missingGlass,
  missingGarnish,
  unknownFigures,
  readingDiffers,
  readingUndated,
  // the bar
  overTargetCost,
  outOfStock,
  // the book
  ...bookRules,
  // what can hurt someone
  ...cautions,
];
