/** The page's ready configuration: each command in it runs in a house as it stands there. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { checkFormatNames } from "../../server/cli/check-formats.ts";
import { mutchkin, soundHouse } from "./command.ts";
import { repositoryOf } from "./repository.ts";

const page = readFileSync(fileURLToPath(new URL("../../server/cli/README.md", import.meta.url)), "utf8");
const commands = [...new Set([...page.matchAll(/node tools\/mutchkin\.js (check[^\n`>]*)/g)].map(([, argv]) => argv!.trim()))];

test("there is a command for each service", () => {
  expect(commands.length).toBeGreaterThanOrEqual(5);
});

test.each(commands)("`%s` finds nothing in a sound house, and ends with 1 where a change brings something about", async (command) => {
  const { folder, git, write } = repositoryOf(soundHouse);
  git("update-ref", "refs/remotes/origin/main", "HEAD");
  const argv = command.replace('"origin/$BASE"', "origin/main").split(" ");
  expect((await mutchkin(folder, argv)).code).toBe(0);
  write("new.drink", "drink New Rope\n  from: Slack Rope\n  swap lime juice for 30,0 ml lime juice\n");
  expect(await mutchkin(folder, argv)).toMatchObject({ code: 1, err: "" });
});

test("every form is on the page", () => {
  const told = [...page.matchAll(/^\| `(\w+)`/gm)].map(([, format]) => format);
  expect(told).toEqual(expect.arrayContaining([...checkFormatNames]));
});

test("the hook looks at the files that hold specs, and at no others", () => {
  const [, pattern] = /^ +files: (.+)$/m.exec(page)!;
  const names = ["bar.drink", join("cards", "a.md"), "b.markdown", "c.mdx", "drink.json", "adrink"];
  expect(names.filter((name) => new RegExp(pattern!).test(name))).toEqual(names.slice(0, 3));
});
