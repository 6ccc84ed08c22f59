/** A drink that does not say what goes on top. */
import { missingField } from "./missing-field.ts";
import { specimen } from "./specimen.ts";

export const missingGarnish = missingField(
  "garnish",
  {
    code: "missing-garnish",
    severity: "information",
    docs: {
      title: "No garnish",
      why: "A garnish that is not written down is one thing on Friday and another on Saturday; and it may carry an allergen. `none` says that nothing goes on top.",
      bad: specimen(["50 ml gin"], { garnish: undefined }),
      good: specimen(["50 ml gin"]),
    },
  },
  "Nothing says what goes on top, and silence is not the same as nothing.",
  "Add a `garnish:`; `none` is an answer.",
  ["none"],
);
