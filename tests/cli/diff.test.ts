/** `mutchkin diff` on real repositories with a known history. */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { type DiffReport, diffSchema } from "../../server/reports/diff-schema.ts";
import { folderOf, mutchkin } from "./command.ts";

const git = (folder: string, ...args: string[]) =>
  execFileSync("git", ["-c", "user.name=Bar", "-c", "user.email=bar@halyard.invalid", "-c", "commit.gpgsign=false", ...args], {
    cwd: folder,
    encoding: "utf8",
    stdio: ["pipe", "pipe", "pipe"],
  });

const autumn = `=== bar/house.drink
house The Halyard Room
  country: GB
  currency: GBP
  units: ml
=== bar/stock.drink
stock pier spirit
  kind: spirit
  abv: 40 %
  allergens: none
  price: 20.00 per 1 l

stock almond cordial
  kind: syrup
  sugar: 60 g/100 ml
  allergens: nuts

prep plain syrup
  1 part sugar
  1 part water
  parts by: weight
=== bar/card.drink
drink Slip
  glass: none
  garnish: none
  method: none
  50 ml pier spirit
  50 ml water

drink Rope
  glass: none
  garnish: none
  method: none
  40 ml pier spirit
  20 ml plain syrup
  10 ml water

drink Hawser
  glass: none
  garnish: none
  method: none
  30 ml pier spirit
  15 ml water
  15 ml plain syrup

drink Gone
  glass: none
  method: none
  30 ml water

drink Spaced
  glass:   none
  method: none
  30 ml water

menu Card
  - Slip 10.00
  - Rope 11.00
  - Gone 5.00
`;

/** What somebody did to it: each line of the expectation below is one of these. */
const winter = (text: string) =>
  text
    .replace("abv: 40 %", "abv: 50 %")
    .replace("40 ml pier spirit\n  20 ml plain syrup", "40 ml pier spirit\n  20 ml almond cordial")
    .replace("drink Hawser", "drink Warp")
    .replace(/drink Gone[\s\S]*?\n\n/, "")
    .replace("glass:   none", "glass: none # here")
    .replace("  - Gone 5.00\n", "  - Tide 12.00\n")
    .replace("Slip 10.00", "Slip 10.50")
    .replace("menu Card", "drink Tide\n  glass: none\n  method: none\n  20 ml pier spirit\n\nmenu Card");

function repository(): string {
  const folder = folderOf(autumn);
  git(folder, "init", "-q", "-b", "main");
  git(folder, "add", ".");
  git(folder, "commit", "-qm", "Autumn");
  for (const name of ["stock", "card"]) {
    const file = join(folder, `bar/${name}.drink`);
    writeFileSync(file, winter(readFileSync(file, "utf8")));
  }
  return folder;
}

