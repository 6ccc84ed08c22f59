/** Every rule, in the order of the reference page. Adding one is a line here. */
import type { Rule } from "./rule.ts";
import { syntaxRules } from "./syntax.ts";
import { unbalanced } from "./unbalanced.ts";
import { unknownIngredient } from "./unknown-ingredient.ts";
import { unknownUnit } from "./unknown-unit.ts";

export const rules: readonly Rule[] = [...syntaxRules, unknownIngredient, unknownUnit, unbalanced];
