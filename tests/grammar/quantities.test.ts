import { expect, test } from "vitest";
import { readLine } from "../../grammar/line.ts";
import { say } from "./say.ts";

test.each([
  // amounts and how they are spelt
  ["50 ml gin", "50 ml | gin"],
  ["50ml gin", "50 ml | gin"],
  ["1.5 oz gin", "1.5 oz | gin"],
  [".5 oz gin", "0.5 oz | gin"],
  ["0.05 ml saline", "0.05 ml | saline"],
  ["1/2 oz gin", "0.5 oz | gin"],
  ["1⁄2 oz gin", "0.5 oz | gin"], // U+2044
  ["1 1/2 oz gin", "1.5 oz | gin"],
  ["1 1⁄2 oz gin", "1.5 oz | gin"],
  ["1½ oz gin", "1.5 oz | gin"],
  ["1 ½ oz gin", "1.5 oz | gin"],
  ["½ oz gin", "0.5 oz | gin"],
  ["⅔ oz gin", "0.6667 oz | gin"],
  ["1½oz gin", "1.5 oz | gin"],
  ["1 1/2oz gin", "1.5 oz | gin"],
  ["50\u00a0ml gin", "50 ml | gin"], // no-break space
  ["50\u202fml gin", "50 ml | gin"], // narrow no-break space
  ["50\u2009ml gin", "50 ml | gin"], // thin space
  ["50\tml\tgin", "50 ml | gin"],
  // units
  ["1 oz. gin", "1 oz | gin"],
  ["1 OZ gin", "1 oz | gin"],
  ["1 fl oz gin", "1 oz | gin"],
  ["1 fl. oz. gin", "1 oz | gin"],
  ["1 oz wt honey", "1 oz wt | honey"],
  ["2 bar spoons syrup", "2 barspoon | syrup"],
  ["2 dashes of clove bitters", "2 dash | clove bitters"],
  ["1 slice of lime", "1 slice | lime"],
  ["2 parts maple syrup", "2 part | maple syrup"],
  ["50 mlgin", "50 | mlgin"], // only the very next whole word is a unit
  ["50 mll gin", "50 | mll gin"],
  ["6 mint leaves", "6 | mint leaves"],
  ["1 egg white", "1 | egg white"],
  ["2 lemon wedges", "2 | lemon wedges"],
  ["1/2 lime, juiced", "0.5 | lime, juiced"],
  ["1 of lime", "1 | of lime"], // dropped only behind a unit
  ["3 cloves", "3 | cloves"], // with no name behind it, the piece is the name
  ["1 wedge, squeezed", "1 | wedge, squeezed"],
  ["1 wedge lime, squeezed", "1 wedge | lime, squeezed"],
  // ranges and estimates
  ["10-15 ml gin", "10..15 ml | gin"],
  ["10 - 15 ml gin", "10..15 ml | gin"],
  ["10–15 ml gin", "10..15 ml | gin"],
  ["10 to 15 ml gin", "10..15 ml | gin"],
  ["6-8 mint leaves", "6..8 | mint leaves"],
  ["½-1 oz gin", "0.5..1 oz | gin"],
  ["1-1½ oz gin", "1..1.5 oz | gin"],
  ["1/2-3/4 oz gin", "0.5..0.75 oz | gin"],
  ["about 3 g salt", "about 3 g | salt"],
  ["About 10 to 15 ml gin", "about 10..15 ml | gin"],
  // leads
  ["top soda water", "top→top - | soda water"],
  ["top to 180 ml soda water", "top to→top 180 ml | soda water"],
  ["top to about 180 ml soda water", "top to→top about 180 ml | soda water"],
  ["top 60 ml soda water", "top→top 60 ml | soda water"],
  ["to 100 g water", "to→to 100 g | water"],
  ["rinse absinthe", "rinse→rinse - | absinthe"],
  ["rinse 5 ml absinthe, discarded", "rinse→rinse 5 ml | absinthe, discarded"],
  ["some mint", "some→some - | mint"],
  ["hot sauce, to taste", "- | hot sauce, to taste"],
  ["hot sauce, smoked, To Taste", "- | hot sauce, smoked, To Taste"],
  // names that hold numbers
  ["30 ml 12 year rye", "30 ml | 12 year rye"],
  ["30 ml 7up", "30 ml | 7up"],
  ["15 ml 2:1 agave syrup", "15 ml | 2:1 agave syrup"],
  ["2 7up", "2 | 7up"],
  ["30 ml Blend #4", "30 ml | Blend #4"],
  ["30 ml top note", "30 ml | top note"],
  ["30 ml swap for or", "30 ml | swap for or"],
  ["30 ml to 10 drink", "30 ml | to 10 drink"],
  ['30 ml "Blend # 4", hot', "30 ml | [Blend # 4, hot]"],
  ["30 ml “clove bitters”", "30 ml | [clove bitters]"],
  ['30 ml Jack "the" rum', '30 ml | Jack "the" rum'],
  ["30 ml crème de cassis 🍋", "30 ml | crème de cassis 🍋"],
])("%s", (text, expected) => {
  expect(say(`  ${text}`)).toBe(`pour ${expected}`);
});