const reportOf = async (folder: string, ...asked: string[]): Promise<DiffReport> => {
  const { code, out, err } = await mutchkin(folder, ["diff", "--format", "json", ...asked]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return diffSchema.parse(JSON.parse(out));
};

describe("a made history", () => {
  test("is told as drinks, ripple included", async () => {
    const report = await reportOf(repository());
    expect(report.summary).toEqual({ added: 1, removed: 1, renamed: 1, changed: 1, moved: 1, rewritten: 1 });
    const told = report.drinks.map(({ name, oldName, how, pours, because, menus }) => ({ name, oldName, how, pours, because, menus }));
    const spirit = ["stock pier spirit"];
    expect(told).toEqual([
      // Nuts come first.
      {
        name: "Rope",
        oldName: null,
        how: "changed",
        pours: "20 ml almond cordial for 20 ml plain syrup",
        because: spirit,
        menus: ["Card"],
      },
      { name: "Slip", oldName: null, how: "moved", pours: "", because: spirit, menus: ["Card"] },
      { name: "Warp", oldName: "Hawser", how: "renamed", pours: "", because: spirit, menus: [] },
      { name: "Tide", oldName: null, how: "added", pours: "", because: [], menus: ["Card"] },
      { name: "Gone", oldName: null, how: "removed", pours: "", because: [], menus: ["Card"] },
      { name: "Spaced", oldName: null, how: "rewritten", pours: "", because: [], menus: [] },
    ]);
    const [rope, slip] = report.drinks;
    expect(rope!.effects!.allergens).toEqual({ gained: ["nuts"], lost: [] });
    expect(rope!.preps).toEqual({ gained: [], lost: ["plain syrup"] });
    // By hand: 50 ml of 40 and of 50 % vol hold 50 × 0.4 and 50 × 0.5 ml of ethanol of 0.78924 g/ml (OIML R 22, at 20 °C).
    const alcohol = slip!.effects!.figures.find(({ figure }) => figure === "ethanolG")!;
    expect(alcohol.before.value).toBeCloseTo(50 * 0.4 * 0.78924, 1);
    expect(alcohol.after.value).toBeCloseTo(50 * 0.5 * 0.78924, 1);
    expect(report.things).toMatchObject([
      {
        kind: "stock",
        name: "pier spirit",
        how: "changed",
        fields: [{ field: "abv", before: "40 %", after: "50 %" }],
        moved: [{ drink: "Slip" }],
        menus: ["Card"],
      },
    ]);
    expect(report.menus).toEqual([
      {
        name: "Card",
        how: "changed",
        currency: "GBP",
        added: ["Tide"],
        removed: ["Gone"],
        renamed: [],
        prices: [{ drink: "Slip", before: 10, after: 10.5 }],
        rangeBefore: [5, 11],
        rangeAfter: [10.5, 12],
      },
    ]);
  });

  test("reads the same in words, who could be hurt first", async () => {
    const { out } = await mutchkin(repository(), ["diff"]);
    expect(out.split("\n\n").map((part) => part.split("\n")[0])).toEqual([
      "HEAD → the working tree: drinks: 1 added, 1 removed, 1 renamed, 1 changed, 1 moved, 1 only rewritten; 1 other change; 1 menu",
      "Rope, changed (on Card)",
      "Warp, renamed from Hawser",
      "Tide, added (on Card)",
      "Gone, removed (on Card)",
      "Moved, though nobody touched them",
      "Slip (on Card)",
      "Behind them",
      "stock pier spirit, changed",
      "Menus",
      "Card, changed",
      "Only blanks and comments differ: Spaced.",
    ]);
    const rope = /Rope, changed[\s\S]*?\n\n/.exec(out)![0].split("\n");
    expect(rope[1]).toBe("  ! now contains nuts");
  });

  test("is the same between commits, from below, by paths, in a worktree, a bare clone and after files moved", async () => {
    const folder = repository();
    const whole = await reportOf(folder);
    const [before, after] = ["HEAD~1", "HEAD"];
    git(folder, "mv", "bar/card.drink", "bar/winter.drink");
    git(folder, "commit", "-qam", "Winter");
    const named = { before, after };
    const plain = ({ drinks }: DiffReport) => drinks.map(({ before: _b, after: _a, ...drink }) => drink);
    const between = await reportOf(folder, "HEAD~1..HEAD");
    expect(plain(between)).toEqual(plain(whole));
    expect(between).toMatchObject(named);
    expect(between.drinks[1]).toMatchObject({ before: { file: "bar/card.drink" }, after: { file: "bar/winter.drink" } });
    expect(plain(await reportOf(join(folder, "bar"), "HEAD~1"))).toEqual(plain(whole));
    expect((await reportOf(folder, "HEAD~1", "bar/stock.drink")).drinks).toEqual([]);
    expect((await reportOf(folder, "HEAD~1", "bar/stock.drink")).things).toHaveLength(1);
    const worktree = `${folder}-worktree`;
    git(folder, "worktree", "add", "-q", worktree, "HEAD");
    expect(plain(await reportOf(worktree, "HEAD~1"))).toEqual(plain(whole));
    git(folder, "worktree", "remove", "--force", worktree);
    const bare = join(folderOf("=== x\n"), "bare");
    git(folder, "clone", "-q", "--bare", folder, bare);
    expect(plain(await reportOf(bare, "HEAD~1..HEAD"))).toEqual(plain(whole));
    const shallow = join(folderOf("=== x\n"), "shallow");
    git(folder, "clone", "-q", "--depth", "1", `file://${folder}`, shallow);
    expect(plain(await reportOf(shallow))).toEqual([]);
    expect(await mutchkin(shallow, ["diff", "HEAD~1"])).toEqual({
      code: 2,
      out: "",
      err: "There is no revision “HEAD~1” here.\nThis clone is shallow: fetch more of its history first.\n",
    });
  });
});

test("two folders are compared like two revisions", async () => {
  const folder = folderOf(autumn);
  mkdirSync(join(folder, "old"));
  renameSync(join(folder, "bar"), join(folder, "old/bar"));
  for (const name of ["house", "stock", "card"]) {
    const to = join(folder, `new/bar/${name}.drink`);
    mkdirSync(dirname(to), { recursive: true });
    writeFileSync(to, winter(readFileSync(join(folder, `old/bar/${name}.drink`), "utf8")));
  }
  const { before, after, summary } = await reportOf(folder, "old", "new");
  expect({ before, after }).toEqual({ before: "old", after: "new" });
  expect(summary.changed).toBe(1);
});

test("a line that no longer reads is said, and the rest is compared", async () => {
  const folder = repository();
  const file = join(folder, "bar/card.drink");
  writeFileSync(file, `${readFileSync(file, "utf8")}  !!!\n`);
  const { broken, drinks } = await reportOf(folder);
  expect(broken).toMatchObject([{ side: "after", file: "bar/card.drink", lines: [expect.any(Number)] }]);
  expect(drinks.length).toBeGreaterThan(4);
});

test("outside of a repository, without such a revision, and in a bare one without two, it says what to do", async () => {
  const nowhere = folderOf("=== a.drink\ndrink Slip\n");
  expect((await mutchkin(nowhere, ["diff"])).err).toMatch(/^This folder is in no git repository, .*\nRun `git init` /);
  const folder = repository();
  expect((await mutchkin(folder, ["diff", "nosuch"])).err).toBe(
    "There is no revision “nosuch” here.\nName a commit, a branch or a tag, such as HEAD~1.\n",
  );
  expect((await mutchkin(folder, ["diff", "--output=x..y"])).code).toBe(2);
});

test("names are no markup, neither in Markdown nor on the page", async () => {
  const folder = folderOf("=== a.drink\ndrink Slip\n  30 ml water\n");
  git(folder, "init", "-q", "-b", "main");
  git(folder, "add", ".");
  git(folder, "commit", "-qm", "One");
  const name = "<img src=x onerror=alert(1)> *bold* [x](javascript:y) @crew | & `tick`";
  writeFileSync(join(folder, "a.drink"), `drink ${name}\n  30 ml water\n  50 ml rum\n  20 ml lemon juice\n`);
  const { out: markdown } = await mutchkin(folder, ["diff", "--format", "markdown"]);
  expect(markdown).not.toMatch(/(?<!\\)[<*|`]img|(?<!\\)\*bold|@crew/);
  const { out: html } = await mutchkin(folder, ["diff", "--format", "html"]);
  expect(html).not.toMatch(/<img|<em>|href="(?!#drink\d+")|src=(?!x on)/);
  expect(html).toContain("&lt;img src=x onerror=alert(1)&gt; *bold*");
  expect(html).not.toMatch(/https?:|<script|<link/);
});

test("a history of 2,000 commits and 1,000 drinks", async () => {
  const folder = folderOf("=== x\n");
  git(folder, "init", "-q", "-b", "main");
  const drink = (n: number, ml: number) => `drink Tide ${n}\n  glass: none\n  method: none\n  ${ml} ml gin\n  30 ml water\n`;
  const stream: string[] = [];
  const data = (text: string) => `data ${Buffer.byteLength(text)}\n${text}\n`;
  for (let n = 0; n < 2000; n++) {
    const file = `tide-${n % 1000}.drink`;
    stream.push(
      `commit refs/heads/main\ncommitter Bar <bar@halyard.invalid> ${1_700_000_000 + n} +0000\n${data(`Commit ${n}`)}`,
      `M 100644 inline ${file}\n${data(drink(n % 1000, n < 1000 || n % 2 === 0 ? 40 : 50))}`,
    );
  }
  execFileSync("git", ["fast-import", "--quiet"], { cwd: folder, input: stream.join("") });
  const { summary, drinks } = await reportOf(folder, "main~1000..main");
  expect(summary).toMatchObject({ added: 0, removed: 0, renamed: 0, changed: 500, moved: 0 });
  expect(drinks[0]).toMatchObject({ pours: "gin 50 ml, not 40 ml" });
});
