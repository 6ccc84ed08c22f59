/** Tables out and in again. That they come back the same is the project's own promise; the form of CSV is RFC 4180's. */
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import { formatEntry } from "../../grammar/format.ts";
import { read } from "../../grammar/read.ts";
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../../server/house/house.ts";
import { unquoted } from "../../server/house/scope.ts";
import { writtenName } from "../../server/house/write.ts";
import { columns, lineWords, type TableName, tableOf } from "../../server/reports/columns.ts";
import { exportTable } from "../../server/reports/export-csv.ts";
import { importCsv } from "../../server/reports/import-csv.ts";
import type { Imported } from "../../server/reports/imported.ts";
import { anyBody, anyName, meaningOf } from "../features/refactorings/drinks.ts";
import { houseIn, houseOf } from "../house/make.ts";

const tables: readonly TableName[] = ["stock", "specs"];

function imported(csv: string, as?: TableName): Imported {
  const made = importCsv(csv, as);
  if ("problem" in made) throw new Error(made.problem);
  return made;
}

const entriesOf = (house: House) => [...house.documents()].flatMap(({ tree }) => tree.entries);

/** What an entry says, whatever the order of its fields and the blanks. Comments at the margin behind it are not its own. */
function saying(entry: Entry) {
  const { kind, name, lines } = read(formatEntry(entry).join("\n")).entries[0]!;
  const fields: string[] = [];
  const others: string[] = [];
  const last = lines.findLastIndex(({ content, text }) => content.kind !== "blank" && !(content.kind === "comment" && /^\S/.test(text)));
  for (const { text, content } of lines.slice(1, last + 1)) {
    const words = text
      .trim()
      .replace(/\s+/g, " ")
      .replace(/(^| )# ?/g, "$1# ");
    if (content.kind === "prose") fields.push(`${fields.pop()} ${words}`);
    else if (content.kind === "field") fields.push(words);
    else if (words) others.push(words);
  }
  return {
    kind,
    name: unquoted(name!),
    head: lines[0]!.comment?.text,
    fields: fields.map((one) => one.replace(/: +/, ": ")).sort(),
    others,
  };
}

const isOf = (table: TableName) => (entry: Entry) =>
  entry.name && (entry.kind === "stock" || entry.kind === "drink" || entry.kind === "prep") && tableOf(entry.kind) === table;

/** `faulty`: lines that do not read well, which are told when they are read in. */
function comesBack(house: House, faulty: readonly string[] = []): number {
  let count = 0;
  const told: string[] = [];
  for (const table of tables) {
    const entries = entriesOf(house).filter(isOf(table));
    const { text: csv, leftOut } = exportTable(house, entriesOf(house), table);
    expect(leftOut.filter((sentence) => !sentence.includes("between the entries"))).toEqual([]);
    const { text, misread, remarks } = imported(csv);
    expect(remarks).toEqual([]);
    told.push(...misread.map((one) => one.text));
    expect(read(text).entries.filter(isOf(table)).map(saying)).toEqual(entries.map(saying));
    count += entries.length;
  }
  expect(told).toEqual(faulty);
  return count;
}

test.each(["samples/halyard-room", "server/larder"])("every entry of %s comes back the same", (folder) => {
  expect(comesBack(houseIn(folder))).toBeGreaterThan(30);
});

test("what stands in no column of its own comes back too", () => {
  const house = houseOf(`stock navy rum  # two bottles left
  # by the case only
  abv: 57 %  # on the label
  shelf: third from the left
  notes: Old.
    Older.
  notes: Oldest.

stock "Over # Under"
  origin: '=HYPERLINK
  tags: -winter

stock '=sum
  aka: +one; =two

drink Slip  # off the card
  # stronger than it looks
  method: shake 12 s # hard
  glass: shot
  shelf: none
  50 ml navy rum, frozen  # by weight
    # this or that
    or 45 ml "Over # Under", at -18 C
  gin 10 ml
  top to 180 ml soda water
  rinse absinthe, discarded
  about 3 g sea salt
  10 to 15 ml lime juice
  2,5 cl water
  steps:
    One.

      Two, deeper.
  hot sauce, to taste
  some mint

drink Slip, Low
  from: Slip
  swap navy rum for 60 ml "12 Bells", chilled
  swap gin for two for gin for one
  without all mint
  without 25 ml water
`);
  expect(comesBack(house, ["gin 10 ml", "2,5 cl water"])).toBe(5);
});

test("a finding that is let stand by the line above a field is let stand by the field's own", () => {
  const house = houseOf(
    "drink Slip\n  # allow glass-too-small: drunk at once\n  glass: shot\n  # as it comes\n  garnish: none\n  50 ml gin\n",
  );
  expect(imported(exportTable(house, entriesOf(house), "specs").text).text).toBe(
    "drink Slip\n  glass: shot # allow glass-too-small: drunk at once\n  garnish: none\n\n  # as it comes\n  50 ml gin\n",
  );
});

test("any drink of any name comes back the same drink", () =>
  fc.assert(
    fc.property(anyName, anyBody, (name, body) => {
      const before = houseOf(`drink ${writtenName(name)}\n${body}`);
      const after = houseOf(imported(exportTable(before, entriesOf(before), "specs").text).text);
      expect(comesBack(before)).toBe(1);
      const [one, other] = [before, after].map((house) => entriesOf(house).find(({ kind }) => kind === "drink")!.name!.text);
      expect(meaningOf(after, other!)).toEqual(meaningOf(before, one!));
    }),
    { numRuns: 60 },
  ));

test("what a spreadsheet would run or take for a date is marked as text, and read without its mark", () => {
  const house = houseOf("drink -Slip\n  tasted: 2026-02-11\n  guest: @ the pier\n  1/2 oz '=gin\n  10-15 ml '10-15\n  1 1/2 oz rum\n");
  const { text: csv } = exportTable(house, entriesOf(house), "specs");
  const cells = parse(csv)
    .flat()
    .filter((cell: string) => cell.startsWith("'"));
  expect(cells).toEqual(["'-Slip", "'1/2", "''=gin", "'@ the pier", "'2026-02-11", "'-Slip", "'10-15", "''10-15", "'-Slip"]);
  expect(comesBack(house)).toBe(1);
});

test("two drinks of one name cannot be told apart in a table, and that is said", () => {
  const house = houseOf("drink Slip\n  50 ml gin\n\ndrink slip\n  60 ml gin\n\ndrink\n  5 ml gin\n");
  const { text, leftOut } = exportTable(house, entriesOf(house), "specs");
  expect(leftOut).toEqual(["There is more than one drink “slip”: the table has the first.", "1 entry without a name is not in the table."]);
  expect(parse(text)).toHaveLength(2);
});

test("the columns are always all there, in one order, each once", () => {
  for (const table of tables) {
    const names = columns[table].map(({ name }) => name);
    expect(parse(exportTable(houseOf(""), [], table).text)).toEqual([names]);
    expect(new Set(names).size).toBe(names.length);
  }
});

test.each([
  ["semicolons, decimal commas", "\uFEFFname;kind;abv;price\r\nnavy rum;spirit;54,5 %;26,50 per 700 ml\r\n", 2],
  ["tabs", "name\tkind\tabv\tprice\nnavy rum\tspirit\t54.5 %\t26.50 per 700 ml\n", 0],
  ["a stated separator", "sep=;\nname;kind;abv;price\nnavy rum;spirit;54.5 %;26.50 per 700 ml", 0],
  ["another order, other case", "ABV,Price, NAME ,Kind\r54.5 %,26.50 per 700 ml,navy rum,spirit\r", 0],
  ["empty rows", ",,,\nname,kind,abv,price\n\n,,,\nnavy rum,spirit,54.5 %,26.50 per 700 ml\n,,,\n", 0],
])("%s read the same", (_, csv, commas) => {
  const { text, misread, remarks } = imported(csv);
  expect({ text, misread }).toEqual({
    text: "stock navy rum\n  kind: spirit\n  abv: 54.5 %\n  price: 26.50 per 700 ml\n".replace(
      /kind: spirit\n {2}abv: 54.5 %\n {2}price: 26.50 per 700 ml/,
      csv.startsWith("ABV") ? "abv: 54.5 %\n  price: 26.50 per 700 ml\n  kind: spirit" : "$&",
    ),
    misread: [],
  });
  expect(remarks).toEqual(commas ? [`${commas} decimal commas are written as points.`] : []);
});

test.each([
  ["name,abv\nrum,strong\n", "row 2, column “abv”", "strong", "# not understood, abv: strong"],
  ["name,sugar\nsyrup,60 %\n", "row 2, column “sugar”", "60 %", "# not understood, sugar: 60 %"],
  ["name,colour\nrum,red\ngin,none\n", "column “colour”, 2 cells from row 2 on", "red", "# not understood, colour: red"],
  ["name,abv,abv\nrum,40 %,41 %\n", "column “abv”, 1 cell from row 2 on", "41 %", "# not understood, abv: 41 %"],
  ["name,abv\nrum,40 %,again\n", "column number 3, 1 cell from row 2 on", "again", "# not understood, number 3: again"],
  ["name,abv\n,40 %\n", "row 2, column “abv”", "40 %", "# not understood, abv: 40 %"],
  ["drink,amount,unit,ingredient\nSlip,lots,ml,gin\n", "row 2", "lots | ml | gin", "# not understood, row 2: lots | ml | gin"],
  ['drink,amount,unit,ingredient\nSlip,"1,000",ml,gin\n', "row 2", "1,000 | ml | gin", "# not understood, row 2: 1,000 | ml | gin"],
  ["drink,amount,unit,ingredient\nSlip,50,furlongs,gin\n", "row 2", "50 | furlongs | gin", "# not understood, row 2: 50 | furlongs | gin"],
  ["drink,line,ingredient\nSlip,nor,gin\n", "row 2", "nor | gin", "# not understood, row 2: nor | gin"],
  ["drink,line,ingredient\nSlip,swap,gin\n", "row 2", "swap | gin", "# not understood, row 2: swap | gin"],
  ["drink,ingredient\nSlip,gin\n", "row 2", "gin", "gin"],
  ["prep,glass,ingredient,amount\nsyrup,coupe,sugar,1\n", "row 2, column “glass”", "coupe", "# not understood, glass: coupe"],
  ["drink,glass\nSlip,coupe\nSlip,rocks\n", "row 3, column “glass”", "rocks", "# not understood, glass: rocks"],
  ["drink,prep\nSlip,syrup\n", "row 2, column “prep”", "syrup", "# not understood, prep: syrup"],
  ["drink,line,remark\nSlip,as written,50 ml of\n", "row 2, column “remark”", "50 ml of", "50 ml of"],
])("%j is told, and kept", (csv, where, text, kept) => {
  const made = imported(csv);
  expect(made.misread.map((one) => [one.where, one.text])).toEqual([[where, text]]);
  expect(made.misread[0]!.why).toMatch(/^[“A-Z0-9].*\.$/);
  expect(made.text.split("\n").map((line) => line.trim())).toContain(kept);
});

test("rows of one drink may stand anywhere, and a row without a name goes on with the one above", () => {
  const { text, misread } = imported(
    "drink,amount,unit,ingredient,glass\nSlip,50,ml,gin,coupe\n,10,ml,lime juice,\nTaut,60,ml,rum,\nSLIP,5,ml,syrup,coupe\n",
  );
  expect(misread).toEqual([]);
  expect(text).toBe("drink Slip\n  glass: coupe\n\n  50 ml gin\n  10 ml lime juice\n  5 ml syrup\n\ndrink Taut\n  60 ml rum\n");
});

test("the word before an amount, the amount and its unit may share a cell", () => {
  const { text, misread } = imported(
    "drink,how,amount,unit,ingredient\nSlip,,50 ml,,gin\nSlip,,top to 180,ml,soda\nSlip,rinse 5,,ml,absinthe\nSlip,,some,,mint\n",
  );
  expect(misread).toEqual([]);
  expect(text).toBe("drink Slip\n  50 ml gin\n  top to 180 ml soda\n  rinse 5 ml absinthe\n  some mint\n");
});

test("an amount without a unit is told where it is hardly a count", () => {
  const { text, misread } = imported("drink,amount,ingredient\nSlip,50,gin\nSlip,1,egg white\nSlip,2,limes\nSlip,22.5,lime juice\n");
  expect(text).toBe("drink Slip\n  50 gin\n  1 egg white\n  2 limes\n  22.5 lime juice\n");
  expect(misread.map((one) => [one.where, one.text])).toEqual([
    ["drink “Slip”", "50 gin"],
    ["drink “Slip”", "22.5 lime juice"],
  ]);
});

test("line breaks stay in prose, and become blanks elsewhere", () => {
  const { text, misread } = imported(
    'drink,guest,garnish,amount,unit,ingredient\n"Slip\nKnot","One.\n\n  Two.","lime\nwheel",50,ml,"dry\ngin"\n',
  );
  expect(misread).toEqual([]);
  expect(text).toBe("drink Slip Knot\n  guest:\n    One.\n\n      Two.\n  garnish: lime wheel\n\n  50 ml dry gin\n");
});

test.each([
  ["", "There is nothing in this file."],
  ["\n,,\n", "There is nothing in this file."],
  ["bottle,size\nrum,700\n", "The first row names no table: “bottle”, “size”."],
  ['name,abv\n"rum,40 %\n', "This does not read as CSV"],
])("%j is refused with the reason", (csv, problem) => {
  const made = importCsv(csv);
  expect("problem" in made && made.problem).toContain(problem);
});

/** Cells that a sheet may hold: fields' own examples, hostile ones, and anything. */
const anyCell = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      "",
      "50",
      "2,5",
      "1,000",
      "ml",
      "cl",
      "lime juice",
      "Slip",
      "or",
      "swap",
      "without",
      "comment",
      "as written",
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      "=1+1",
      "'=x",
      "''",
      '"',
      "“a",
      "# allow x-y",
      "a # b",
      "drink Slip",
      "  stock x",
      "story: x",
      "- x 3",
      "none",
      "top",
      ";",
    ),
  },
  { weight: 2, arbitrary: fc.constantFrom(...columns.specs.map(({ example }) => example), ...columns.stock.map(({ example }) => example)) },
  { weight: 1, arbitrary: fc.string({ unit: "grapheme", maxLength: 12 }) },
  {
    weight: 1,
    arbitrary: fc
      .array(fc.constantFrom("a", " ", "\n", "\r", "\t", ",", ";", ":", "#", '"', "5", "-"), { maxLength: 10 })
      .map((all) => all.join("")),
  },
);
const anyHead = fc.constantFrom(
  "name",
  "drink",
  "prep",
  "colour",
  "",
  "name",
  ...columns.specs.map(({ name }) => name),
  "kind",
  "price",
  "other lines",
);

