import { describe, expect, test } from "vitest";
import { entryKinds } from "../../grammar/fields.ts";
import { readLine } from "../../grammar/line.ts";
import { longestLine } from "../../grammar/problems.ts";
import { say } from "./say.ts";

describe("entries", () => {
  test.each(entryKinds)("%s opens an entry", (kind) => {
    expect(say(`${kind} The Halyard Room`)).toBe(`entry ${kind} | The Halyard Room`);
  });
  test.each([
    ["drink Lantern Sour, Low Tide  # new", "entry drink | Lantern Sour, Low Tide {# new}"],
    ["DRINK 7 Bells", "entry drink | 7 Bells"],
    ['drink "Blend # 4"', "entry drink | [Blend # 4]"],
    ["\ufeffdrink Lantern", "entry drink | Lantern"],
    ["house", "entry house | -"],
    ["drink", "entry drink | - !syntax"],
    ["drink Blend #4", "entry drink | Blend #4"],
    ["dri", "entry ?dri | - !unknown-entry"],
    ["Lantern Sour", "entry ?Lantern | Sour !unknown-entry"],
    ["- Lantern Sour", "entry ?- | Lantern Sour !unknown-entry"],
    ["top soda water", "entry ?top | soda water !unknown-entry"],
    ["house: The Halyard Room", "entry ?house: | The Halyard Room !unknown-entry"],
  ])("%s", (text, expected) => expect(say(text)).toBe(expected));

  test.each([
    ["dri", "drink"],
    ["drnk", "drink"],
    ["Drinks", "drink"],
    ["st", "stock"],
    ["pre", "prep"],
    ["glas", "glass"],
    ["house:", "house"],
    ["d", undefined],
    ["Lantern", undefined],
    ["—", undefined],
  ])("“%s” may have been meant as %s", (word, meant) => {
    const { problem } = readLine(`${word} Lantern`);
    expect(problem).toMatchObject({ start: 0, end: word.length });
    expect(problem?.instead).toBe(meant);
  });
});

