/** What a rule is: one file that says what it finds, why that matters, and how it looks when right. */
import type { Entry } from "../../grammar/tree.ts";
import type { Finding } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import type { Severity } from "../house/settings.ts";

/** A finding as the rule yields it; the runner adds the code, and the severity where the rule leaves it out. */
export type Found = Omit<Finding, "code" | "severity" | "entry"> & { readonly severity?: Exclude<Severity, "off"> };

export interface Rule {
  /** The defect's name, unchanging once released. */
  readonly code: string;
  readonly severity: Exclude<Severity, "off">;
  /** The kinds of entry it looks at; "preamble" is what stands above the first entry, "text" what is written around specs in Markdown. */
  readonly entries: readonly Entry["kind"][];
  readonly docs: {
    readonly title: string;
    /** One paragraph: why anybody would care. */
    readonly why: string;
    /** Where that is published, and how it was come by, where anybody would ask. */
    readonly source?: string;
    /** A text with exactly one finding of this code. */
    readonly bad: string;
    /** The same put right: none of it. */
    readonly good: string;
  };
  check(house: House, entry: Entry): Iterable<Found>;
}
