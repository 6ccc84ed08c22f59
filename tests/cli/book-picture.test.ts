/** Whose pictures a book prints: the chapter may be somebody else's, the disk is not. */
import { readdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ferryBook } from "../reports/book/books.ts";
import { folderOf, mutchkin } from "./command.ts";

test.each([
  "../secret.png",
  "pictures/../../secret.png",
  "%2e%2e/secret.png",
  "..%2Fsecret.png",
  "..%5Csecret.png",
  "linked.png",
  "linked/secret.png",
  "/etc/passwd",
])("%s, which lies outside the book's folder, is told and read by nobody", async (source) => {
  const text = `=== pictures/dot.png\nno picture\n${ferryBook}=== 03-guest.md\n# A guest's chapter\n\n![x](${source})\n`;
  const folder = folderOf(`=== secret.png\nnobody's to print\n${text.replaceAll("=== ", "=== ferry/")}`);
  symlinkSync(join(folder, "secret.png"), join(folder, "ferry/linked.png"));
  symlinkSync(folder, join(folder, "ferry/linked"));
  const { code, out, err } = await mutchkin(folder, ["book", "ferry", "--out", "built", "--to", "md,html"]);
  expect(code).not.toBe(0);
  expect(out + err).toContain(`There is no picture “${source}”`);
  const written = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((path) => /^built.*\.\w+$/.test(path));
  for (const path of written) {
    const bytes = readFileSync(join(folder, path), "utf8");
    expect(bytes).not.toContain("nobody's to print");
    expect(bytes).not.toContain(Buffer.from("nobody's to").toString("base64"));
  }
});
