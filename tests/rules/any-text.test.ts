/** What holds for any text: no rule fails, places are in the text, fixes can be put in, and the order of edits does not matter. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { rules } from "../../server/rules/all.ts";
import { documentsOf, houseOf } from "../house/make.ts";
import { apply, findIn } from "./check.ts";

/** Milliseconds that a property may take on a busy machine. */
const slow = 60_000;

/** Lines of specs and of chapters, whole and broken, in any order; those that start another file among them. */
const line = fc.oneof(
  fc.constantFrom(...rules.flatMap(({ docs }) => [...docs.bad.split("\n"), ...docs.good.split("\n")])),
  fc.constantFrom(
    "  from: Slip Water",
    "  from: Other",
    "drink Other",
    "prep Other",
    "  50 ml Other",
    "  without gin",
    "  or ",
    "  swap",
    "  top soda water",
  ),
  fc.constantFrom(
    "  # allow unmeasurable: because",
    "# allow missing-glass: because",
    "  ratio: 1 to 2",
    "  family: sour",
    "  serves: 0",
    "  total: 0 ml",
    "  1 part gin",
  ),
  fc.constantFrom(
    "house A",
    "house",
    "family",
    "  jigger: 0 ml",
    "  severity: missing-glass off",
    "menu Card",
    "  - Slip Water 8",
    "glass coupe",
    "  holds: 0 ml",
    "  holds: 1e999 ml",
  ),
  fc.constantFrom(
    "  method: reduce to 0 g; pre-dilute; ferment",
    "  method: simmer by 100 %; clarify; strain",
    "  yield: 0 ml",
    "  brix: 0",
    "  density: 0 g/ml",
    "  20 g mint, strained out",
    "  200 ml milk",
  ),
  fc.string({ maxLength: 30 }),
  fc.string({ unit: "grapheme", maxLength: 12 }).map((text) => `  50 ml ${text}`),
  fc.string({ maxLength: 12 }).map((text) => `  ${text}: ${text}`),
);
/** What a message shows where something was not thought of. */
const unsaid = /undefined|NaN|null|\[object/;
const text = fc.array(line, { maxLength: 25 }).map((lines) => lines.join("\n"));

test(
  "no rule fails on any text, and every finding stands in it",
  () =>
    fc.assert(
      fc.property(text, (any) => {
        const house = houseOf(any);
        for (const { finding } of findIn(house)) {
          for (const { entry, place } of [finding, ...(finding.related ?? [])]) {
            const there = entry.lines[place.line];
            expect(there).toBeDefined();
            expect(place.start).toBeGreaterThanOrEqual(0);
            expect(place.start).toBeLessThanOrEqual(place.end);
            expect(place.end).toBeLessThanOrEqual(there!.text.length);
          }
          expect(finding.what).toMatch(/[.]$/);
          if (!unsaid.test(any)) expect(`${finding.what} ${finding.todo}`).not.toMatch(unsaid);
        }
      }),
      { numRuns: 300 },
    ),
  slow,
);

test(
  "a fix of anything can be put in, and what it changes can be read again",
  () =>
    fc.assert(
      fc.property(text, fc.nat(), fc.nat(), (any, which, way) => {
        const house = houseOf(any);
        const fixes = findIn(house)
          .flatMap(({ finding }) => [finding.fixes?.() ?? []])
          .filter((all) => all.length > 0);
        if (fixes.length === 0) return;
        const some = fixes[which % fixes.length]!;
        apply(house, some[way % some.length]!);
        findIn(house);
      }),
      { numRuns: 200 },
    ),
  slow,
);

test(
  "what is found after edits is what is found in the same text opened afresh",
  () =>
    fc.assert(
      fc.property(fc.array(text, { minLength: 2, maxLength: 4 }), (versions) => {
        const house = houseOf("");
        for (const version of versions) {
          const documents = documentsOf(version);
          for (const { uri } of [...house.documents()]) if (!documents.some((one) => one.uri === uri)) house.removeDocument(uri);
          for (const document of documents) house.setDocument(document);
          findIn(house);
        }
        const told = (one: ReturnType<typeof houseOf>) =>
          findIn(one)
            .map(({ uri, line: at, finding }) => `${uri}:${at} ${finding.code} ${finding.severity} ${finding.what} ${finding.todo}`)
            .sort();
        expect(told(house)).toEqual(told(houseOf(versions.at(-1)!)));
      }),
      { numRuns: 100 },
    ),
  slow,
);
