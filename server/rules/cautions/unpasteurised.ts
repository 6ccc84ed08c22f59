/** Juice or milk that is stated to be unpasteurised. */
import { caution } from "./caution.ts";
import { heldIn } from "./held.ts";

const drunk: ReadonlySet<string | undefined> = new Set(["juice", "puree", "dairy", "plant milk", undefined]);
const saidSo = /\b(?:unpasteuri[sz]ed|(?:not|non-)\s?pasteuri[sz]ed|raw (?:milk|cream|juice))\b/i;

export const unpasteurised = caution({
  code: "unpasteurised",
  severity: "information",
  entries: ["drink"],
  advice: "Tell the guest, above all in pregnancy, age or illness, and check your local code.",
  docs: {
    title: "Unpasteurised juice or milk",
    why: "Pressed fruit that lay on the ground and milk from the churn have made people ill. Found is what says so, by `pasteurised: no` or by its name. The juice that every bar presses itself is no different, and is not found, or nothing else would be.",
    source: "21 CFR 101.17(g) (from memory): packaged juice that was not treated carries a warning.",
    bad: "stock pressed cider juice\n  kind: juice\n  pasteurised: no\n\ndrink Slip Water\n  glass: highball\n  method: build over cubed ice\n  garnish: none\n  50 ml rum\n  120 ml pressed cider juice\n",
    good: "stock pressed cider juice\n  kind: juice\n  pasteurised: yes\n\ndrink Slip Water\n  glass: highball\n  method: build over cubed ice\n  garnish: none\n  50 ml rum\n  120 ml pressed cider juice\n",
  },
  *causes(house, entry) {
    for (const held of heldIn(house, entry)) {
      const raw = held.pasteurised === undefined ? saidSo.test(held.names) : !held.pasteurised;
      if (!raw || held.onTop || !drunk.has(held.facts?.kind)) continue;
      const { through, name } = held;
      yield { ...held, what: `The ${through ? `${name} in the ${through}` : name} is not pasteurised.` };
    }
  },
});
