/** `mutchkin book` on folders made for one test. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { bookCommand } from "../../server/cli/book-command.ts";
import { disk } from "../../server/cli/files.ts";
import { plainLook } from "../../server/reports/sheet.ts";
import { ferryBook } from "../reports/book/books.ts";
import { folderOf, mutchkin } from "./command.ts";
import { repositoryOf } from "./repository.ts";

/** The picture is written as text: what is in it is no matter here. */
const book = ferryBook.replace(/^/, "=== pictures/dot.png\nno picture\n");

function filesIn(folder: string): Record<string, string> {
  const paths = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((path) => /\.\w+$/.test(path));
  return Object.fromEntries(paths.map((path) => [path.replaceAll("\\", "/"), readFileSync(join(folder, path), "latin1")]));
}

test("a book is written as Markdown, HTML and Word, and the command says what it wrote", async () => {
  const folder = folderOf(book);
  const { code, out, err } = await mutchkin(folder, ["book", "--out", "built"]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toMatch(/^“Small Hours”: 2 chapters, 2 printed anew; 3 recipes\. Wrote to built: /);
  const names = Object.keys(filesIn(join(folder, "built"))).sort();
  expect(names).toEqual([
    ".mutchkin-book.json",
    "markdown/01-dusk.md",
    "markdown/02-night.md",
    "markdown/back-matter.md",
    "markdown/front-matter.md",
    "markdown/pictures/dot.png",
    "small-hours.docx",
    "small-hours.html",
  ]);
  for (const name of names.slice(1)) expect(out).toContain(name);
});

test("what keeps nothing from being printed is counted, in a preface without a spec or a value too", async () => {
  const preface = "=== 00-preface.md\n# Preface\n\nWe utilize two ounces of its color.\n";
  const text = `${book.replace("  glassware:", "  avoid: utilize\n  units shown: metric\n  glassware:")}${preface}`;
  const folder = folderOf(text.replaceAll("=== ", "=== ferry/"));
  const { code, out } = await mutchkin(folder, ["book", "ferry", "--out", "built", "--to", "md"]);
  expect(code).toBe(0);
  const checked = await mutchkin(folder, ["check", "ferry"]);
  for (const where of ["3:4", "3:12", "3:30"]) expect(checked.out).toContain(`ferry/00-preface.md:${where} `);
  const counts = /checked: (.*)\.\n$/.exec(checked.out)![1]!;
  expect(out).toMatch(new RegExp(`What the rules find in its texts: ${counts}\\. \`mutchkin check ferry\` lists them\\.\n$`));
});

test("a Markdown text that is no chapter and holds no spec is not looked at", async () => {
  const folder = folderOf(`${book}=== notes/README.md\nThe color of honey.\n`);
  const { out } = await mutchkin(folder, ["check"]);
  expect(out).not.toContain("README");
});

test("built again, and from another folder with the same files, every byte is the same", async () => {
  const [one, other] = [folderOf(book), folderOf(book)];
  await mutchkin(one, ["book", "--out", "built"]);
  const first = filesIn(join(one, "built"));
  const { out } = await mutchkin(one, ["book", "--out", "built"]);
  expect(out).toContain("Everything is as it was.");
  await mutchkin(other, ["book", ".", "--out", "built"]);
  expect(filesIn(join(one, "built"))).toEqual(first);
  expect(filesIn(join(other, "built"))).toEqual(first);
});

test("what it wrote into the folder itself is no chapter the next time", async () => {
  const folder = folderOf(book);
  const first = await mutchkin(folder, ["book", "--out", ".", "--to", "md"]);
  expect(first.out).toContain("2 chapters, 2 printed anew");
  const { code, out } = await mutchkin(folder, ["book", "--out", "built", "--to", "md"]);
  expect({ code, out: out.slice(0, 27) }).toEqual({ code: 0, out: "“Small Hours”: 2 chapters, " });
});

test.each([
  ["that somebody else wrote", false, "“built/small-hours.html” stands there already, and this command did not write it."],
  [
    "that was changed since",
    true,
    "“built/small-hours.html” was changed since the book was last written, and writing it again would lose that.",
  ],
])("a file %s is never overwritten, and then nothing is written", async (_what, isBuilt, words) => {
  const folder = folderOf(`${book}=== built/keep.txt\n`);
  if (isBuilt) await mutchkin(folder, ["book", "--out", "built", "--to", "html"]);
  writeFileSync(join(folder, "built", "small-hours.html"), "mine");
  const { code, err } = await mutchkin(folder, ["book", "--out", "built"]);
  expect(code).toBe(2);
  expect(err).toContain(words);
  expect(readFileSync(join(folder, "built", "small-hours.html"), "utf8")).toBe("mine");
  expect(existsSync(join(folder, "built", "markdown"))).toBe(false);
});

test("a broken reference fails with chapter, line and column, from the current folder, and nothing is written", async () => {
  const folder = folderOf(book.replaceAll("=== ", "=== ferry/").replace(":see[Night Mug]", ":see[Night Jug]"));
  const { code, out } = await mutchkin(folder, ["book", "ferry", "--out", "built"]);
  expect(code).toBe(1);
  expect(out).toContain("ferry/01-dusk.md:4:10 error  No drink and no prep is called “Night Jug”.\n");
  expect(out).toContain("1 error; nothing was written.");
  expect(existsSync(join(folder, "built"))).toBe(false);
});

test.each([
  [[], "It is not said where the book goes."],
  [["--out", "built", "--to", "epub"], "Allowed are md, html, docx, pdf"],
  [["nowhere", "--out", "built"], "There is no file or folder “nowhere”."],
])("a command line that cannot be carried out ends with 2 and says why: %j", async (argv, words) => {
  const { code, err } = await mutchkin(folderOf(book), ["book", ...argv]);
  expect(code).toBe(2);
  expect(err).toContain(words);
});

test("a folder without a book, and one with two, are told so", async () => {
  const none = await mutchkin(folderOf("=== bar.drink\ndrink A\n  50 ml dry gin\n"), ["book", "--out", "built"]);
  expect({ code: none.code, err: none.err }).toEqual({ code: 2, err: expect.stringContaining("No book is declared in this folder.") });
  const two = await mutchkin(folderOf("=== bar.drink\nbook A\nbook B\n"), ["book", "--out", "built"]);
  expect({ code: two.code, err: two.err }).toEqual({ code: 2, err: expect.stringContaining("There are several books here: “A” and “B”.") });
});

/** Watches a folder, and answers each build's line as it comes. */
function watched(folder: string, asked = ".") {
  const said: string[] = [];
  const waiting: (() => void)[] = [];
  const say = (text: string) => {
    said.push(text);
    for (const told of waiting.splice(0)) told();
  };
  const end = new AbortController();
  const ended = bookCommand(
    asked,
    { out: "built", to: ["md", "html"], watch: true },
    {
      files: disk,
      currentFolder: folder,
      print: say,
      complain: say,
      progress: () => undefined,
      look: plainLook,
      watched: false,
      debug: false,
      startServer: () => undefined,
      today: () => "2026-11-28",
    },
    () => end.signal,
  );
  return {
    end: () => end.abort(),
    ended,
    async next(words: string): Promise<string> {
      for (;;) {
        const found = said.findIndex((text) => text.includes(words));
        if (found >= 0) return said.splice(0, found + 1).at(-1)!;
        await new Promise<void>((told) => waiting.push(told));
      }
    },
  };
}

test("specs above the chapters are watched too", async () => {
  const folder = folderOf(
    book
      .replaceAll("=== ", "=== ferry/")
      .replace("=== ferry/book.drink", "=== house.drink\nhouse Slipway\n=== ferry/book.drink")
      .replace("house Slipway\n  country", "house Slip\n  country")
      .replace("stock aged rum\n  kind: spirit\n  abv: 42 %\n", "")
      .concat("=== bar.drink\nstock aged rum\n  kind: spirit\n  abv: 42 %\n"),
  );
  const { next, end, ended } = watched(folder, "ferry");
  await next("Watching.");
  writeFileSync(join(folder, "bar.drink"), "stock aged rum\n  kind: spirit\n  abv: 46 %\n");
  expect(await next("printed anew")).toContain("2 printed anew");
  end();
  expect(await ended).toBe(0);
});

test("a watched book prints again the chapters that print otherwise, and no other; it ends with the signal", async () => {
  const folder = folderOf(book);
  const { next, end, ended } = watched(folder);
  await next("2 printed anew");
  await next("Watching.");
  const night = readFileSync(join(folder, "02-night.md"), "utf8");
  writeFileSync(join(folder, "02-night.md"), night.replace("Nothing here.", "Something here."));
  expect(await next("printed anew")).toMatch(
    /2 chapters, 1 printed anew; 3 recipes\. Wrote to built: markdown\/02-night\.md, small-hours\.html\.\n$/,
  );
  const specs = readFileSync(join(folder, "book.drink"), "utf8");
  writeFileSync(join(folder, "book.drink"), specs.replace("200 g honey", "210 g honey"));
  expect(await next("printed anew")).toContain("2 printed anew");
  writeFileSync(join(folder, "02-night.md"), `${night}\n:see[Nobody]\n`);
  expect(await next("nothing was written")).toContain("02-night.md:");
  writeFileSync(join(folder, "02-night.md"), night);
  expect(await next("printed anew")).toContain("markdown/02-night.md");
  end();
  expect(await ended).toBe(0);
});

test("an editor is told what prints differently since a revision", async () => {
  const { folder, write } = repositoryOf(book.replaceAll("=== ", "=== ferry/"));
  const specs = readFileSync(join(folder, "ferry/book.drink"), "utf8");
  write("ferry/book.drink", specs.replace("50 ml aged rum", "60 ml aged rum"));
  const { code, out } = await mutchkin(folder, ["book", "ferry", "--changes-since", "HEAD"]);
  expect(code).toBe(0);
  expect(out).toContain("# Small Hours: what changed since HEAD");
  expect(out).toContain("1 recipe prints differently, and 2 values in the text.");
  expect(out).toMatch(/## Dusk & after \(01-dusk\.md\)\n\n- \*\*Lamp Sour\*\* \(no\. 1\), changed: .*60 ml/);
  expect(out).not.toContain("Night");
  expect(readdirSync(folder).sort()).toEqual([".git", "ferry"]);
});

test("a revision without the book is told so", async () => {
  const { folder, write } = repositoryOf("=== bar.drink\ndrink A\n  50 ml dry gin\n");
  write("book.drink", "book Small Hours\n");
  const { code, err } = await mutchkin(folder, ["book", "--changes-since", "HEAD"]);
  expect(code).toBe(2);
  expect(err).toContain("book");
});
