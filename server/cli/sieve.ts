/** What keeps findings from being shown: those that were there before. */
import type { Checked, Located } from "../reports/check.ts";

/** Takes findings away, and says in sentences how many. */
export type Sieve = (checked: Checked) => { readonly findings: readonly Located[]; readonly notes: readonly string[] };
