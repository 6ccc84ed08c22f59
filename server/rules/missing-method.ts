/** A drink that does not say how it is made. */
import { missingField } from "./missing-field.ts";
import { specimen } from "./specimen.ts";

export const missingMethod = missingField(
  "method",
  {
    code: "missing-method",
    severity: "warning",
    docs: {
      title: "No method",
      why: "The method decides how much water comes into the drink. Without one the figures are those of what is poured, warm and undiluted.",
      bad: specimen(["50 ml gin"], { method: undefined }),
      good: specimen(["50 ml gin"]),
    },
  },
  "Nothing says how this is made, so it is computed as poured, warm and without water.",
  "Add a `method:`, such as `shake 12 s; fine strain`; `none` is an answer.",
  ["none"],
);
