/** What goes into the bottle: practice, no source, and what the house says of how long it keeps. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyBody, meaningOf } from "./drinks.ts";
import { apply, chosen, houseAfter, offered, titles } from "./offered.ts";

const marking = (text: string) => titles(text).filter((title) => /ark \d/.test(title));

describe("mark for the bottle", () => {
  test("strong, sweet and bitter; behind its modifiers, before its comment", () =>
    expect(
      apply(
        `drink S<>lip
  50 ml dry gin, frozen  # cold
  20 ml sweet vermouth # red
  2 dashes orange bitters
  15 ml simple syrup
  10 ml water
  20 ml lime juice
  20 ml cream
  1 egg white
  6 mint leaves
  10 ml dry gin, optional
  30 ml red wine
  top soda water
`,
        "Mark 5 stable pours as batched",
      ),
    ).toBe(`drink Slip
  50 ml dry gin, frozen, batched  # cold
  20 ml sweet vermouth, batched # red
  2 dashes orange bitters, batched
  15 ml simple syrup, batched
  10 ml water, batched
  20 ml lime juice
  20 ml cream
  1 egg white
  6 mint leaves
  10 ml dry gin, optional
  30 ml red wine
  top soda water
`));

  test("what is marked is left, and can be unmarked again", () => {
    const text =
      'drink S<>lip\n  50 ml "12 year rye" , batched, frozen\n  20 ml sweet vermouth\n\nstock 12 year rye\n  kind: spirit\n  abv: 43 %\n';
    expect(marking(text)).toEqual(["Mark 1 more stable pour as batched", "Unmark 1 batched pour"]);
    expect(apply(text, "Unmark")).toContain('  50 ml "12 year rye" , frozen\n');
  });

  test("a house's `keeps` goes before the kind, a week at least; an egg stays an egg", () => {
    const of = (kind: string, keeps: string) => `stock thing\n  kind: ${kind}\n  keeps: ${keeps}\n\ndrink S<>lip\n  20 ml thing\n`;
    expect(marking(of("juice", "10 days chilled"))).toHaveLength(1);
    expect(marking(of("syrup", "3 days chilled"))).toHaveLength(0);
    expect(marking(of("syrup", "7 days"))).toHaveLength(1);
    expect(marking(of("egg", "28 days chilled"))).toHaveLength(0);
    expect(marking(of("mixer", "2 days").replace("20 ml", "top to 90 ml"))).toHaveLength(0);
  });

  test("a prep by its own `keeps`, else by all that it is made of", () => {
    const of = (lines: string) => `prep thing\n${lines}\ndrink S<>lip\n  20 ml thing\n`;
    expect(marking(of("  100 g white sugar\n  100 g water\n"))).toHaveLength(1);
    expect(marking(of("  100 g white sugar\n  100 g lime juice\n"))).toHaveLength(0);
    expect(marking(of("  100 g white sugar\n  100 g lime juice\n  keeps: 14 days\n"))).toHaveLength(1);
    expect(marking(of("  100 g white sugar\n  100 g water\n  keeps: 2 days\n"))).toHaveLength(0);
  });

  test("all alternatives have to be stable", () => {
    expect(marking("drink S<>lip\n  50 ml dry gin\n    or vodka\n")).toHaveLength(1);
    expect(marking("drink S<>lip\n  50 ml dry gin\n    or lime juice\n")).toHaveLength(0);
  });

  test("not in a riff, where a modifier would replace those of the parent", () =>
    expect(marking("drink Fog\n  50 ml dry gin, frozen\n\ndrink S<>lip\n  from: Fog\n  60 ml dry gin\n")).toEqual([]));

  test("of any drink: it stays the same, and unmarked it is the text that it was", () =>
    fc.assert(
      fc.property(anyBody, (body) => {
        const text = `drink S<>lip\n${body}`;
        const before = offered(text);
        const title = before.offers.find((one) => one.title.startsWith("Mark"))?.title;
        fc.pre(title !== undefined);
        const made = chosen(before, title!);
        expect(meaningOf(houseAfter(made), "Slip")).toEqual(meaningOf(made.house, "Slip"));
        const after = apply(text, title!);
        expect(marking(after.replace("drink S", "drink S<>"))).toEqual([
          title!.replace("Mark", "Unmark").replace("stable", "batched").replace(" as batched", ""),
        ]);
        expect(apply(after.replace("drink S", "drink S<>"), "Unmark")).toBe(text.replace("<>", ""));
      }),
      { numRuns: 30 },
    ));
});
