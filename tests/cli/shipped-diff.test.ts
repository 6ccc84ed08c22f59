/** Git's own diff of specs, set up as the command line's page says, with the command as it is shipped. */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderOf } from "./command.ts";

const git = (folder: string, ...args: string[]) =>
  execFileSync("git", ["-c", "user.name=Bar", "-c", "user.email=bar@halyard.invalid", ...args], { cwd: folder });

test("git's own diff names the drink in each hunk, and compares specs in their form, as the page says", async () => {
  const page = readFileSync("server/cli/README.md", "utf8");
  const documented = (name: string) => new RegExp(`<!-- ${name} -->\\n\\n\`\`\`\\w*\\n([\\s\\S]*?)\`\`\``).exec(page)![1]!;
  const folder = folderOf("=== bar/card.drink\ndrink Slip\n  50 ml gin\n  50 ml water\n\ndrink Warp\n  30 ml gin\n  15 ml water\n");
  git(folder, "init", "-q", "-b", "main");
  git(folder, "add", ".");
  git(folder, "commit", "-qm", "Autumn");
  writeFileSync(join(folder, ".gitattributes"), documented("gitattributes"));
  const bin = join(folder, "bin");
  mkdirSync(bin);
  writeFileSync(join(bin, "mutchkin"), `#!/bin/sh\nexec "${process.execPath}" "${join(process.cwd(), "dist/cli.js")}" "$@"\n`, {
    mode: 0o755,
  });
  for (const line of documented("gitconfig").trim().split("\n")) {
    const [, key, value] = /^git config (\S+) ['"](.*)['"]$/.exec(line)!;
    git(folder, "config", key!, value!);
  }
  const file = join(folder, "bar/card.drink");
  writeFileSync(file, readFileSync(file, "utf8").replace("  50 ml water", "     50ml   water").replace("  15 ml water", "  20 ml water"));
  const path = `${bin}:${process.env.PATH}`;
  const shown = execFileSync("git", ["diff", "-U1"], { cwd: folder, encoding: "utf8", env: { ...process.env, PATH: path } });
  expect(shown.match(/^@@.*$/gm)!.map((hunk) => hunk.replace(/^@@[^@]*@@ ?/, ""))).toEqual(["drink Warp"]);
  expect(shown).toContain("+  20 ml water");
  expect(shown).not.toContain("50ml");
});
