import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { disk, Unwritable } from "../../server/cli/files.ts";
import { folderOf, mutchkin } from "./command.ts";

const crooked = "=== bar/sours.drink\ndrink Slip\n   50ml gin\n=== bar/good.drink\ndrink Rope\n  50 ml gin\n";

test("files are written in form, and named; in form already, nothing is written", async () => {
  const folder = folderOf(crooked);
  expect(await mutchkin(folder, ["format"])).toEqual({ code: 0, out: "Formatted bar/sours.drink\n1 of 2 files changed.\n", err: "" });
  expect(readFileSync(join(folder, "bar/sours.drink"), "utf8")).toBe("drink Slip\n  50 ml gin\n");
  const files = {
    ...disk,
    write: () => {
      throw new Error("nothing is to be written");
    },
  };
  expect(await mutchkin(folder, ["format"], { files })).toEqual({ code: 0, out: "2 files in good form.\n", err: "" });
});

test("--check names them, changes nothing, and fails", async () => {
  const folder = folderOf(crooked);
  expect(await mutchkin(folder, ["format", "--check", "bar"])).toEqual({
    code: 1,
    out: "Would format bar/sours.drink\n1 of 2 files would change.\n",
    err: "",
  });
  expect(readFileSync(join(folder, "bar/sours.drink"), "utf8")).toBe("drink Slip\n   50ml gin\n");
});

test("in Markdown only the blocks' lines change, behind their margin", async () => {
  const folder = folderOf(
    "=== a.md\n# Slack  Water\n\n> - ```drink\n>   drink   Slip\n>      50ml gin\n>   ```\n\n   50ml   prose\n=== b.md\n   50ml prose\n",
  );
  expect((await mutchkin(folder, ["format"])).out).toBe("Formatted a.md\n1 of 1 file changed.\n");
  expect(readFileSync(join(folder, "a.md"), "utf8")).toBe(
    "# Slack  Water\n\n> - ```drink\n>   drink Slip\n>     50 ml gin\n>   ```\n\n   50ml   prose\n",
  );
});

test("a byte order mark and CRLF stay", async () => {
  const folder = folderOf("=== a.drink\n\ufeffdrink Slip\r\n   50ml gin\r\n");
  await mutchkin(folder, ["format"]);
  expect(readFileSync(join(folder, "a.drink"), "utf8")).toBe("\ufeffdrink Slip\r\n  50 ml gin\r\n");
});

test("a file that cannot be written is named, with the reason", async () => {
  const files = {
    ...disk,
    write: () => {
      throw new Unwritable("the disk is read-only");
    },
  };
  const { code, err } = await mutchkin(folderOf(crooked), ["format"], { files });
  expect(code).toBe(2);
  expect(err).toBe("“bar/sours.drink” could not be written: the disk is read-only.\nIt is as it was.\n");
});
