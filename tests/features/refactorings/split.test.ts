/** A file split: nothing is lost, nothing means anything else, and no file is written over. */
import { describe, expect, test } from "vitest";
import type { CreateFile, TextDocumentEdit } from "vscode-languageserver-types";
import { print } from "../../../grammar/print.ts";
import { toWorkspaceEdit } from "../../../server/features/edits.ts";
import type { Addition } from "../../../server/house/finding.ts";
import { houseIn } from "../../house/make.ts";
import { findIn } from "../../rules/check.ts";
import { meaningOf } from "./drinks.ts";
import { chosen, houseAfter, offered, offeredOn, textAfter, titles } from "./offered.ts";

const split = "Split into";

function filesOf(text: string, title = split) {
  const made = chosen(offered(text), title);
  const added = made.fix.edits.filter((edit): edit is Addition => "uri" in edit);
  const files = added.map(({ uri, text: content }) => [uri.slice("file:///house/".length), content]);
  return { left: textAfter(made.house, made.document, made.fix), files: Object.fromEntries(files) };
}

describe("split a file", () => {
  test("one for each drink, prep and menu, with the comments right above; the rest stays", () => {
    const text = `# The winter book

# the house's own
stock bay rum\r
  kind: spirit\r
\r
# Stirred, mostly\r
drink Slip\r
  50 ml bay rum\r
  # to be tried\r
\r
# Second thoughts\r
\r
prep brin<>e\r
  20 g sea salt\r
\r
\r
menu Winter card\r
  - Slip 12.50`;
    const { left, files } = filesOf(text.replaceAll("\r", ""), "Split into 3 files, one for each drink, prep and menu");
    expect(left).toBe("# The winter book\n\n# the house's own\nstock bay rum\n  kind: spirit\n\n# Second thoughts\n\n");
    expect(files).toEqual({
      "slip.drink": "# Stirred, mostly\ndrink Slip\n  50 ml bay rum\n  # to be tried\n",
      "brine.drink": "prep brine\n  20 g sea salt\n",
      "winter-card.drink": "menu Winter card\n  - Slip 12.50\n",
    });
    expect(filesOf(text).files["brine.drink"]).toBe("prep brine\r\n  20 g sea salt\r\n");
  });

  test("names that any disk takes, and none that is there", () => {
    const names = ["Été 🍋", "../../up", "CON", '"12 Bells; or so"', "🍋", "夜", "Slip", "x".repeat(99)];
    const drinks = names.map((name) => `drink ${name}\n  50 ml gin\n`).join("\n");
    const { files } = filesOf(`=== SLIP.drink\nhouse Bar\n=== spec.drink\n${drinks.replace("drink Slip", "drink S<>lip")}`);
    expect(Object.keys(files)).toEqual([
      "ete.drink",
      "up.drink",
      "con-drink.drink",
      "12-bells-or-so.drink",
      "drink.drink",
      `${encodeURIComponent("夜")}.drink`,
      "slip-2.drink",
      `${"x".repeat(60)}.drink`,
    ]);
  });

  test("two that make one file name are two files, and one that the file is called after stays", () => {
    const { left, files } = filesOf("drink Sp<>ec\n  50 ml gin\n\ndrink Low-Tide\n  50 ml gin\n\ndrink Low, Tide\n  5 ml gin\n");
    expect(left).toBe("drink Spec\n  50 ml gin\n\n");
    expect(Object.keys(files)).toEqual(["low-tide.drink", "low-tide-2.drink"]);
  });

  test("of two of one name none is moved: which comes first decides what the name means", () => {
    const twice = "drink Slip\n  5 ml gin\n\ndrink Slip\n  50 ml gin\n";
    expect(filesOf(`drink F<>og\n  50 ml gin\n\n${twice}`, "Move 1 entry into a file of its own").left).toBe(twice);
  });

  test("not of a single entry, not below the head, not where the editor makes no files", () => {
    const text = "drink Slip\n  50 ml gin\n\ndrink Fo<>g\n  50 ml gin\n";
    expect(titles(text).some((title) => title.startsWith(split))).toBe(true);
    expect(offered(text, false).offers.some(({ title }) => title.startsWith(split))).toBe(false);
    expect(titles("drink S<>lip\n  50 ml gin\n").some((title) => title.startsWith("Move"))).toBe(false);
    expect(titles("drink Slip\n  50 ml g<>in\n\ndrink Fog\n  50 ml gin\n").some((title) => title.startsWith(split))).toBe(false);
  });

  test("a new file is made, never written over", () => {
    const { house, fix } = chosen(offered("drink Sl<>ip\n  50 ml gin\n\ndrink Fog\n  50 ml gin\n"), split);
    const changes = toWorkspaceEdit(house, fix)!.documentChanges!;
    const made = changes.filter((change): change is CreateFile => "kind" in change && change.kind === "create");
    expect(made.map(({ uri }) => uri)).toEqual(["file:///house/slip.drink", "file:///house/fog.drink"]);
    for (const { options } of made) expect(options).toEqual({ overwrite: false, ignoreIfExists: false });
    // Each is made before it is written to.
    const order = changes.map((change) =>
      "kind" in change ? `make ${(change as CreateFile).uri}` : (change as TextDocumentEdit).textDocument.uri,
    );
    expect(order.indexOf("make file:///house/fog.drink")).toBeLessThan(order.indexOf("file:///house/fog.drink"));
  });

  test("of each file of the demo house: no word is lost, and every drink is what it was", () => {
    const house = houseIn("samples/halyard-room");
    const codes = (of: typeof house) =>
      findIn(of)
        .map(({ finding }) => finding.code)
        .sort();
    for (const document of house.documents()) {
      const first = document.tree.entries.find(({ kind, name }) => ["drink", "prep", "menu"].includes(kind) && name);
      if (!first) continue;
      const offer = offeredOn(house, first.name!.text);
      const title = offer.offers.find(({ kind }) => kind === "refactor.move")?.title;
      if (!title) continue;
      const after = houseAfter(chosen(offer, title));
      const words = (of: typeof house) =>
        [...of.documents()]
          .flatMap(({ tree }) => print(tree).split("\n"))
          .filter(Boolean)
          .sort();
      expect(words(after)).toEqual(words(house));
      expect(codes(after)).toEqual(codes(house));
      for (const { kind, name } of document.tree.entries) {
        if (kind === "drink") expect(meaningOf(after, name!.text)).toEqual(meaningOf(house, name!.text));
      }
    }
  });
});
