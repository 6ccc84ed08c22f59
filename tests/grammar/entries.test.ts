import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { entryAt, lineAt, textOf } from "../../grammar/positions.ts";
import { print } from "../../grammar/print.ts";
import { read } from "../../grammar/read.ts";
import type { SyntaxCode, Tree } from "../../grammar/tree.ts";

/** Each entry as `kind name: content kinds`, each line's problem behind its kind. */
function outline(text: string): string[] {
  return read(text).entries.map(({ kind, name, lines }) => {
    const said = lines.map(({ content, problem }) => content.kind + (problem ? `!${problem.code}` : ""));
    return `${kind} ${name?.text ?? "-"}: ${said.join(" ")}`;
  });
}

const problemsOf = (tree: Tree): { line: number; code: SyntaxCode }[] =>
  tree.entries.flatMap((entry, index) =>
    entry.lines.flatMap(({ problem }, line) => (problem ? [{ line: tree.starts[index]! + line, code: problem.code }] : [])),
  );

describe("entries", () => {
  test("reach from their head to the next margin line", () => {
    expect(
      outline(
        "# card\n\nhouse The Halyard Room\n  units: ml\n\ndrink Lantern Sour\n  50 ml gin\n# between\nmenu Winter\n  - Lantern Sour\n",
      ),
    ).toEqual([
      "preamble -: comment blank",
      "house The Halyard Room: entry field blank",
      "drink Lantern Sour: entry pour comment",
      "menu Winter: entry menu blank",
    ]);
  });

  test("a text of nothing is one empty line", () => {
    expect(outline("")).toEqual(["preamble -: blank"]);
    expect(read("")).toMatchObject({ starts: [0], lineCount: 1 });
  });

  test("lines count as an editor counts them", () => {
    const tree = read("drink A\r\n  50 ml gin\rdrink B\n");
    expect(tree).toMatchObject({ starts: [0, 2], lineCount: 4 });
    expect(lineAt(tree, 1)?.text).toBe("  50 ml gin");
    expect(lineAt(tree, 4)).toBeUndefined();
    expect(entryAt(tree, 3)).toMatchObject({ entry: { kind: "drink" }, line: 1 });
    expect(textOf(tree.entries[0]!)).toBe("drink A\r\n  50 ml gin\r");
  });

  test("a byte order mark indents nothing", () => {
    expect(outline("\ufeffdrink A\n  50 ml gin")).toEqual(["drink A: entry pour"]);
  });

  test("typing `dri` above a drink's body adds nothing to the drink before it", () => {
    const before = "drink Holm\n  50 ml gin\n\n";
    const body = "  glass: coupe\n  60 ml rum\n  story: Named for\n    the lamp.\n";
    for (const typed of ["d", "dr", "dri", "drin", "drink", "drink L"]) {
      const [holm, next] = read(`${before}${typed}\n${body}`).entries;
      expect(holm).toEqual(read(`${before}x`).entries[0]);
      expect(next?.lines.map((line) => line.content.kind)).toEqual(["entry", "field", "pour", "field", "prose", "blank"]);
    }
  });

  test("an unknown head is found fault with, and nothing below it is", () => {
    expect(outline("Lantern Sour\n50 ml gin\nglass: coupe\n  2,5 cl rum\n  swap\n  # allow x-y\ndrink A\n  2,5 cl rum")).toEqual([
      "unknown Sour: entry!unknown-entry pour field pour swap comment",
      "drink A: entry pour!decimal-comma",
    ]);
  });
});