describe("fields", () => {
  test.each([
    ["family: egg sour", "field family = egg sour"],
    ["family:egg sour", "pour - | family:egg sour !missing-amount"], // a colon without a space behind it
    ["Family: egg sour", "field Family = egg sour"],
    ["parts by: weight", "field parts by = weight"],
    ["valid from: 2026-11-01", "field valid from = 2026-11-01"],
    ["house-made thing x: y", "field house-made thing x = y"],
    ["one two three four: y", "pour - | one two three four: y !missing-amount"],
    ["glass: coupe, chilled", "field glass = coupe + chilled"],
    ["garnish: lemon zest, expressed; grated nutmeg", "field garnish = lemon zest + expressed ; grated nutmeg"],
    ["garnish: ; lemon,, zest;", "field garnish = lemon + zest"],
    ["method: dry shake 10 s; shake 12 s with cracked ice", "field method = dry shake 10 s (10 s) ; shake 12 s with cracked ice (12 s)"],
    ["method: throw 6 times; hold at -5 C", "field method = throw 6 times (6 times) ; hold at -5 C (-5 C)"],
    ["method: hold at −5 °C", "field method = hold at −5 °C (-5 C)"], // U+2212
    ["freezer: -18 C", "field freezer = -18 C (=-18 C)"],
    ["abv: 43%", "field abv = 43% (=43 %)"],
    ["abv: 43 % vol", "field abv = 43 % vol (=43 %)"],
    ["sugar: 2.5 g/100 ml", "field sugar = 2.5 g/100 ml (=2.5 g/100 ml)"],
    ["sugar: 3 g/100g fructose; 1 g/100 g glucose", "field sugar = 3 g/100g fructose (=3 g/100 g) ; 1 g/100 g glucose (=1 g/100 g)"],
    ["acid: 6 g/100 ml as citric", "field acid = 6 g/100 ml as citric (=6 g/100 ml)"],
    ["density: 1.04 g/ml", "field density = 1.04 g/ml (=1.04 g/ml)"],
    ["price: 26.50 per 700 ml", "field price = 26.50 per 700 ml (=26.5; 700 ml)"],
    ["price: 26.50 / 70 cl", "field price = 26.50 / 70 cl (=26.5; 70 cl)"],
    ["price: 26.50/70 cl", "field price = 26.50/70 cl (=26.5; 70 cl)"],
    ["price: £26.50 per kg", "field price = £26.50 per kg (26.5)"],
    ["price: 12 per 6 x 200 ml", "field price = 12 per 6 x 200 ml (=12; 6 times; 200 ml)"],
    ["ratio: 4 to 13", "field ratio = 4 to 13 (=4..13)"],
    ["ratio: none", "field ratio = none"],
    ["strength: 13 to 21 %", "field strength = 13 to 21 % (=13..21 %)"],
    ["strength: 21 to 13 %", "field strength = 21 to 13 % (=21..13 %) !reversed-range"],
    ["each: leaf 0.1 g; sprig 2 g", "field each = leaf 0.1 g (0.1 g) ; sprig 2 g (2 g)"],
    ["yield: juiced 25 ml", "field yield = juiced 25 ml (25 ml)"],
    ["holds: 2,5 cl", "field holds = 2,5 cl (=2.5 cl) !decimal-comma"],
    ["keeps: 1 day chilled # usual", "field keeps = 1 day chilled (=1 day) {# usual}"],
    ["credit: the 10-5 shift, 2,5", "field credit = the 10-5 shift (10..5) + 2,5 (=2.5)"], // free text is not found fault with
    ["tasted: 2026-02-11", "field tasted = 2026-02-11"],
    ['aka: "Blend # 4; red"; blend', 'field aka = "Blend # 4; red" ; blend'],
    ['aka: "open', 'field aka = "open !unclosed-quote'],
    ["glass:", "field glass = - !syntax"],
    ["glass: # later", "field glass = - {# later} !syntax"],
    ["colour: red", "field colour = red"], // a field that nobody knows is a rule's business
    ["colour:", "field colour = -"],
    ["sugr: 3 g/100 ml", "field sugr = 3 g/100 ml (=3 g/100 ml)"],
    ["jiger: 2.5 ml", "field jiger = 2.5 ml (=2.5 ml)"], // one slip from a field, not a turned pour
    ["story: Named for # the lamp, 2,5 of it", "field story = Named for # the lamp, 2,5 of it"],
    ["steps:", "field steps = -"],
  ])("%s", (text, expected) => expect(say(`  ${text}`)).toBe(expected));
});

describe("or, swap, without, section", () => {
  test.each([
    ["or 22.5 ml lemon-strength acid", "or 22.5 ml | lemon-strength acid"],
    ["or lemon-strength acid", "or - | lemon-strength acid"],
    ["or top ginger beer", "or top→top - | ginger beer"],
    ["or", "or nothing !syntax"],
    ["or 20 ml", "or 20 ml | - !syntax"],
    ["orange bitters, to taste", "pour - | orange bitters, to taste"],
    ["swap aged rum for 60 ml oloroso sherry", "swap - | aged rum => 60 ml | oloroso sherry"],
    ["swap 50 ml aged rum for 60 ml oloroso sherry, chilled", "swap 50 ml | aged rum => 60 ml | oloroso sherry, chilled"],
    ["swap gin for two for rum", "swap - | gin => - | two for rum / - | gin for two => - | rum"],
    ['swap "gin for two" for rum', "swap - | [gin for two] => - | rum"],
    ['swap "gin # 2" for "rum # 3" # why', "swap - | [gin # 2] => - | [rum # 3] {# why}"],
    ["swap gin", "swap  !syntax"],
    ["swap gin for", "swap  !syntax"],
    ["swap for gin", "swap  !syntax"],
    ["swap", "swap  !syntax"],
    ["swap 2,5 cl gin for rum", "swap 2.5 cl | gin => - | rum !decimal-comma"],
    ["without egg white", "without - | egg white"],
    ["without all lime juice", "without all - | lime juice"],
    ["without 10 ml lime juice", "without 10 ml | lime juice"],
    ["without", "without nothing !syntax"],
    ["without all", "without all nothing !syntax"],
    ["section Before the boat", "section Before the boat"],
    ["section", "section - !syntax"],
    ["section: x", "field section = x"],
  ])("%s", (text, expected) => expect(say(`  ${text}`)).toBe(expected));
});

