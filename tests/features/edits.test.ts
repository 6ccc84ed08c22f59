import { describe, expect, test } from "vitest";
import type { TextDocumentEdit } from "vscode-languageserver-types";
import { read } from "../../grammar/read.ts";
import { toWorkspaceEdit } from "../../server/features/edits.ts";
import { quickFixes } from "../../server/features/quick-fixes.ts";
import type { Finding, Fix } from "../../server/house/finding.ts";
import { House } from "../../server/house/house.ts";
import { readLarder } from "../../server/larder/larder.ts";
import { rules } from "../../server/rules/all.ts";
import { findingsOf } from "../../server/rules/run.ts";
import { documentsOf, houseOf, root } from "../house/make.ts";
import { applied, apply, fixtureOf } from "./cursor.ts";

const uri = `${root}/spec.drink`;

describe("places", () => {
  test("edits stand where the entry stands now, behind an accent and an emoji", () => {
    const { house, document } = fixtureOf("# Café 🍋\n\ndrink Sl<>ip\n  50 ml crème 🍋 gin\n");
    const entry = document.tree.entries.at(-1)!;
    const start = entry.lines[1]!.text.indexOf("gin");
    const fix: Fix = { title: "", safe: true, edits: [{ entry, line: 1, start, end: start + 3, text: "rum" }] };
    const { edits } = toWorkspaceEdit(house, fix)!.documentChanges![0] as TextDocumentEdit;
    expect(edits).toEqual([{ range: { start: { line: 3, character: start }, end: { line: 3, character: start + 3 } }, newText: "rum" }]);
    expect(applied({ house, document }, fix)).toContain("  50 ml crème 🍋 rum\n");
  });

  test("an end behind the text takes the line break with it", () => {
    const { house, document } = fixtureOf("drink Sl<>ip\r\n  50 ml gin\r\n  20 ml rum\r\n");
    const entry = document.tree.entries[0]!;
    expect(applied({ house, document }, { title: "", safe: true, edits: [{ entry, line: 1, start: 0, end: 99, text: "" }] })).toBe(
      "drink Slip\r\n  20 ml rum\r\n",
    );
  });

  test("new lines take the file's own line breaks", () =>
    expect(apply("drink S<>lip\r\n\r\n  60 ml gin\r\n  30 ml rum\r\n", "Convert the drink to parts")).toBe(
      "drink Slip\r\n  part: 30 ml\r\n\r\n  2 parts gin\r\n  1 part rum\r\n",
    ));
});

describe("additions", () => {
  const added = (text: string): Fix => ({ title: "", safe: true, edits: [{ uri, text }] });

  test.each([
    ["drink Sl<>ip\n", "drink Slip\nstock gin\n"],
    ["drink Sl<>ip", "drink Slip\nstock gin\n"],
  ])("go to the end of %j, on a line of their own", (text, expected) =>
    expect(applied(fixtureOf(text), added("stock gin\n"))).toBe(expected),
  );

  test("make the file that is not there", () => {
    const house = houseOf("drink Slip\n");
    const edit = toWorkspaceEdit(house, { title: "", safe: true, edits: [{ uri: `${root}/stock.drink`, text: "stock gin\n" }] })!;
    expect(edit.documentChanges![0]).toEqual({ kind: "create", uri: `${root}/stock.drink`, options: { ignoreIfExists: true } });
    expect(edit.documentChanges).toHaveLength(2);
  });
});

test("a fix for an entry that has been edited since is out of date, and answers nothing", () => {
  const house = new House({ larder: readLarder(), roots: [root] });
  house.setDocument(documentsOf("drink Slip\n  50 ml gin\n")[0]!);
  const entry = house.document(uri)!.tree.entries[0]!;
  house.setDocument({ uri, version: 2, tree: read("drink Slip\n  40 ml gin\n") });
  expect(toWorkspaceEdit(house, { title: "", safe: true, edits: [{ entry, line: 1, start: 0, end: 1, text: "" }] })).toBeUndefined();
});

test("nothing is ever written into the larder", () => {
  const house = houseOf("drink Slip\n");
  const entry = readLarder()[0]!.tree.entries[1]!;
  expect(toWorkspaceEdit(house, { title: "", safe: true, edits: [{ entry, line: 0, start: 0, end: 1, text: "" }] })).toBeUndefined();
});

describe("fixes of findings", () => {
  const fixesAt = (text: string) => {
    const fixture = fixtureOf(text);
    const { house, document, position } = fixture;
    const fail = (code: string, cause: unknown) => {
      throw new Error(code, { cause });
    };
    const findings: Finding[] = document.tree.entries.flatMap((entry) => [...findingsOf(house, entry, rules, fail)]);
    const actions = quickFixes(house, document, { start: position, end: position }, findings);
    return { fixture, fixes: actions.filter(({ kind }) => kind === "quickfix") };
  };

  test("stand with the finding they put right, on its line only", () => {
    const text = "drink Slip\n  method: shake 12 s\n  glass: coupe\n  garnish: none\n  2,5 cl dry g<>in\n  20 ml lime juice\n";
    const { fixture, fixes } = fixesAt(text);
    expect(fixes.map(({ finding }) => finding?.code)).toContain("decimal-comma");
    const fix = fixes.find(({ finding }) => finding?.code === "decimal-comma")!;
    expect(applied(fixture, fix)).toContain("\n  2.5 cl dry gin\n");
    expect(fixesAt(text.replace("g<>in", "gin").replace("lime", "li<>me")).fixes.map(({ finding }) => finding?.code)).not.toContain(
      "decimal-comma",
    );
  });

  test("a pour that is turned round and indented reads as a pour afterwards", () => {
    const { fixture, fixes } = fixesAt("drink Slip\n  dry g<>in 50 ml\n");
    const fix = fixes.find(({ finding }) => finding?.code === "turned-pour")!;
    expect(applied(fixture, fix)).toBe("drink Slip\n  50 ml dry gin\n");
  });
});
