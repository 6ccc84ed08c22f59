/** The rules on manuscripts. They look at the chapters of a `book` and at nothing else. Adding one is a line here. */
import type { Rule } from "../rule.ts";
import { allergensNotStated } from "./allergens-not-stated.ts";
import { avoidedWord } from "./avoided-word.ts";
import { missingRecipe } from "./missing-recipe.ts";
import { otherSpelling } from "./other-spelling.ts";
import { proseDisagrees } from "./prose-disagrees.ts";
import { recipeLacks } from "./recipe-lacks.ts";
import { roundedOff } from "./rounded-off.ts";
import { strangeUnits } from "./strange-units.ts";
import { unindexedRecipe } from "./unindexed-recipe.ts";
import { unknownDirective } from "./unknown-directive.ts";
import { unlistedEquipment } from "./unlisted-equipment.ts";
import { unprintedRecipe } from "./unprinted-recipe.ts";
import { unsayableValue } from "./unsayable-value.ts";

export const bookRules: readonly Rule[] = [
  // what the text says of the recipes
  unknownDirective,
  missingRecipe,
  unsayableValue,
  unprintedRecipe,
  proseDisagrees,
  // the house style
  strangeUnits,
  avoidedWord,
  otherSpelling,
  recipeLacks,
  roundedOff,
  // what the reader looks up
  unlistedEquipment,
  allergensNotStated,
  unindexedRecipe,
];
