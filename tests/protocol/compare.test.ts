/** The house beside a revision of its repository, as an editor asks for it. */
import { execFileSync } from "node:child_process";
import { delimiter } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import { CancellationTokenSource, WorkDoneProgress } from "vscode-languageserver/node";
import type { InlayHint } from "vscode-languageserver-types";
import type { DiffRows, Row, RowGroup } from "../../server/reports/diff-rows.ts";
import { layOut, nowhere, start } from "./start.ts";

const shelf = `house The Halyard Room
  currency: GBP

stock pier spirit
  kind: spirit
  abv: 40 %
  allergens: none
  price: 20.00 per 1 l

stock almond cordial
  kind: syrup
  sugar: 60 g/100 ml
  allergens: nuts
  price: 9.00 per 1 l
`;
const drink = (name: string, ...pours: string[]) =>
  `drink ${name}\n  glass: none\n  garnish: none\n  method: none\n${pours.map((pour) => `  ${pour}\n`).join("")}`;
const slip = drink("Slip", "50 ml pier spirit", "20 ml water");
const rope = drink("Rope", "40 ml pier spirit", "15 ml almond cordial", "10 ml water");
const oar = drink("Oar", "30 ml pier spirit", "30 ml water");
const menu = "menu Winter card\n  - Slip 11.00\n  - Oar 9.00\n";
const texts = { "bar/shelf.drink": shelf, "bar/slip.drink": slip, "bar/rope.drink": rope, "bar/oar.drink": oar, "bar/menu.drink": menu };

function repository(files: Readonly<Record<string, string>> = texts) {
  const house = layOut(files);
  const cwd = fileURLToPath(house.folder().uri);
  const env = { ...process.env, GIT_CONFIG_GLOBAL: "/dev/null", GIT_CONFIG_SYSTEM: "/dev/null" };
  const git = (...parameters: string[]) =>
    execFileSync("git", ["-c", "user.name=Bar", "-c", "user.email=bar@halyard.invalid", ...parameters], { cwd, env, encoding: "utf8" });
  git("init", "-q", "-b", "main");
  git("add", "-A");
  git("commit", "-q", "-m", "The autumn card");
  return { ...house, git };
}

type Answer = DiffRows & { readonly commit: string; readonly problem?: string };
const at = (uri: string, line?: number) => ({ textDocument: { uri }, ...(line !== undefined && { position: { line, character: 0 } }) });

async function serving(house: ReturnType<typeof layOut>, folder = "bar") {
  const client = await start({ folders: [house.folder(folder)] });
  const compare = (revision: string, path = "bar/slip.drink", line?: number) =>
    client.request<Answer>("mutchkin/compare", { ...at(house.uriOf(path), line), revision });
  return { client, compare };
}

const groups = ({ sections }: DiffRows): RowGroup[] => sections.flatMap((section) => [...section.groups]);
const titled = (rows: DiffRows, title: string) => groups(rows).find((one) => one.title.startsWith(title))!;
const said = ({ rows }: RowGroup) => rows.map(({ text }: Row) => text);

test("branches, tags and commits are listed, the latest first", async () => {
  const house = repository();
  house.git("branch", "summer");
  house.git("tag", "printed");
  house.git("commit", "-q", "--allow-empty", "-m", "Try a <b>bold</b> one");
  const { client } = await serving(house);
  const listed = (of: string) =>
    client.request<{ revisions: { name: string; subject: string }[] }>("mutchkin/revisions", { ...at(house.uriOf("bar/slip.drink")), of });
  expect((await listed("branches")).revisions.map(({ name }) => name).sort()).toEqual(["main", "summer"]);
  expect((await listed("tags")).revisions).toEqual([
    { name: "printed", date: expect.stringMatching(/^\d{4}-\d\d-\d\d$/), subject: "The autumn card" },
  ]);
  expect((await listed("commits")).revisions.map(({ subject }) => subject)).toEqual(["Try a <b>bold</b> one", "The autumn card"]);
});