describe("margin lines", () => {
  test("stay with the open entry where they start with an amount, or are a field that it takes", () => {
    expect(outline("drink A\n50 ml gin\nabout 3 g salt\n½ oz rum\nglass: coupe\nglass coupe\n")).toEqual([
      "drink A: entry pour!unindented pour!unindented pour!unindented field!unindented",
      "glass coupe: entry blank",
    ]);
  });

  test.each([
    ["drink A\nabv: 43 %\n", ["drink A: entry", "unknown 43 %: entry!unknown-entry blank"]], // a stock's field
    ["drink A\nLemon juice: 25 ml\n", ["drink A: entry", "unknown juice: 25 ml: entry!unknown-entry blank"]],
    ["drink A\nor 25 ml gin\n", ["drink A: entry", "unknown 25 ml gin: entry!unknown-entry blank"]],
    ["drink A\n- B 12\n", ["drink A: entry", "unknown B 12: entry!unknown-entry blank"]],
    ["drink A\n***\n", ["drink A: entry", "unknown -: entry!unknown-entry blank"]],
    ["drink A\nhouse: B\n", ["drink A: entry", "unknown B: entry!unknown-entry blank"]],
  ])("else open an entry: %j", (text, expected) => expect(outline(text)).toEqual(expected));

  test("are put right by one fix a line", () => {
    const { problem } = read("drink A\n50 ml gin").entries[0]!.lines[1]!;
    expect(problem).toMatchObject({ start: 0, end: 9, instead: "  50 ml gin" });
  });

  test("with nothing open above them have one problem for all", () => {
    expect(outline("# card\n50 ml gin\n  glass: coupe\nfamily: sour\ndrink A")).toEqual([
      "preamble -: comment pour!syntax field field",
      "drink A: entry",
    ]);
  });
});

describe("prose fields", () => {
  test("go on over deeper lines, blank ones among them, raw", () => {
    expect(outline("drink A\n  story: Named\n    # for 2,5\n\n   - the lamp\n  50 ml gin\n")).toEqual([
      "drink A: entry field prose blank prose pour blank",
    ]);
  });

  test("end at a line that is no deeper, comments too", () => {
    expect(outline("drink A\n  story: Named\n\n  # a note\n    50 ml gin\n")).toEqual(["drink A: entry field blank comment pour blank"]);
    expect(outline("drink A\n  story:\n    Named\ndrink B")).toEqual(["drink A: entry field prose", "drink B: entry"]);
  });

  test("compare depths, whatever makes them", () => {
    expect(outline("drink A\n  story: Named\n\tfor\n\t\tit\n")).toEqual(["drink A: entry field prose prose blank"]);
    expect(outline("drink A\n\tstory: Named\n\t for\n\tx: y\n")).toEqual(["drink A: entry field prose field blank"]);
  });

  test("go on in an unknown entry too", () => {
    expect(outline("dri\n  story: Named\n    for 2,5\n")).toEqual(["unknown -: entry!unknown-entry field prose blank"]);
  });

  test("raw text is found fault with nowhere, however long it is", () => {
    expect(outline(`drink A\n  story: ${"long ".repeat(3000)}\n    ${"long ".repeat(3000)}`)).toEqual(["drink A: entry field prose"]);
  });
});

/** The specs that the language's own page shows, and every sample that has no mistakes in it. */
const samples = [
  ["the page's own spec", readFileSync("grammar/README.md", "utf8").match(/```mutchkin\n([\s\S]*?)```/)?.[1] ?? ""],
  ...readdirSync("samples/halyard-room", { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".drink"))
    .map((name) => [name, readFileSync(join("samples/halyard-room", name), "utf8")]),
] as [string, string][];

describe("every beginning of a sample", () => {
  test.each(samples)("%s", (_, text) => {
    expect(text.length).toBeGreaterThan(100);
    expect(problemsOf(read(text))).toEqual([]);
    for (let length = 0; length <= text.length; length++) {
      const tree = read(text.slice(0, length));
      const last = tree.lineCount - 1;
      for (const problem of problemsOf(tree)) expect(problem.line).toBe(last);
      if (length % 50 === 0) expect(print(tree)).toBe(text.slice(0, length));
    }
  });
});

describe("every sample", () => {
  const names = readdirSync("samples", { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".drink"));
  test.each(names)("%s has a problem only in the lines that are broken, and any beginning of it reads", (name) => {
    const text = readFileSync(join("samples", name), "utf8");
    const whole = new Map(problemsOf(read(text)).map(({ line, code }) => [line, code]));
    for (let length = 0; length < text.length; length += 7) {
      const tree = read(text.slice(0, length));
      for (const { line, code } of problemsOf(tree)) if (line < tree.lineCount - 1) expect(code).toBe(whole.get(line));
    }
  });
});
