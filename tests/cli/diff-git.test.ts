/** `mutchkin diff` and what git may be asked, or refuse: which files count, what is a path, what to do about an error. */
import { execFileSync } from "node:child_process";
import { mkdirSync, renameSync, rmSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { folderOf, mutchkin } from "./command.ts";
import { repositoryOf } from "./repository.ts";

const slip = (ml: number, name = "Slip") => `drink ${name}\n  glass: none\n  method: none\n  ${ml} ml gin\n  30 ml water\n`;
const house = `=== cards/a.drink\n${slip(50)}=== b.drink\n${slip(50, "Rope")}`;

async function told(folder: string, ...asked: string[]): Promise<string[]> {
  const { code, out, err } = await mutchkin(folder, ["diff", "--format", "json", ...asked]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  const { drinks, broken } = JSON.parse(out) as { drinks: { name: string; how: string }[]; broken: unknown[] };
  // A link's own text is a path, and no drink.
  expect(broken).toEqual([]);
  return drinks.map(({ name, how }) => `${name} ${how}`);
}

test("what git ignores, other repositories inside and links are nobody's change", async () => {
  const { folder, git, write } = repositoryOf(`${house}=== .gitignore\nprinted/\n`);
  symlinkSync("b.drink", join(folder, "link.drink"));
  git("add", "-A");
  git("commit", "-q", "-m", "Link");
  mkdirSync(join(folder, "printed"));
  write("printed/c.drink", slip(40, "Printed"));
  const other = repositoryOf(`=== d.drink\n${slip(40, "Other")}`).folder;
  git("-c", "protocol.file.allow=always", "submodule", "--quiet", "add", other, "other");
  git("commit", "-q", "-a", "-m", "Take in another house");
  write("e.drink", slip(40, "New"));
  expect(await told(folder)).toEqual(["New added"]);
  expect(await told(folder, "HEAD~1..HEAD")).toEqual([]);
});

test("a path may lie above, or be no more, and where nothing is it is said", async () => {
  const { folder, write } = repositoryOf(house);
  write("b.drink", slip(40, "Rope"));
  rmSync(join(folder, "cards/a.drink"));
  expect(await told(join(folder, "cards"), "../b.drink")).toEqual(["Rope changed"]);
  expect(await told(folder, "cards/a.drink")).toEqual(["Slip removed"]);
  expect(await mutchkin(folder, ["diff", "HEAD", "c.drink"])).toEqual({
    code: 2,
    out: "",
    err: "There are no specs at “c.drink” on either side.\nCheck the spelling, or leave the path out to compare everything.\n",
  });
});

test("three dots start where the two lines of work parted, two dots do not", async () => {
  const { folder, git, write } = repositoryOf(house);
  git("switch", "-q", "-c", "winter");
  write("b.drink", slip(40, "Rope"));
  git("commit", "-q", "-a", "-m", "Pour less");
  git("switch", "-q", "main");
  write("cards/a.drink", slip(40));
  git("commit", "-q", "-a", "-m", "Pour less here");
  expect(await told(folder, "main..winter")).toEqual(["Rope changed", "Slip changed"]);
  expect(await told(folder, "main...winter")).toEqual(["Rope changed"]);
  expect((await mutchkin(folder, ["diff", "main...winter"])).out).toMatch(/^where main and winter parted → winter: /);
});

test("what is wrong with the place is said with what to do about it", async () => {
  const { folder, git } = repositoryOf(house);
  const bare = join(folderOf("=== x\n"), "bare");
  git("clone", "-q", "--bare", folder, bare);
  const said = async (at: string, ...asked: string[]) => (await mutchkin(at, ["diff", ...asked])).err;
  expect(await said(bare)).toBe("A bare repository has no working tree.\nName two revisions, such as HEAD~1..HEAD.\n");
  expect(await said(join(folder, ".git"))).toBe("This is git's own folder, no working tree.\nRun it in the folder that holds `.git`.\n");
  const unborn = folderOf(house);
  execFileSync("git", ["init", "-q", "-b", "main"], { cwd: unborn });
  expect(await said(unborn)).toBe("Nothing is committed here yet.\nCommit the specs once, then compare.\n");
  const tree = git("rev-parse", "HEAD^{tree}").trim();
  const object = join(folder, ".git/objects", tree.slice(0, 2), tree.slice(2));
  renameSync(object, `${object}-away`);
  expect(await said(folder)).toMatch(/^git says: .*\nPart of the history is not here: `git fetch` brings it/);
  // As git itself tests it.
  vi.stubEnv("GIT_TEST_ASSUME_DIFFERENT_OWNER", "1");
  expect(await said(folder)).toMatch(/^git refuses this folder, since it is another account's\.\nIf you trust it: /);
  vi.unstubAllEnvs();
});
