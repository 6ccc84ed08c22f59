/**
 * Runs every rule on an entry, each guarded by itself: one that fails is reported by its code and the
 * others go on. What was found is remembered with the entry until something it depends on changes.
 */
import type { Entry } from "../../grammar/tree.ts";
import type { Finding } from "../house/finding.ts";
import type { House } from "../house/house.ts";
import { settingsOf } from "../house/settings.ts";
import { type Allowance, allowancesIn } from "./allowances.ts";
import type { Rule } from "./rule.ts";
import { foundUnused, unusedAllowance } from "./unused-allowance.ts";

/** Told when a rule fails: its code and what was thrown. */
export type Report = (code: string, cause: unknown) => void;

/** The findings of an entry in the order of its lines, after the house's severities and the allowances in the comments. */
export function findingsOf(house: House, entry: Entry, rules: readonly Rule[], report: Report): readonly Finding[] {
  const { findings, onward } = foundIn(house, entry, rules, report);
  const onHead = findings.some(({ place }) => place.line === 0) ? onwardFrom(neighbour(house, entry, -1)) : [];
  if (onward.length === 0 && onHead.length === 0) return findings;
  const allowed = findings.filter(({ code, place }) => place.line !== 0 || !onHead.some((one) => one.code === code));
  const below = onward.length > 0 ? neighbour(house, entry, 1) : undefined;
  const headFindings = below ? foundIn(house, below, rules, report).findings.filter(({ place }) => place.line === 0) : [];
  const unused = onward.filter(({ code }) => !headFindings.some((finding) => finding.code === code));
  return [...allowed, ...unused.flatMap((one) => unusedIn(house, entry, one))];
}

interface FoundIn {
  readonly findings: readonly Finding[];
  /** The allowances at the entry's end, which are meant for the next entry's head. */
  readonly onward: readonly Allowance[];
}

function foundIn(house: House, entry: Entry, rules: readonly Rule[], report: Report): FoundIn {
  return house.recall(entry, "findings", () => {
    const { severities } = settingsOf(house, house.scopeOf(entry));
    const allowances = allowancesIn(entry);
    const used = new Set<Allowance>();
    const findings: Finding[] = [];
    for (const rule of rules) {
      if (!rule.entries.includes(entry.kind) || severities.get(rule.code) === "off") continue;
      try {
        for (const found of rule.check(house, entry)) {
          const by = allowances.find((one) => one.code === rule.code && one.covers === found.place.line);
          if (by) used.add(by);
          else
            findings.push({
              ...found,
              code: rule.code,
              severity: (severities.get(rule.code) as Finding["severity"]) ?? found.severity ?? rule.severity,
              entry,
            });
        }
      } catch (cause) {
        report(rule.code, cause);
      }
    }
    const onward = allowances.filter(({ covers }) => covers >= entry.lines.length);
    for (const allowance of allowances) {
      if (!used.has(allowance) && !onward.includes(allowance)) findings.push(...unusedIn(house, entry, allowance));
    }
    findings.sort((one, other) => one.place.line - other.place.line || one.place.start - other.place.start);
    return { findings, onward };
  });
}

function unusedIn(house: House, entry: Entry, allowance: Allowance): Finding[] {
  const { code, entries, severity: usual } = unusedAllowance;
  const severity = settingsOf(house, house.scopeOf(entry)).severities.get(code) ?? usual;
  if (severity === "off" || !entries.includes(entry.kind)) return [];
  return [{ ...foundUnused(entry, allowance), code, severity, entry }];
}

function onwardFrom(entry: Entry | undefined): Allowance[] {
  return entry ? allowancesIn(entry).filter(({ covers }) => covers >= entry.lines.length) : [];
}

function neighbour(house: House, entry: Entry, by: 1 | -1): Entry | undefined {
  return house.getDocumentOf(entry).tree.entries[house.getIndexOf(entry) + by];
}