test.each([
  ["2,5 cl gin", "pour 2.5 cl | gin !decimal-comma", "2.5"],
  ["22,75 ml gin", "pour 22.75 ml | gin !decimal-comma", "22.75"],
  ["1,000 ml gin", "pour ? ml | gin !thousands-comma", undefined],
  ["1,000.5 ml gin", "pour ? ml | gin !thousands-comma", "1000.5"],
  ["1.000,5 ml gin", "pour ? ml | gin !thousands-comma", "1000.5"],
  ["1,000,000 ml gin", "pour ? ml | gin !thousands-comma", "1000000"],
  ["1-1/2 oz gin", "pour 1.5 oz | gin !hyphen-fraction", "1 1/2"],
  ["15-10 ml gin", "pour 15..10 ml | gin !reversed-range", "10-15"],
  ["15 to 10 ml gin", "pour 15..10 ml | gin !reversed-range", "10 to 15"],
  ["gin 50 ml", "pour turned 50 ml | gin !turned-pour", "50 ml gin"],
  ["7up 30 ml", "pour turned 30 ml | 7up !turned-pour", "30 ml 7up"],
  ["8-year rum about 50 ml", "pour turned about 50 ml | 8-year rum !turned-pour", "about 50 ml 8-year rum"],
  ["gin 50 ml, frozen", "pour turned 50 ml | gin !turned-pour", "50 ml gin, frozen"],
  ["Lemon juice: 25 ml", "pour turned 25 ml | Lemon juice !turned-pour", "25 ml Lemon juice"],
  ["Egg white: 1", "pour turned 1 | Egg white !turned-pour", "1 Egg white"],
  ["rum: 50 ml", "pour turned 50 ml | rum !turned-pour", "50 ml rum"],
  ["30 12 year rye", "pour 30 | 12 year rye !bare-count", undefined],
  ['30 ml "clove bitters', "pour 30 ml | [clove bitters] !unclosed-quote", '"clove bitters"'],
  ["30 ml “clove # bitters", "pour 30 ml | [clove] {# bitters} !unclosed-quote", "“clove”"],
  ["mint", "pour - | mint !missing-amount", undefined],
  ["gin 50", "pour - | gin 50 !missing-amount", undefined],
  ["50 ml", "pour 50 ml | - !syntax", undefined],
  ["50", "pour 50 | - !syntax", undefined],
  ["50 ml, frozen", "pour 50 ml | - !syntax", undefined],
  ["top", "pour top→top - | - !syntax", undefined],
  [", frozen", "pour - | - !syntax", undefined],
  ["***", "unread *** !syntax", undefined],
])("%s has one problem, and the fix where there is just one", (text, expected, instead) => {
  expect(say(`  ${text}`)).toBe(expected);
  expect(readLine(`  ${text}`).problem?.instead).toBe(instead);
});

test.each([
  ["2,5 cl gin", "2,5"],
  ["1-1/2 oz gin", "1-1/2"],
  ["about 15-10 ml gin", "15-10"],
  ["30 12 year rye", "12"],
  ['30 ml "clove', '"clove'],
  ["gin 50 ml  # note", "gin 50 ml"],
  ["½ oz 🍋 crème, 1", undefined],
])("the problem of “%s” stands under %j", (text, under) => {
  const line = `\t${text}`;
  const { problem } = readLine(line);
  expect(problem && line.slice(problem.start, problem.end)).toBe(under);
});
