/** `mutchkin check --changed-since`: what a branch brought about, in repositories made for it. */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, renameSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { folderOf, mutchkin, soundHouse } from "./command.ts";
import { repositoryOf } from "./repository.ts";

const drink = (name: string, pour: string) => `drink ${name}
  family: sour
  glass: small coupe
  method: shake 12 s; fine strain
  garnish: none

  60 ml plain spirit
  30 ml lime juice
  ${pour}
`;
const loose = drink("Loose Rope", "17,5 ml rich sugar syrup");
const taut = drink("Taut Rope", "17,5 ml rich sugar syrup");
const house = `${soundHouse}=== old.drink\n${loose}\n${taut}`;

async function since(folder: string, revision = "main", ...more: string[]) {
  const { code, out, err } = await mutchkin(folder, ["check", "--changed-since", revision, ...more]);
  return { code, err, places: [...out.matchAll(/^(\S+):\d+ .*\[([\w-]+)\]$/gm)].map(([, place, rule]) => `${place} ${rule}`), out };
}

test("nothing changed, nothing is shown, and what was there is counted", async () => {
  const { folder } = repositoryOf(house);
  expect(await since(folder, "HEAD")).toEqual({
    code: 0,
    err: "",
    places: [],
    out: "3 files checked: nothing found.\n2 findings from before the change are not shown.\n",
  });
});

test("what is new is shown whether it is committed, only saved, or in a new file", async () => {
  const { folder, git, write } = repositoryOf(house);
  git("switch", "-q", "-c", "winter");
  write("bar.drink", readFileSync(join(folder, "bar.drink"), "utf8").replace("30 ml lime", "30,0 ml lime"));
  git("commit", "-q", "-a", "-m", "Write lime otherwise");
  write("new.drink", drink("New Rope", "17,5 ml rich sugar syrup"));
  const { code, places } = await since(folder);
  expect({ code, places }).toEqual({ code: 1, places: ["bar.drink:15 decimal-comma", "new.drink:9 decimal-comma"] });
});

test("what has come on the other branch meanwhile is not this one's", async () => {
  const { folder, git, write } = repositoryOf(house);
  git("switch", "-q", "-c", "winter");
  write("mine.drink", drink("Mine", "17,5 ml rich sugar syrup"));
  git("add", "-A");
  git("commit", "-q", "-m", "Add a drink");
  git("switch", "-q", "main");
  // Put right on main: this branch still has it, and did not bring it about.
  write("old.drink", `${loose.replace("17,5", "17.5")}\n${taut}`);
  git("commit", "-q", "-a", "-m", "Put a comma right");
  git("switch", "-q", "winter");
  expect((await since(folder)).places).toEqual(["mine.drink:9 decimal-comma"]);
});

test("in an entry that has been touched all is shown, in its neighbour only what is new", async () => {
  const { folder, write } = repositoryOf(house);
  write("old.drink", `${loose}\n${taut.replace("60 ml", "62.5 ml")}`);
  expect((await since(folder, "HEAD")).places).toEqual(["old.drink:19 decimal-comma"]);
});

test("moved down, moved to another file, written with other line breaks: nothing is new", async () => {
  const { folder, write } = repositoryOf(house);
  write("old.drink", `# The ropes.\n\n${taut}`.replaceAll("\n", "\r\n"));
  mkdirSync(join(folder, "cards"));
  write("cards/loose.drink", loose);
  renameSync(join(folder, "bar.drink"), join(folder, "cards/bar.drink"));
  expect(await since(folder, "HEAD")).toMatchObject({ code: 0, places: [] });
});

test("what a change does to drinks elsewhere is shown there", async () => {
  const { folder, write } = repositoryOf(house);
  write("bar.drink", readFileSync(join(folder, "bar.drink"), "utf8").replace("stock plain spirit", "stock other spirit"));
  const { places } = await since(folder, "HEAD");
  expect(places).toContain("old.drink:7 unknown-ingredient");
  expect(places).not.toContain("old.drink:9 decimal-comma");
});

