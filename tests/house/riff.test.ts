import { expect, test } from "vitest";
import { flatten } from "../../server/house/riff.ts";
import { entryNamed, houseOf } from "./make.ts";

const parent = `drink Lantern
  family: sour
  glass: coupe
  method: shake 12 s
  garnish: lemon zest
  story: Of the lamp.
  50 ml aged rum, frozen
    or 50 ml brandy
  22.5 ml lemon juice
  15 ml sugar syrup
  top soda water
`;

/** The flattened pours as "quantity name / modifiers @ stage". */
function pours(riff: string, name = "Riff"): string[] {
  const house = houseOf(`${parent}drink ${name}\n  from: Lantern\n${riff}`);
  return flatten(house, entryNamed(house, name)).pours.map(
    (pour) =>
      `${pour.lead?.lead ?? ""}${pour.quantity?.numeral.text ?? ""} ${pour.ingredient.resolution.text} / ${pour.modifiers.map((one) => one.text).join(", ")} @ ${pour.stage}`,
  );
}
const inherited = [
  "50 aged rum / frozen @ vessel",
  "22.5 lemon juice /  @ vessel",
  "15 sugar syrup /  @ vessel",
  "top soda water /  @ after",
];

test("a riff without changes is its parent", () => expect(pours("")).toEqual(inherited));
test("swap keeps the quantity, place and stage; modifiers and alternatives go", () => {
  expect(pours("  swap aged rum for brandy\n")[0]).toBe("50 brandy /  @ vessel");
  const house = houseOf(`${parent}drink Riff\n  from: Lantern\n  swap aged rum for brandy\n`);
  expect(flatten(house, entryNamed(house, "Riff")).pours[0]!.alternatives).toEqual([]);
});
test("swap may bring its own quantity", () =>
  expect(pours("  swap aged rum for 60 ml brandy, chilled\n")[0]).toBe("60 brandy / chilled @ vessel"));
test("without takes the pour away", () => expect(pours("  without sugar syrup\n")).toHaveLength(3));
test("a pour of what is there replaces its quantity and keeps its modifiers", () => {
  expect(pours("  40 ml aged rum\n")[0]).toBe("40 aged rum / frozen @ vessel");
  expect(pours("  40 ml aged rum, chilled\n")[0]).toBe("40 aged rum / chilled @ vessel");
});
test("any other pour is added last in its stage", () => {
  expect(pours("  5 ml orange liqueur\n").at(-2)).toBe("5 orange liqueur /  @ vessel");
  expect(pours("  30 ml brut sparkling wine, after\n").at(-1)).toBe("30 brut sparkling wine / after @ after");
});
test("or binds to the pour above, across comments and blank lines", () => {
  const house = houseOf("drink X\n  20 ml gin\n\n  # or else\n  or vodka\n");
  const [pour] = flatten(house, entryNamed(house, "X")).pours;
  expect(pour!.alternatives.map((one) => `${one.quantity?.numeral.text} ${one.ingredient.resolution.text}`)).toEqual(["20 vodka"]);
});
test("changes that change nothing are told, and leave the rest alone", () => {
  const house = houseOf(`${parent}drink Riff\n  from: Lantern\n  swap kelp gin for brandy\n  without kelp gin\n`);
  const flat = flatten(house, entryNamed(house, "Riff"));
  expect(flat.problems.map((one) => `${one.line} ${one.kind} ${one.name}`)).toEqual(["2 missing kelp gin", "3 missing kelp gin"]);
  expect(flat.pours).toHaveLength(4);
});
test("a name that is poured twice needs its quantity, or all", () => {
  const twice = "drink Two\n  20 ml gin\n  10 ml gin, after\ndrink Riff\n  from: Two\n";
  const of = (change: string) => {
    const house = houseOf(`${twice}${change}`);
    const flat = flatten(house, entryNamed(house, "Riff"));
    return `${flat.pours.length} ${flat.problems.map((one) => one.kind).join()}`;
  };
  expect(of("  without gin\n")).toBe("2 ambiguous");
  expect(of("  without 10 ml gin\n")).toBe("1 ");
  expect(of("  without all gin\n")).toBe("0 ");
});
test("a riff inherits what makes the drink, not what is said of it", () => {
  const house = houseOf(`${parent}drink Riff\n  from: Lantern\n  garnish: none\n`);
  const flat = flatten(house, entryNamed(house, "Riff"));
  expect(flat.field("glass")?.field.value?.text).toBe("coupe");
  expect(flat.field("story")).toBeUndefined();
  expect(flat.field("garnish")).toBeUndefined();
  expect(flat.statedField("garnish")?.field.value?.text).toBe("none");
});
test("a riff of a riff is matched against the flattened parent", () => {
  const house = houseOf(`${parent}drink A\n  from: Lantern\n  swap aged rum for brandy\ndrink B\n  from: A\n  swap brandy for 30 ml gin\n`);
  expect(flatten(house, entryNamed(house, "B")).pours[0]!.ingredient.resolution.text).toBe("gin");
});
test("a riff of itself stands alone", () => {
  const house = houseOf("drink A\n  from: B\n  10 ml gin\ndrink B\n  from: A\n  10 ml rum\n");
  expect(flatten(house, entryNamed(house, "A")).pours).toHaveLength(1);
});
