import fc from "fast-check";
import { expect, test } from "vitest";
import { read } from "../../grammar/read.ts";
import type { House } from "../../server/house/house.ts";
import { fold } from "../../server/house/names.ts";
import { usageOf } from "../../server/house/usage.ts";
import { houseOf, root } from "./make.ts";

function usageIn(house: House, file = "spec.drink") {
  return usageOf(house, house.scopeOf(house.document(`${root}/${file}`)!));
}

function change(house: House, file: string, text: string): void {
  house.setDocument({ uri: `${root}/${file}`, version: null, tree: read(text) });
}

const sours =
  "drink A\n  25 ml lemon juice\n\ndrink B\n  from: A\n  25ml lemon juice, chilled\n  2 dashes clove bitters\n\ndrink C\n  30 ml lemon juice\n";

test("how many entries pour a thing, and the amount of most", () => {
  const usage = usageIn(houseOf(`${sours}\nprep Mix\n  500 g lemon juice\n`));
  expect(usage.poured("drink", ["lemon juice"])).toEqual({ count: 3, amount: "25 ml" });
  expect(usage.poured("prep", ["lemon juice"])).toEqual({ count: 1, amount: "500 g" });
  expect(usage.poured("drink", [fold("clove bitters")])).toEqual({ count: 1, amount: "2 dashes" });
  expect(usage.poured("drink", ["gin"])).toEqual({ count: 0 });
  expect(usage.unit("ml")).toBe(3);
});

test("alternatives and what is swapped in count, what goes out does not; top and rinse are amounts", () => {
  const usage = usageIn(
    houseOf("drink A\n  50 ml gin\n    or 45 ml rum\n  top soda water\n\ndrink B\n  from: A\n  swap gin for 60 ml rye\n  without rum\n"),
  );
  const poured = (name: string) => usage.poured("drink", [name]);
  expect(poured("rum")).toEqual({ count: 1, amount: "45 ml" });
  expect(poured("rye")).toEqual({ count: 1, amount: "60 ml" });
  expect(poured("gin").count).toBe(1);
  expect(poured("soda water").amount).toBe("top");
  expect(usage.led("drink", ["soda water"], "top")).toBe(1);
});

test("an amount that does not read is none", () => {
  expect(usageIn(houseOf("drink A\n  2,5 cl gin\n")).poured("drink", ["gin"])).toEqual({ count: 1 });
});

test("who pours it, and who is a riff of it", () => {
  const users = usageIn(houseOf("drink A\n  5 ml gin\n\ndrink B\n  from: A\n\ndrink C\n  50 ml A\n")).usersOf(["a"]);
  expect([...users].map(({ name }) => name?.text)).toEqual(expect.arrayContaining(["B", "C"]));
  expect(users.size).toBe(2);
});

test("words of fields, the most frequent first", () => {
  const usage = usageIn(
    houseOf(
      "drink A\n  tags: smoky, winter\n  garnish: none\n\ndrink B\n  tags: winter\n  method: shake 9 s; strain\n\nstock s\n  price: 9.00 per kg\n",
    ),
  );
  expect(usage.words("drink", "tags")).toEqual([
    ["winter", 2],
    ["smoky", 1],
  ]);
  expect(usage.words("drink", "method").map(([text]) => text)).toEqual(["shake 9 s", "strain"]);
  expect(usage.words("drink", "garnish")).toEqual([]);
  expect(usage.words("stock", "price per")).toEqual([["per kg", 1]]);
});

test("a house below counts what is above it, and not the other way round", () => {
  const house = houseOf(
    "=== house.drink\nhouse Above\n\ndrink A\n  25 ml gin\n=== below/house.drink\nhouse Below\n\ndrink B\n  50 ml gin\n  5 ml rum\n",
  );
  expect(usageIn(house, "below/house.drink").poured("drink", ["gin"]).count).toBe(2);
  expect(usageIn(house, "house.drink").poured("drink", ["gin"]).count).toBe(1);
  expect(usageIn(house, "house.drink").poured("drink", ["rum"]).count).toBe(0);
});

test("after any edits the counts are those of the texts as they stand", () => {
  const line = fc.constantFrom(
    "  25 ml gin",
    "  50 ml gin",
    "  2 dashes rum",
    "  top soda",
    "    or rum",
    "  from: A",
    "  tags: x, y",
    "drink A",
    "drink B",
    "prep A",
    "house H",
    "",
  );
  const text = fc.array(line, { maxLength: 6 }).map((lines) => lines.join("\n"));
  const edit = fc.tuple(fc.constantFrom("a.drink", "b.drink", "below/c.drink"), fc.option(text));
  const seen = (house: House) => {
    const usage = usageIn(house);
    const by = ["drink", "prep"] as const;
    return {
      poured: by.flatMap((kind) => ["gin", "rum", "soda"].map((name) => usage.poured(kind, [name]))),
      users: usage.usersOf(["a"]).size,
      words: by.map((kind) => usage.words(kind, "tags")),
      units: ["ml", "dash"].map((id) => usage.unit(id)),
      names: [...usage.names()].map(({ name }) => name).sort(),
    };
  };
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 8 }), (edits) => {
      const house = houseOf("drink Here\n  5 ml gin\n");
      const texts = new Map<string, string>();
      for (const [file, now] of edits) {
        if (now === null) house.removeDocument(`${root}/${file}`);
        else change(house, file, now);
        if (now === null) texts.delete(file);
        else texts.set(file, now);
        seen(house);
      }
      const fresh = houseOf("drink Here\n  5 ml gin\n");
      for (const [file, now] of texts) change(fresh, file, now);
      expect(seen(house)).toEqual(seen(fresh));
    }),
    { numRuns: 150 },
  );
});

test("an edit counts the entries that it changed, and no other", () => {
  const house = houseOf(sours);
  const before = usageIn(house).usersOf(["lemon juice"]);
  change(house, "spec.drink", sours.replace("30 ml", "35 ml"));
  const after = usageIn(house).usersOf(["lemon juice"]);
  expect([...after].filter((entry) => before.has(entry)).map(({ name }) => name?.text)).toEqual(["A", "B"]);
});
