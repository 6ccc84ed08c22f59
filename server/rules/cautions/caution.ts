/** A rule that finds nothing wrong and says the usual caution. A hover and a sheet say it too. */
import type { Entry } from "../../../grammar/tree.ts";
import { isCyclic } from "../../house/cycles.ts";
import type { Place } from "../../house/document.ts";
import type { House } from "../../house/house.ts";
import { allowancesIn } from "../allowances.ts";
import type { Rule } from "../rule.ts";

/** What calls for the caution, on the line that brings it. */
export interface Cause {
  /** The entry that the line stands in: the drink or prep itself, or what the drink is a riff of. */
  readonly entry: Entry;
  readonly place: Place;
  /** The prep or drink by which it comes, where it does not stand on the line itself. */
  readonly through?: string;
  /** What it is, in one sentence. */
  readonly what: string;
}

export interface Caution extends Rule {
  readonly docs: Rule["docs"] & {
    /** A published source, how it was come by, or that there is none. */
    readonly source: string;
  };
  /** What to do, in a line that reads after the title. */
  readonly advice: string;
  /** The causes in an entry of its kinds that is not made from itself, inherited ones too. */
  causes(house: House, entry: Entry): Iterable<Cause>;
}

/**
 * The rule of a caution: found once in an entry, on the first line of its own that brings it and is not
 * allowed. One that looks at preps tells it of the prep, and not again of each drink that pours it.
 */
export function caution(draft: Omit<Caution, "check">): Caution {
  const tellsPreps = draft.entries.includes("prep");
  return {
    ...draft,
    *check(house, entry) {
      if (isCyclic(house, entry)) return;
      for (const { entry: by, place, through, what } of draft.causes(house, entry)) {
        if (by !== entry || (through && tellsPreps)) continue;
        yield { place, what, todo: draft.advice };
        if (!isAllowed(entry, draft.code, place.line)) return;
      }
    },
  };
}

/** Whether a comment lets findings of a code stand on this line. */
export function isAllowed(entry: Entry, code: string, line: number): boolean {
  return allowancesIn(entry).some((one) => one.code === code && one.covers === line);
}