test("what the change made graver is shown", async () => {
  const { folder, write } = repositoryOf(house);
  write("house.drink", "house Test Room\n  jigger: 2.5 ml\n  severity: decimal-comma error\n");
  const { code, places } = await since(folder, "HEAD", "--max-warnings", "9");
  expect({ code, places }).toEqual({ code: 1, places: ["old.drink:9 decimal-comma", "old.drink:19 decimal-comma"] });
});

test("where there were no specs before, all is new", async () => {
  const { folder, write } = repositoryOf("=== list.txt\nrope\n");
  write("new.drink", drink("New Rope", "17,5 ml rich sugar syrup"));
  expect((await since(folder, "HEAD")).places).toContain("new.drink:9 decimal-comma");
});

test("from a folder below the top, with a path, and in Markdown", async () => {
  const book = (amount: string) =>
    `# Ropes\n\n- In a list:\n  \`\`\`drink\n${loose.replace("17,5", amount).replace(/^(?=.)/gm, "  ")}  \`\`\`\n`;
  const { folder, write } = repositoryOf(
    `${soundHouse}=== book/one.md\n${book("17.5")}=== book/two.md\n${book("17,5").replace("Loose", "Other")}`,
  );
  write("book/one.md", book("17,5"));
  expect((await since(join(folder, "book"), "HEAD")).places).toEqual(["one.md:13 decimal-comma"]);
  expect((await since(join(folder, "book"), "HEAD", "two.md")).places).toEqual([]);
});

test.each([
  ["nowhere", "There is no revision “nowhere” here.\n"],
  ["--upload-pack=touch", "There is no revision “--upload-pack=touch” here.\n"],
])("a revision that is none is said: %s", async (revision, words) => {
  const { folder } = repositoryOf(house);
  const { code, err, out } = await mutchkin(folder, ["check", `--changed-since=${revision}`]);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain(words);
});

test("outside a repository it is said, too", async () => {
  const { code, err } = await mutchkin(folderOf(house), ["check", "--changed-since", "HEAD"]);
  expect(code).toBe(2);
  expect(err).toContain("This folder is in no git repository, so there is nothing to compare it with.\n");
});

test("somebody who watches is told of both readings", async () => {
  const { folder } = repositoryOf(house);
  const told: string[] = [];
  await mutchkin(folder, ["check", "--changed-since", "HEAD"], { progress: (text) => told.push(text) });
  expect(told).toEqual(expect.arrayContaining(["Reading 2 of 3", "Computing 2 of 3", "Reading HEAD", "Computing HEAD: 2 of 3"]));
  expect(told.at(-1)).toBe("");
});

test("before the first commit all of it is new, and the check is made", async () => {
  const folder = folderOf(house);
  execFileSync("git", ["init", "-q", "-b", "main"], { cwd: folder });
  const { code, err, places, out } = await since(folder, "HEAD");
  expect({ code, err, places }).toEqual({ code: 1, err: "", places: ["old.drink:9 decimal-comma", "old.drink:19 decimal-comma"] });
  expect(out).toContain("Nothing is committed here yet, so all of it is new.\n");
});

test("where a shallow clone does not reach back to the parting, it says what it compares with", async () => {
  const { folder, git, write } = repositoryOf(house);
  git("switch", "-q", "-c", "winter");
  write("mine.drink", drink("Mine", "17,5 ml rich sugar syrup"));
  git("add", "-A");
  git("commit", "-q", "-m", "Add a drink");
  git("switch", "-q", "main");
  write("theirs.drink", drink("Theirs", "17,5 ml rich sugar syrup"));
  git("add", "-A");
  git("commit", "-q", "-m", "Add another");
  const shallow = join(folderOf("=== x\n"), "shallow");
  git("clone", "-q", "--depth", "1", "--no-single-branch", "--branch", "winter", `file://${folder}`, shallow);
  const told = "No commit is common to origin/main and this branch here: it is compared with origin/main as it is now.";
  expect((await since(shallow, "origin/main")).out).toContain(told);
  git("-C", shallow, "fetch", "-q", "--unshallow");
  expect((await since(shallow, "origin/main")).out).not.toContain(told);
});
