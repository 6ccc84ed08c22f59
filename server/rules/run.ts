/**
 * Runs every rule on an entry, each guarded by itself: one that fails is reported by its code and the
 * others go on. What was found is remembered with the entry until something it depends on changes.
 */
import type { Entry } from "../../grammar/tree.ts";
import type { Finding } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { settingsOf } from "../house/settings.ts";
import { allowancesIn, unusedAllowance } from "./allowances.ts";
import type { Rule } from "./rule.ts";

/** Told when a rule fails: its code and what was thrown. */
export type Report = (code: string, cause: unknown) => void;

/** The findings of an entry in the order of its lines, after the house's severities and the allowances in its comments. */
export function findingsOf(house: House, entry: Entry, rules: readonly Rule[], report: Report): readonly Finding[] {
  return house.recall(entry, "findings", () => {
    const { severities } = settingsOf(house, house.scopeOf(entry));
    const allowances = allowancesIn(entry);
    const used = new Set<number>();
    const findings: Finding[] = [];
    const keep = (finding: Finding) => {
      const severity = severities.get(finding.code);
      if (severity === "off") return;
      const allowance = allowances.find((one) => one.code === finding.code && one.covers.includes(finding.place.line));
      if (allowance) used.add(allowance.line);
      else findings.push(severity ? { ...finding, severity } : finding);
    };
    for (const rule of rules) {
      if (!rule.entries.includes(entry.kind)) continue;
      try {
        for (const found of rule.check(house, entry)) keep({ ...found, code: rule.code, severity: found.severity ?? rule.severity, entry });
      } catch (cause) {
        report(rule.code, cause);
      }
    }
    if (entry.kind !== "unknown") {
      for (const allowance of allowances) if (!used.has(allowance.line)) keep(unusedAllowance(entry, allowance));
    }
    return findings.sort((one, other) => one.place.line - other.place.line || one.place.start - other.place.start);
  });
}
