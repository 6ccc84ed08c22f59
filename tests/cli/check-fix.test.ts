/** `mutchkin check --fix`: what is safe is put right in the files, the rest is found. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { disk, Unwritable } from "../../server/cli/files.ts";
import { folderOf, mutchkin, soundHouse } from "./command.ts";

const loose = "drink Loose Rope\n  from: Slack Rope\n  swap lime juice for 30,0 ml lime juice\n  2,5 ml lemon joice\n";

test("what is safe is put right, said for each file, and what is left is found", async () => {
  const folder = folderOf(`${soundHouse}=== wrong.drink\n${loose}`);
  const { code, out } = await mutchkin(folder, ["check", "--fix"]);
  expect(readFileSync(join(folder, "wrong.drink"), "utf8")).toBe(loose.replace("30,0", "30.0").replace("2,5", "2.5"));
  expect(out).toMatch(/^Put right in wrong\.drink: decimal-comma \(2\)\.\nwrong\.drink:4:\d+ {2}warning .*lemon joice/);
  expect(out).toMatch(/\n3 files checked: 1 warning\.\n$/);
  expect(code).toBe(1);
  expect((await mutchkin(folder, ["check", "--fix"])).out).not.toContain("Put right");
});

test("in Markdown only the blocks' lines change; a byte order mark and CRLF stay", async () => {
  const book = `# 2,5 ml\n\n> - \`\`\`drink\n${loose.replace(/^(?=.)/gm, ">   ")}>   \`\`\`\n\n2,5 ml in prose\n`;
  const marked = `\ufeff${loose.replace("Loose", "Other").replaceAll("\n", "\r\n")}`;
  const folder = folderOf(`${soundHouse}=== book.md\n${book}=== marked.drink\n${marked}`);
  const { out, err } = await mutchkin(folder, ["check", "--fix"]);
  expect(err).toBe("");
  expect(out).toContain("Put right in book.md: decimal-comma (2).\nPut right in marked.drink: decimal-comma (2).\n");
  expect(readFileSync(join(folder, "book.md"), "utf8")).toBe(book.replace("30,0", "30.0").replace("  2,5", "  2.5"));
  expect(readFileSync(join(folder, "marked.drink"), "utf8")).toBe(marked.replace("30,0", "30.0").replace("2,5", "2.5"));
});

test("nothing to put right, nothing is written", async () => {
  const write = () => {
    throw new Error("nothing is to be written");
  };
  expect(await mutchkin(folderOf(soundHouse), ["check", "--fix"], { files: { ...disk, write } })).toEqual({
    code: 0,
    out: "2 files checked: nothing found.\n",
    err: "",
  });
});

test("a file that cannot be written is named, with the reason", async () => {
  const write = () => {
    throw new Unwritable("the disk is read-only");
  };
  const { code, err } = await mutchkin(folderOf(`${soundHouse}=== wrong.drink\n${loose}`), ["check", "--fix"], {
    files: { ...disk, write },
  });
  expect(code).toBe(2);
  expect(err).toBe("“wrong.drink” could not be written: the disk is read-only.\nIt is as it was.\n");
});

test("only the files that are asked for are changed", async () => {
  const folder = folderOf(`${soundHouse}=== wrong.drink\n${loose}=== cards/a.drink\n${loose.replace("Loose", "Other")}`);
  await mutchkin(folder, ["check", "--fix", "cards"]);
  expect(readFileSync(join(folder, "wrong.drink"), "utf8")).toBe(loose);
  expect(readFileSync(join(folder, "cards/a.drink"), "utf8")).toContain("30.0 ml");
});

test("in a form for other programs what was put right goes to the other stream", async () => {
  const folder = folderOf(`${soundHouse}=== wrong.drink\n${loose}`);
  const { out, err } = await mutchkin(folder, ["check", "--fix", "--format", "json"]);
  expect(JSON.parse(out).summary.warnings).toBe(1);
  expect(err).toBe("Put right in wrong.drink: decimal-comma (2).\n");
});