test("an unsaved text, a renamed drink and a deleted file, each with its place", async () => {
  const house = repository();
  house.write("bar/oar.drink", oar.replace("drink Oar", "# said twice\ndrink Blade"));
  house.remove("bar/rope.drink");
  const { client, compare } = await serving(house);
  const uri = house.uriOf("bar/slip.drink");
  await client.open(uri, slip.replace("20 ml water", "20 ml water\n  10 ml almond cordial"));
  const answer = await compare("main");
  expect(answer).toMatchObject({ title: "Drinks: main → now", summary: expect.stringMatching(/^Drinks: 1 removed, 1 renamed, 1 changed/) });
  expect(answer.commit).toBe(house.git("rev-parse", "main").trim());
  expect(groups(answer)[0]).toMatchObject({
    title: "Slip, changed (on Winter card)",
    place: { uri, line: 0, side: "now" },
    was: { uri, line: 0, side: "then" },
  });
  const [first, second] = titled(answer, "Slip").rows;
  expect(first).toEqual({ kind: "hurt", text: expect.stringContaining("Now contains") });
  expect(second).toEqual({ kind: "said", text: expect.stringContaining("almond cordial"), place: { uri, line: 6, side: "now" } });
  expect(titled(answer, "Blade, renamed from Oar")).toMatchObject({ place: { uri: house.uriOf("bar/oar.drink"), line: 1, side: "now" } });
  const gone = titled(answer, "Rope, removed");
  expect(gone.place).toEqual({ uri: house.uriOf("bar/rope.drink"), line: 0, side: "then" });
  expect(await client.request("mutchkin/pastText", { uri: gone.place!.uri, commit: answer.commit })).toEqual({ text: rope });
});

test("what git is told to look away from is as it is, a file or a whole folder", async () => {
  const house = repository({ ...texts, ".gitignore": "drafts/\n/bar/try.drink\n" });
  house.write("bar/try.drink", drink("Try", "50 ml pier spirit", "20 ml water"));
  house.write("bar/drafts/one.drink", drink("One", "50 ml pier spirit", "20 ml water"));
  house.write("bar/new.drink", drink("New", "50 ml pier spirit", "20 ml water"));
  const answer = await (await serving(house)).compare("HEAD");
  expect(groups(answer).map(({ title }) => title)).toEqual(["New, added"]);
});

test("nothing that was committed, and nothing to look further back in", async () => {
  const house = repository();
  house.git("checkout", "-q", "--orphan", "empty");
  expect(await (await serving(house)).compare("HEAD")).toEqual({
    problem: "Nothing is committed here yet. Commit the specs once, then compare.",
  });
});

test("what is of the menu at the cursor comes first, and elsewhere nothing is kept back", async () => {
  const house = repository();
  house.write("bar/menu.drink", menu.replace("Slip 11.00", "Slip 12.00"));
  house.write("bar/slip.drink", slip.replace("20 ml water", "25 ml water"));
  house.write("bar/rope.drink", rope.replace("15 ml almond cordial", "15 ml water"));
  const answer = await (await serving(house)).compare("HEAD", "bar/menu.drink", 1);
  expect(answer.title).toBe("Winter card: HEAD → now");
  expect(answer.sections.map(({ heading }) => heading)).toEqual(["The menu", "Its drinks: changed", "Elsewhere: changed"]);
  const price = titled(answer, "Winter card").rows[0]!;
  expect(price).toEqual({
    kind: "said",
    text: "Slip £11.00 → £12.00",
    place: { uri: house.uriOf("bar/menu.drink"), line: 1, side: "now" },
  });
  expect(said(titled(answer, "Rope"))[0]).toMatch(/^No longer contains .*nuts|^No longer contains .*almond/i);
  const whole = await (await serving(house)).compare("HEAD", "bar/menu.drink");
  expect(whole.sections.map(({ heading }) => heading)).toEqual(["Changed", "Menus"]);
});

test("a stock that moves drinks nobody touched says which, and they say through what", async () => {
  const house = repository();
  house.write("bar/shelf.drink", shelf.replace("abv: 40 %", "abv: 43 %"));
  const answer = await (await serving(house)).compare("main");
  const stock = titled(answer, "stock pier spirit");
  expect(stock.title).toBe("stock pier spirit, changed (moves 3 drinks)");
  expect(stock.rows[0]).toEqual({
    kind: "said",
    text: "abv: 40 % → 43 %",
    place: { uri: house.uriOf("bar/shelf.drink"), line: 5, side: "now" },
  });
  expect(stock.rows[1]!.place!.uri).toBe(house.uriOf("bar/oar.drink"));
  expect(titled(answer, "Slip").rows.at(-1)).toEqual({ kind: "through", text: "through stock pier spirit", place: stock.place });
});

