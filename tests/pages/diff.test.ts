/** The page of `mutchkin diff` in a real browser: valid, and for everybody to read, on a screen and on paper. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { folderOf, mutchkin } from "../cli/command.ts";
import { accessFaults, inBrowser, markupFaults } from "./browser.ts";

const browser = inBrowser();
const samples = "samples/halyard-room";
const texts = readdirSync(samples).filter((name) => name.endsWith(".drink"));
const changes: readonly (readonly [from: string, to: string])[] = [
  ["50 ml aged rum, frozen", "55 ml aged rum"],
  ["drink Slipway", "drink Long Slipway"],
  ["  1 egg white\n", ""],
  ["Bell Buoy 12.00", "Bell Buoy 13.00"],
];

/** The demo house before and after some changes. */
async function pageOf(): Promise<string> {
  const files = (side: string, changed: (text: string) => string) =>
    texts.map((name) => `=== ${side}/${name}\n${changed(readFileSync(`${samples}/${name}`, "utf8"))}\n`).join("");
  const after = (text: string) => changes.reduce((all, [from, to]) => all.replace(from, to), text);
  const folder = folderOf(files("before", (text) => text) + files("after", after));
  return (await mutchkin(folder, ["diff", "before", "after", "--format", "html"])).out;
}

test("is valid HTML", async () => expect(await markupFaults(await pageOf())).toEqual([]));

test.each(["screen", "print"] as const)("has nothing for axe to find: %s", async (media) => {
  const page = await browser.open(await pageOf(), media);
  expect(await page.locator("h1").count()).toBe(1);
  expect(await accessFaults(page)).toEqual([]);
  await page.close();
});

test("and in the dark", async () => {
  const page = await browser.open(await pageOf(), "screen");
  await page.emulateMedia({ colorScheme: "dark" });
  expect(await accessFaults(page)).toEqual([]);
  await page.close();
});
