/** A riff of the drink at the cursor, below it: nothing changed yet. */
import { isCyclic } from "../../house/cycles.ts";
import { writtenName } from "../../house/write.ts";
import { addEntryBelow, indentOf } from "./lines.ts";
import { freshName, nameInField } from "./names.ts";
import type { Refactoring } from "./refactoring.ts";

export const makeRiff: Refactoring = {
  name: "makeRiff",
  where: "Put the cursor in a drink: the riff is of that one.",
  kind: "refactor.extract",
  offers({ house, entry }) {
    const name = entry.kind === "drink" && entry.name?.text;
    const scope = house.scopeOf(entry);
    // Of two drinks of one name a riff would mean the first.
    if (!name || house.lookup(scope, "drink", name)[0]?.entry !== entry || isCyclic(house, entry)) return [];
    return [
      {
        title: `Make a riff of ${name}`,
        edits: () => [
          addEntryBelow(entry, [
            `drink ${writtenName(freshName(house, scope, `${name}, riff`))}`,
            `${indentOf(entry)}from: ${nameInField(name)}`,
          ]),
        ],
      },
    ];
  },
};