test("where nothing changed it says so, also of what only another folder of the repository holds", async () => {
  const house = repository({ ...texts, "other/card.drink": drink("Elsewhere", "10 ml water") });
  house.remove("other/card.drink");
  const answer = await (await serving(house)).compare("main");
  expect(answer.summary).toBe("No drink differs.");
  expect(answer.sections).toEqual([{ heading: "Changed", groups: [], note: "Nothing differs." }]);
});

test.each([
  ["a revision that is not there", "nowhere", /^There is no revision “nowhere” here/],
  ["one that looks like an option", "--output=x", /^There is no revision “--output=x” here/],
])("%s is refused in words", async (_what, revision, problem) => {
  expect(await (await serving(repository())).compare(revision)).toEqual({ problem: expect.stringMatching(problem) });
});

test("without a repository, without a folder on the disk, without a commit, it says so", async () => {
  const house = layOut(texts);
  const { client, compare } = await serving(house);
  expect(await compare("main")).toEqual({ problem: expect.stringContaining("is in no git repository") });
  const listed = (uri: string) => client.request("mutchkin/revisions", { ...at(uri), of: "commits" });
  expect(await listed(house.uriOf("bar/slip.drink"))).toEqual({ problem: expect.stringContaining("is in no git repository") });
  expect(await listed("vault://bar/house/card.drink")).toEqual({ problem: expect.stringContaining("on no disk") });
  execFileSync("git", ["init", "-q"], { cwd: fileURLToPath(house.folder().uri) });
  expect(await listed(house.uriOf("bar/slip.drink"))).toEqual({ revisions: [] });
  expect(await client.request("mutchkin/pastText", { uri: house.uriOf("bar/slip.drink"), commit: "--batch" })).toEqual({
    problem: "“--batch” is no commit's name.",
  });
});

test("without git on the PATH it says what to do, and the server lives", async () => {
  const path = process.env.PATH;
  onTestFinished(() => {
    process.env.PATH = path;
  });
  const house = repository();
  process.env.PATH = ["/nowhere", "/nor/here"].join(delimiter);
  const { client, compare } = await serving(house);
  process.env.PATH = path;
  expect(await compare("main")).toEqual({ problem: expect.stringContaining("Install git") });
  await client.open(nowhere("a.drink"), slip);
  expect(await client.request("textDocument/hover", { ...at(nowhere("a.drink")), position: { line: 0, character: 7 } })).not.toBeNull();
});

test("it says how far it is to whoever gives a token for it, and stops when it is told to", async () => {
  const house = repository();
  const { client } = await serving(house);
  const told: string[] = [];
  client.connection.onProgress(WorkDoneProgress.type, "one", ({ kind }) => {
    told.push(kind);
  });
  const asked = { ...at(house.uriOf("bar/slip.drink")), revision: "main" };
  await client.request("mutchkin/compare", { ...asked, workDoneToken: "one" });
  expect([told[0], told.at(-1)]).toEqual(["begin", "end"]);
  const stopping = new CancellationTokenSource();
  client.connection.onProgress(WorkDoneProgress.type, "two", () => stopping.cancel());
  expect(await client.request("mutchkin/compare", { ...asked, workDoneToken: "two" }, stopping.token)).toEqual({
    problem: expect.stringContaining("stopped"),
  });
});

test("beside an earlier text each change stands in figures, in Markdown too, and follows the text", async () => {
  const house = layOut(texts);
  const { client } = await serving(house);
  const hints = (uri: string, before?: string) =>
    client.request<InlayHint[]>("mutchkin/changeHints", {
      textDocument: { uri },
      range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } },
      before,
    });
  const gangway = slip.replace("Slip", "Gangway");
  const now = gangway.replace("20 ml", "30 ml");
  const chapter = (text: string) => `# One\n\n> - \`\`\`drink\n${text.replace(/^(?=.)/gm, ">   ")}>   \`\`\`\n`;
  const uri = house.uriOf("bar/chapter.md");
  await client.open(uri, chapter(now), 1, "markdown");
  const [hint, ...others] = await hints(uri, chapter(gangway));
  expect(others).toEqual([]);
  expect(hint!.position).toEqual({ line: 3, character: 17 });
  expect(hint!.label).toBe("strength 28.6 → 25 % vol · volume 70 → 80 ml");
  await client.change(uri, 2, [{ text: chapter(gangway) }]);
  expect(await hints(uri, chapter(gangway))).toEqual([]);
  expect(await hints(uri)).toEqual([]);
});
