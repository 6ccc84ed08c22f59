import { expect, test } from "vitest";
import { shortestKeeping } from "../../server/house/keeping.ts";
import { entryNamed, houseOf } from "./make.ts";

const keeping = (text: string, name = "Slip") => {
  const house = houseOf(text);
  return shortestKeeping(house, entryNamed(house, name));
};
const shelf =
  "stock lemon juice\n  kind: juice\n  keeps: 1 day chilled\n\nstock fino sherry\n  kind: fortified wine\n  keeps: 1 week chilled, opened\n\nprep cordial\n  keeps: 36 to 48 hours\n  100 ml lemon juice\n\nprep mix\n  100 ml lemon juice\n\n";

test("the shortest that is stated decides, as it is written", () => {
  expect(keeping(`${shelf}drink Slip\n  20 ml fino sherry\n  20 ml lemon juice\n`)).toMatchObject({
    text: "1 day chilled",
    name: "lemon juice",
  });
  expect(keeping(`${shelf}drink Slip\n  20 ml fino sherry\n  20 ml cordial\n`)).toMatchObject({ text: "36 to 48 hours", name: "cordial" });
});

test("of a drink poured in a drink, too", () =>
  expect(keeping(`${shelf}drink Slip\n  20 ml fino sherry\n\ndrink Deep\n  40 ml Slip\n`, "Deep")?.text).toBe("1 week chilled, opened"));

test("what nobody states is not worked out: neither for a prep from what is in it, nor from the larder, nor from a slip", () => {
  expect(keeping(`${shelf}drink Slip\n  20 ml mix\n`)).toBeUndefined();
  expect(keeping("drink Slip\n  20 ml lime juice\n")).toBeUndefined();
  expect(keeping("stock lime juice\n  keeps: until it turns\n\ndrink Slip\n  20 ml lime juice\n")).toBeUndefined();
  expect(keeping("stock lime juice\n  keeps: none\n\ndrink Slip\n  20 ml lime juice\n")).toBeUndefined();
});
