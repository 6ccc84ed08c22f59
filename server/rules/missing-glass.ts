/** A drink that does not say what it is served in. */
import { missingField } from "./missing-field.ts";
import { specimen } from "./specimen.ts";

export const missingGlass = missingField(
  "glass",
  {
    code: "missing-glass",
    severity: "information",
    docs: {
      title: "No glass",
      why: "The same drink in two glasses is two drinks to whoever orders it, and without its glass nobody can say whether it fits.",
      bad: specimen(["50 ml gin"], { glass: undefined }),
      good: specimen(["50 ml gin"]),
    },
  },
  "Nothing says what this is served in, so every hand takes another glass.",
  "Add a `glass:`; `none` is an answer.",
  ["none"],
);
