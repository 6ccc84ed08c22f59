/** The rules on manuscripts. They look at the chapters of a `book` and at nothing else. Adding one is a line here. */
import type { Rule } from "../rule.ts";
import { missingRecipe } from "./missing-recipe.ts";
import { unknownDirective } from "./unknown-directive.ts";
import { unprintedRecipe } from "./unprinted-recipe.ts";
import { unsayableValue } from "./unsayable-value.ts";

export const bookRules: readonly Rule[] = [
  // what the text says of the recipes
  unknownDirective,
  missingRecipe,
  unsayableValue,
  unprintedRecipe,
];
