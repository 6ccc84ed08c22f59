/** The README's pictures of what is written and printed: the preview, a page of the book, a card, a comparison. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { openPage } from "./browser.mjs";
import { root } from "./editors.mjs";
import { openFile, runCommand } from "./page.mjs";

/** What the editor shows beside a text. */
export async function besideTheText(page, workspace, shot) {
  await page.setViewportSize({ width: 1180, height: 640 });
  await openFile(page, "samples", "slack-water", "embarkation.md");
  await page.keyboard.press("F1");
  await page.keyboard.type("Preview the Chapter as It Prints");
  await page.locator(".quick-input-list .monaco-list-row", { hasText: "Preview the Chapter" }).first().waitFor();
  await page.keyboard.press("Enter");
  await inPanel(page, "h1, h2");
  await page.keyboard.press("Control+B"); // the explorer's room is wanted for the text
  await page.locator(".view-line", { hasText: "being" }).first().click();
  await shot("preview");

  const sours = join(workspace, "samples/halyard-room/sours.drink");
  writeFileSync(sours, readFileSync(sours, "utf8").replace("50 ml aged rum", "60 ml aged rum").replace("1 egg white", "30 ml aquafaba"));
  await page.keyboard.press("Control+K");
  await page.keyboard.press("Control+W");
  await page.keyboard.press("Control+B");
  await openFile(page, "samples", "halyard-room", "menu.drink");
  await runCommand(page, "Compare with a Revision");
  await page.locator(".quick-input-list .monaco-list-row", { hasText: "main" }).first().click();
  await inPanel(page, "h1, h2");
  await page.keyboard.press("Control+B");
  await shot("compare");
}

/** Waits for something to be shown in the panel, which is a page in a page in the editor's. */
async function inPanel(page, selector) {
  const panel = page.frameLocator("iframe.webview.ready").last().frameLocator("#active-frame");
  await panel.locator(selector).first().waitFor({ timeout: 60_000 });
}

/** What is printed, as a sheet of paper shows it. */
export async function onPaper(media) {
  const home = mkdtempSync(join(tmpdir(), "mutchkin-pictures-"));
  const mutchkin = (...words) =>
    execFileSync(process.execPath, [join(root, "dist/cli.js"), ...words], { stdio: ["ignore", "ignore", "inherit"] });
  const page = await openPage(join(home, "profile"), []);
  try {
    mutchkin("book", join(root, "samples/slack-water"), "--out", join(home, "book"), "--to", "html");
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize({ width: 620, height: 900 });
    await page.goto(pathToFileURL(join(home, "book/slack-water.html")).href);
    // The margins of a sheet, which a page has on paper alone.
    await page.addStyleTag({ content: "body { padding: 2rem 2.5rem !important; }" });
    const recipe = page
      .getByRole("heading", { name: "Gangway", exact: true })
      .first()
      .locator("xpath=ancestor::*[self::article or self::section][1]");
    const { x, y, width, height } = await recipe.boundingBox();
    await page.screenshot({
      path: join(media, "book-page.png"),
      fullPage: true,
      clip: { x: x - 40, y: y - 16, width: width + 80, height: height + 40 },
    });
    mutchkin("card", "Lantern Sour", join(root, "samples/halyard-room"), "--out", join(home, "cards.html"));
    await page.goto(pathToFileURL(join(home, "cards.html")).href);
    await page
      .locator("article")
      .first()
      .screenshot({ path: join(media, "card.png") });
  } finally {
    await page.context().close();
    rmSync(home, { recursive: true, force: true });
  }
}
