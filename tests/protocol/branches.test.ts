/** Another branch is checked out under the server's feet: thousands of files change at once. */
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { FileChangeType, type WorkspaceDocumentDiagnosticReport } from "vscode-languageserver/node";
import { layOut, start } from "./start.ts";

const many = 2000;
const drink = (n: number, spirit: string) => `drink Tide ${n}\n  method: stir 20 s\n  50 ml ${spirit}\n  ${1 + (n % 9)} ml brine\n`;
const types: Record<string, FileChangeType> = { A: FileChangeType.Created, M: FileChangeType.Changed, D: FileChangeType.Deleted };

test("after a checkout of another branch, and of the first again, all is as on a fresh start", async () => {
  const house = layOut({ "house.drink": "house The Halyard Room\n\nstock brine\n  kind: salt\n  salt: 20 g/100 ml\n" });
  const folder = fileURLToPath(house.folder().uri);
  const git = (...args: string[]) =>
    execFileSync("git", ["-c", "user.name=Bar", "-c", "user.email=bar@halyard.invalid", ...args], { cwd: folder, encoding: "utf8" });
  git("init", "-q", "-b", "summer");
  for (let n = 0; n < many; n++) house.write(`card/${n % 20}/tide-${n}.drink`, drink(n, "gin"));
  git("add", ".");
  git("commit", "-qm", "Summer");
  git("checkout", "-qb", "winter");
  // A third changes, a third goes, others come, and the brine is another thing now.
  for (let n = 0; n < many; n += 3) house.write(`card/${n % 20}/tide-${n}.drink`, drink(n, "nosuch"));
  for (let n = 1; n < many; n += 3) house.remove(`card/${n % 20}/tide-${n}.drink`);
  for (let n = many; n < many + 500; n++) house.write(`new/tide-${n}.drink`, drink(n, "rum"));
  house.write("house.drink", "house The Halyard Room\n\nstock brine\n  kind: spirit\n  abv: 96 %\n");
  git("add", "-A");
  git("commit", "-qm", "Winter");
  git("checkout", "-q", "summer");

  const client = await start({ folders: [house.folder()], pull: true });
  const found = async (asked: typeof client) => {
    const { items } = await asked.pullWorkspace();
    const said = items.map((item) => [item.uri, (item as Extract<WorkspaceDocumentDiagnosticReport, { items: unknown }>).items]);
    return new Map(said as [string, { code?: string }[]][]);
  };
  const before = await found(client);
  for (const branch of ["winter", "summer"]) {
    git("checkout", "-q", branch);
    const changes = git("diff", "--name-status", "--no-renames", "HEAD", "@{-1}", "-R")
      .trim()
      .split("\n")
      .map((line) => ({ uri: house.uriOf(line.slice(2)), type: types[line[0]!]! }));
    expect(changes.length).toBeGreaterThan(many / 2);
    await client.filesChanged(changes);
    const after = await found(client);
    const fresh = await start({ folders: [house.folder()], pull: true });
    expect(after).toEqual(await found(fresh));
    const codes = [...after.values()].flat().map(({ code }) => code);
    expect(codes.includes("unknown-ingredient")).toBe(branch === "winter");
    if (branch === "summer") expect(after).toEqual(before);
    await fresh.end();
  }
});