describe("menu lines", () => {
  test.each([
    ["- Lantern Sour 12.50", "menu Lantern Sour 12.50 / Lantern Sour at 12.5 ?"],
    ["-Lantern Sour", "menu Lantern Sour"],
    ["- Lantern Sour, Low Tide 11.00", "menu Lantern Sour, Low Tide 11.00 / Lantern Sour, Low Tide at 11 ?"],
    ["- House red 12.50 / 45.00 carafe", "menu House red 12.50 / 45.00 carafe / House red at 12.5 & 45 'carafe' ?"],
    ["- House red 12.50/45.00", "menu House red 12.50/45.00 / House red at 12.5 & 45 ?"],
    ["- Lantern Sour £12", "menu Lantern Sour £12 / Lantern Sour at £ 12"],
    ["- Lantern Sour 12 €", "menu Lantern Sour 12 € / Lantern Sour at € 12"],
    ["- Lantern Sour GBP 12", "menu Lantern Sour GBP 12 / Lantern Sour at GBP 12"],
    ["- Lantern Sour 12 GBP", "menu Lantern Sour 12 GBP / Lantern Sour at GBP 12"],
    ["- House red £30 carafe", "menu House red £30 carafe / House red at £ 30 'carafe'"],
    ["- House red £6 cup", "menu House red £6 cup / House red at £ 6 'cup'"],
    ["- Blend 4", "menu Blend 4 / Blend at 4 ?"], // whether it is a name or a price, the house decides
    ["- Gin 7 Sour", "menu Gin 7 Sour"],
    ["- Rum or gin", "menu Rum or gin"],
    ["- Salt / Smoke 12.50", "menu Salt / Smoke 12.50 / Salt / Smoke at 12.5 ?"],
    ["- Lantern Sour 12,50", "menu Lantern Sour 12,50 / Lantern Sour at 12.5 ? !decimal-comma"],
    ["- 12.50", "menu 12.50"],
    ['- "Lantern, 12" 12.50', "menu [Lantern, 12 12.50] / [Lantern, 12] at 12.5 ?"],
    ["- Lantern Sour # soon", "menu Lantern Sour {# soon}"],
    ["-", "menu - !syntax"],
  ])("%s", (text, expected) => expect(say(`  ${text}`)).toBe(expected));
});

describe("comments", () => {
  test.each([
    ["", "blank"],
    [" \t\u00a0", "blank"],
    ["\ufeff", "blank"],
    ["# a note", "comment {# a note}"],
    ["  #", "comment {#}"],
    ["  #tag", "comment {#tag}"],
    ["  50 ml gin #tag", "pour 50 ml | gin #tag"],
    ["  50 ml gin# tag", "pour 50 ml | gin# tag"],
    ["  50 ml gin #", "pour 50 ml | gin {#}"],
    ["  50 ml gin # one # two", "pour 50 ml | gin {# one # two}"],
    ['  50 ml "a # b" # c', "pour 50 ml | [a # b] {# c}"],
    ['  50 ml Jack "a # b"', 'pour 50 ml | Jack "a {# b"}'], // quotes mean something only at the start of a name
  ])("%j", (text, expected) => expect(say(text)).toBe(expected));

  test.each([
    ["# allow too-strong: it is a nightcap", "too-strong", "it is a nightcap"],
    ["  50 ml gin  # allow unmeasurable:the small jigger", "unmeasurable", "the small jigger"],
    ["# allow too-strong", "too-strong", undefined],
    ["# allow too-strong: ", "too-strong", undefined],
    ["# allow too-strong because it is a nightcap", "too-strong", undefined],
    ["# allow the syrup to cool", undefined, undefined],
    ["# allow", undefined, undefined],
    ["# allowed: yes", undefined, undefined],
  ])("%s", (text, code, reason) => {
    const { comment, problem } = readLine(text);
    expect(comment?.allow?.code.text).toBe(code);
    expect(comment?.allow?.reason?.text).toBe(reason);
    expect(problem?.code).toBe(code && !reason ? "allow-without-reason" : undefined);
  });
});

test("a line that is longer than anybody writes is kept, unread", () => {
  const line = `  50 ml gin${" and gin".repeat(longestLine / 8)}`;
  expect(readLine(line)).toMatchObject({ content: { kind: "unread", text: line.trim() }, problem: { code: "syntax" } });
});