/** As the output may show it: marks of formulas gone, commas as points, no blanks, no quotation marks. */
const bare = (text: string) =>
  text
    .replace(/(\d),(?=\d)/g, "$1.")
    .replace(/["“”'#\s]/g, "")
    .toLowerCase();

test("whatever a table holds, every cell is in the text or told, and the text reads without a line out of place", () =>
  fc.assert(
    fc.property(
      fc.constantFrom(...tables),
      fc.array(anyHead, { minLength: 1, maxLength: 9 }),
      fc.array(fc.array(anyCell, { maxLength: 10 }), { maxLength: 6 }),
      (as, head, rows) => {
        const quoted = (cells: readonly string[]) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(",");
        const made = importCsv([head, ...rows].map(quoted).join("\n"), as);
        if ("problem" in made) {
          expect(head.map(bare).filter((cell) => columns[as].some(({ name }) => bare(name) === cell))).toEqual([]);
          return;
        }
        const text = bare(made.text);
        // What a row is shows in how it is written.
        const cells = rows.flatMap((row) =>
          row.filter((cell, index) => head[index] !== "line" || !lineWords.some((word) => word === cell)),
        );
        for (const cell of cells) {
          for (const line of cell.split(/[\r\n]+/)) {
            const words = bare(line.trim());
            expect({ cell, there: text.includes(words) || made.misread.some((one) => bare(one.text).includes(words)) }).toEqual({
              cell,
              there: true,
            });
          }
        }
        for (const entry of read(made.text).entries) expect(["stock", "drink", "prep", "preamble"]).toContain(entry.kind);
      },
    ),
    { numRuns: 400 },
  ));

test("any text at all is read or refused, and never throws", () =>
  fc.assert(
    fc.property(fc.string({ unit: "grapheme" }), fc.constantFrom(undefined, ...tables), (text, as) => {
      const made = importCsv(text, as);
      if ("problem" in made) expect(made.todo).not.toBe("");
    }),
  ));

test("ten thousand rows come to ten thousand entries, and one strange column to one line of the report", () => {
  const rows = Array.from({ length: 10_000 }, (_, index) => `rum ${index}x,spirit,40 %,red`);
  const { entries, misread } = imported(`name,kind,abv,colour\n${rows.join("\n")}\n`);
  expect({ entries, told: misread.map(({ where }) => where) }).toEqual({
    entries: 10_000,
    told: ["column “colour”, 10000 cells from row 2 on"],
  });
});
