/** Who is a riff of whom and who pours what, one step at a time. What is expected follows from the specs themselves. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CallHierarchyItem, Range, TypeHierarchyItem } from "vscode-languageserver-types";
import { incomingCalls, outgoingCalls, prepareCallHierarchy } from "../../server/features/call-hierarchy.ts";
import { prepareTypeHierarchy, subtypes, supertypes } from "../../server/features/type-hierarchy.ts";
import type { House } from "../../server/house/house.ts";
import { documentsOf, houseIn, houseOf, root } from "../house/make.ts";
import { fixtureOf } from "./cursor.ts";

const bar = `stock harbour rum
  kind: spirit
  abv: 40 %
stock nutmeg
family slack
  note: A remark.
prep rum syrup
  100 g harbour rum
  100 g white sugar
drink Été Sour # a comment
  family: slack
  garnish: nutmeg; nutmeg
  50 ml harbour rum
    or 40 ml harbour rum
  20 ml rum syrup
  25 ml lemon juice
drink Low Water
  from: Été Sour
  swap harbour rum for 60 ml oloroso sherry
  without lemon juice
  method: stir
drink Neap
  family: sour
  from: Low Water
menu Winter
  - Été Sour 12
  - Neap 9
  - Été Sour 14
`;

const at = (mark: string, text = bar) => {
  const [before] = mark.split("<>");
  return fixtureOf(text.replace(mark.replace("<>", ""), `${before}<>${mark.slice(before!.length + 2)}`));
};
const place = ({ start, end }: Range) => `${start.line}:${start.character}-${end.character}`;
const named = (items: readonly { name: string; detail?: string }[] | null) => items?.map(({ name, detail }) => `${name} | ${detail}`);

describe("types", () => {
  const typeAt = (mark: string) => {
    const { house, document, position } = at(mark);
    const [item] = prepareTypeHierarchy(house, document, position) ?? [];
    return { house, item: item! };
  };

  test("a drink by its head, its riffs' `from`, a menu, with its strength and what is different", () => {
    for (const mark of ["drink Low W<>ater", "from: Low <>Water"]) {
      const { item } = typeAt(mark);
      expect(item).toMatchObject({ name: "Low Water", uri: `${root}/spec.drink` });
      expect(item.detail).toMatch(/^\d[\d.]* % vol · 60 ml oloroso sherry for 50 ml harbour rum; without lemon juice; another method$/);
      expect(place(item.range)).toBe("16:0-14");
      expect(place(item.selectionRange)).toBe("16:6-15");
    }
    expect(typeAt("- N<>eap").item.name).toBe("Neap");
    expect(typeAt("drink É<>té").item.detail).toMatch(/^\d[\d.]* % vol$/);
  });

  test("up: the drink it is a riff of, then the family it names itself; down: riffs, and a family's drinks", () => {
    const { house, item } = typeAt("drink N<>eap");
    const above = supertypes(house, item)!;
    expect(above.map(({ name }) => name)).toEqual(["Low Water", "sour"]);
    const [parent, family] = above as [TypeHierarchyItem, TypeHierarchyItem];
    expect(subtypes(house, parent)!.map(({ name }) => name)).toEqual(["Neap"]);
    expect(family.detail).toBe("family · from the larder");
    expect(place(family.range)).toBe("22:10-14");
    expect(subtypes(house, family)!.map(({ name }) => name)).toEqual(["Neap"]);
    expect(supertypes(house, family)).toEqual([]);
    const [grandparent] = supertypes(house, parent)!;
    expect(named(supertypes(house, grandparent!))).toEqual(["slack | family"]);
    expect(subtypes(house, typeAt("family sl<>ack").item)!.map(({ name }) => name)).toEqual(["Été Sour"]);
  });

  test("nothing for a stock, a prep, a menu, a blank", () => {
    for (const mark of ["stock harb<>our", "20 ml rum s<>yrup", "menu Win<>ter", "  <>method: stir"]) {
      const { house, document, position } = at(mark);
      expect(prepareTypeHierarchy(house, document, position), mark).toBeNull();
    }
  });

  test("drinks that are riffs of one another have none above them, and end", () => {
    const { house, document, position } = fixtureOf("drink A<>\n  from: B\ndrink B\n  from: A\n");
    const [item] = prepareTypeHierarchy(house, document, position)!;
    expect([supertypes(house, item!), subtypes(house, item!)]).toEqual([[], []]);
  });
});

describe("calls", () => {
  const callAt = (mark: string, text = bar) => {
    const { house, document, position } = at(mark, text);
    const [item] = prepareCallHierarchy(house, document, position) ?? [];
    return { house, item: item! };
  };
  const incoming = (house: House, item: CallHierarchyItem) =>
    incomingCalls(house, item)!.map(({ from, fromRanges }) => `${from.name} | ${from.detail} | ${fromRanges.map(place).join(" ")}`);
  const outgoing = (house: House, item: CallHierarchyItem) =>
    outgoingCalls(house, item)!.map(({ to, fromRanges }) => `${to.name} | ${to.detail} | ${fromRanges.map(place).join(" ")}`);

  test("who pours it, with how much and where; what is inherited stands at the riff's name", () => {
    const { house, item } = callAt("20 ml rum s<>yrup");
    expect(item).toMatchObject({ name: "rum syrup", detail: "prep" });
    expect(incoming(house, item)).toEqual([
      "Été Sour | drink · 20 ml | 14:8-17",
      "Low Water | drink · 20 ml | 16:6-15",
      "Neap | drink · 20 ml | 21:6-10",
    ]);
    const rum = callAt("stock harb<>our").item;
    expect(incoming(house, rum)).toEqual(["rum syrup | prep · 100 g | 7:8-19", "Été Sour | drink · 50 ml, or 40 ml | 12:8-19 13:13-24"]);
  });

  test("who garnishes with it, and which menus list a drink", () => {
    const { house, item } = callAt("stock nut<>meg");
    expect(incoming(house, item)[0]).toBe("Été Sour | drink · garnish | 11:11-17 11:19-25");
    expect(incoming(house, callAt("from: Été <>Sour").item)).toEqual(["Winter | menu | 25:4-12 27:4-12"]);
  });

  test("what it pours, down to stocks; the larder's stand where they are called", () => {
    const { house, item } = callAt("drink É<>té");
    const calls = outgoingCalls(house, item)!;
    expect(outgoing(house, item)).toEqual([
      "harbour rum | stock · 50 ml, or 40 ml | 12:8-19 13:13-24",
      "rum syrup | prep · 20 ml | 14:8-17",
      "lemon juice | stock · 25 ml · from the larder | 15:8-19",
      "nutmeg | stock · garnish | 11:11-17 11:19-25",
    ]);
    const lemon = calls[2]!.to;
    expect([lemon.uri, place(lemon.range)]).toEqual([`${root}/spec.drink`, "15:8-19"]);
    expect(outgoing(house, lemon)).toEqual([]);
    expect(incoming(house, lemon)).toEqual(["Été Sour | drink · 25 ml | 15:8-19"]);
    expect(outgoing(house, calls[1]!.to)[0]).toBe("harbour rum | stock · 100 g | 7:8-19");
    expect(outgoing(house, callAt("menu Win<>ter").item)).toEqual(["Été Sour | drink | 25:4-12 27:4-12", "Neap | drink | 26:4-8"]);
  });

  test("what a riff has taken out it does not pour", () => {
    const { house, item } = callAt("drink Low <>Water");
    expect(outgoing(house, item)).toEqual([
      "oloroso sherry | stock · 60 ml · from the larder | 18:29-43",
      "rum syrup | prep · 20 ml | 16:6-15",
      "nutmeg | stock · garnish | 16:6-15",
    ]);
  });

  test("preps that are made of one another answer one step, each time anew", () => {
    const { house, item } = callAt("prep o<>ne", "prep one\n  10 g two\n  10 g one\nprep two\n  10 g one\n");
    const [two] = outgoingCalls(house, item)!;
    expect(two!.to.name).toBe("two");
    expect(outgoing(house, two!.to)).toEqual(["one | prep · 10 g | 4:7-10"]);
    expect(incoming(house, two!.to)).toEqual(["one | prep · 10 g | 1:7-10"]);
  });

  test("nothing for a glass, a family, an unknown name", () => {
    for (const mark of ["family sl<>ack", "family: sl<>ack", "  met<>hod: stir"]) {
      const { house, document, position } = at(mark);
      expect(prepareCallHierarchy(house, document, position), mark).toBeNull();
    }
  });
});

test("an item is found again after an edit above it, and answers nothing once its entry has gone or has another name", () => {
  const { house, document, position } = at("drink Low W<>ater");
  const [type] = prepareTypeHierarchy(house, document, position)!;
  const [call] = prepareCallHierarchy(house, document, position)!;
  const set = (text: string) => house.setDocument(documentsOf(`=== spec.drink\n${text}`)[0]!);
  set(`# above\n\n${bar}`);
  expect(subtypes(house, type!)!.map(({ name, range }) => `${name} ${range.start.line}`)).toEqual(["Neap 23"]);
  expect(outgoingCalls(house, call!)![0]!.fromRanges[0]!.start.line).toBe(20);
  set(bar.replaceAll("Low Water", "High Water"));
  expect([supertypes(house, type!), subtypes(house, type!), incomingCalls(house, call!), outgoingCalls(house, call!)]).toEqual([
    null,
    null,
    null,
    null,
  ]);
  house.removeDocument(document.uri);
  expect([supertypes(house, type!), incomingCalls(house, call!)]).toEqual([null, null]);
});

test("of two entries of one name the nearer to where it stood is meant", () => {
  const { house, document, position } = fixtureOf("drink Slip\n  50 ml gin\ndrink Rope\n\ndrink Sl<>ip\n  50 ml aged rum\n");
  const [item] = prepareCallHierarchy(house, document, position)!;
  expect(outgoingCalls(house, item!)!.map(({ to }) => to.name)).toEqual(["aged rum"]);
});

const inside = (inner: Range, outer: Range) =>
  (inner.start.line > outer.start.line || (inner.start.line === outer.start.line && inner.start.character >= outer.start.character)) &&
  (inner.end.line < outer.end.line || (inner.end.line === outer.end.line && inner.end.character <= outer.end.character));

test("in the samples up is the inverse of down, calls of both sides agree, and selections lie in their ranges", () => {
  const house = houseIn("samples/halyard-room");
  const [types, calls] = [new Map<string, TypeHierarchyItem>(), new Map<string, CallHierarchyItem>()];
  const key = ({ data }: { data?: unknown }) => {
    const { uri, kind, name } = data as { uri: string; kind: string; name: string };
    return `${uri} ${kind} ${name}`;
  };
  for (const document of house.documents()) {
    for (const [index, { name }] of document.tree.entries.entries()) {
      const position = { line: document.tree.starts[index]!, character: name?.start ?? 0 };
      for (const item of prepareTypeHierarchy(house, document, position) ?? []) types.set(key(item), item);
      for (const item of prepareCallHierarchy(house, document, position) ?? []) calls.set(key(item), item);
    }
  }
  let links = 0;
  for (const item of [...types.values(), ...calls.values()]) expect(inside(item.selectionRange, item.range)).toBe(true);
  for (const item of types.values()) {
    for (const one of supertypes(house, item)!) {
      links++;
      expect(subtypes(house, one)!.map(key)).toContain(key(item));
    }
    for (const one of subtypes(house, item)!) expect(supertypes(house, one)!.map(({ name }) => name)).toContain(item.name);
  }
  for (const item of calls.values()) {
    for (const { to, fromRanges } of outgoingCalls(house, item)!) {
      links++;
      const back = incomingCalls(house, to)!.find(({ from }) => key(from) === key(item));
      expect(back!.fromRanges.map(place).sort()).toEqual(fromRanges.map(place).sort());
      for (const range of fromRanges) expect(inside(range, item.range)).toBe(true);
    }
  }
  expect(links).toBeGreaterThan(100);
});

const pieces = fc.constantFrom(
  ...'50 ml |Slip|Fog|mix|gin|lemon juice|, |; |"|“rye”|swap |or |without | for |from: |family: |sour|garnish: |aka: |- |# |🍋|drink |prep '.split(
    "|",
  ),
);
const line = fc.oneof(
  { weight: 4, arbitrary: fc.array(pieces, { maxLength: 5 }).map((all) => `  ${all.join("")}`) },
  fc.array(pieces, { maxLength: 4 }).map((all) => all.join("")),
);

test("any position in any text answers, upwards and downwards", () =>
  fc.assert(
    fc.property(
      fc.constantFrom("drink Slip", "prep mix", "menu m", "", "stock gin"),
      fc.array(line, { minLength: 1, maxLength: 6 }),
      fc.nat(7),
      fc.nat(40),
      (head, lines, at, character) => {
        const house = houseOf(
          `=== other.drink\ndrink Fog\n  from: Slip\n  20 ml mix\nprep mix\n  10 g gin\n=== spec.drink\n${[head, ...lines].join("\n")}`,
        );
        const document = house.document(`${root}/spec.drink`)!;
        const position = { line: at, character };
        for (const item of prepareTypeHierarchy(house, document, position) ?? []) {
          expect(inside(item.selectionRange, item.range)).toBe(true);
          expect(supertypes(house, item)).not.toBeNull();
          expect(subtypes(house, item)).not.toBeNull();
        }
        for (const item of prepareCallHierarchy(house, document, position) ?? []) {
          expect(inside(item.selectionRange, item.range)).toBe(true);
          expect(incomingCalls(house, item)).not.toBeNull();
          expect(outgoingCalls(house, item)).not.toBeNull();
        }
      },
    ),
    { numRuns: 500 },
  ));
