/** What takes long is done in pieces; the texts may change in between. */
import { expect, test } from "vitest";
import { mentionsAhead, usesAhead } from "../../server/features/ahead.ts";
import { areUsersKnown, usersOf } from "../../server/features/users.ts";
import { entryNamed, houseIn, houseOf, root } from "../house/make.ts";

test.each([
  ["mentions", mentionsAhead],
  ["uses", usesAhead],
])("%s: a piece for each entry, of which later questions compute nothing", (_what, ahead) => {
  const house = houseIn("samples/halyard-room");
  const entries = [...house.documents()].flatMap(({ tree }) => tree.entries);
  expect([...ahead(house)]).toHaveLength(entries.length);
});

test("who uses what is gone through once, until something changes", () => {
  const house = houseOf("drink Slip\n  50 ml gin\n\nmenu Card\n  - Slip\n");
  expect(areUsersKnown(house)).toBe(false);
  expect(usersOf(house, entryNamed(house, "Slip"), "menu")).toHaveLength(1);
  expect([...usesAhead(house)]).toEqual([]);
  house.removeDocument(`${root}/spec.drink`);
  expect(areUsersKnown(house)).toBe(false);
});

test("a text that goes between two pieces is passed over", () => {
  const house = houseOf("drink Slip\n  50 ml gin\n\n=== other.drink\ndrink Rope\n  from: Slip\n");
  const pieces = usesAhead(house)[Symbol.iterator]();
  pieces.next();
  house.removeDocument(`${root}/other.drink`);
  expect(() => [...{ [Symbol.iterator]: () => pieces }]).not.toThrow();
});
