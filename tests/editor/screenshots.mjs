/**
 * Pictures of the real editor for the README, into `client/media/`: `npm run screenshots`.
 * Look at each of them afterwards: a picture that came out empty passes no test.
 */
import { join } from "node:path";
import { besideTheText, onPaper } from "./book-screenshots.mjs";
import { chosenEditor, root } from "./editors.mjs";
import { hoverWord, openFile, openFixes, squiggle } from "./page.mjs";
import { openWorkbench } from "./workbench.mjs";

const themes = { light: "Default Light Modern", dark: "Default Dark Modern", "high-contrast": "Default High Contrast" };
const media = join(root, "client/media");

for (const [theme, title] of Object.entries(themes)) {
  const settings = {
    "workbench.colorTheme": title,
    "workbench.statusBar.visible": false,
    "workbench.activityBar.location": "hidden",
    "breadcrumbs.enabled": false,
    "editor.fontSize": 13,
    "editor.lightbulb.enabled": "off",
    "editor.guides.indentation": false,
    "editor.hover.delay": 50,
    // The list of files shows only what fits on the screen: the one that is opened must.
    "files.exclude": { "**/mistakes/[a-t]*.drink": true },
  };
  const { page, workspace, close } = await openWorkbench({ editor: chosenEditor(), vsix: join(root, "mutchkin.vsix"), settings });
  const shot = async (name) => {
    await page.waitForTimeout(700); // for fading in
    await page.screenshot({ path: join(media, `${name}-${theme}.png`), animations: "disabled", caret: "hide" });
  };
  try {
    await page.setViewportSize({ width: 860, height: 520 });
    // A squiggle first: it shows that the server is up.
    await openFile(page, "samples", "mistakes", "unbalanced.drink");
    await squiggle(page);
    await page.keyboard.press("Control+B"); // the explorer's room is wanted for the text
    await hoverWord(page, /^\s*sour$/, /too sweet/i);
    await shot("squiggle");
    await openFixes(page, /^\s*sour$/, /sugar syrup/i);
    await shot("quick-fix");

    await page.keyboard.press("Escape");
    await page.keyboard.press("Control+B");
    await openFile(page, "samples", "halyard-room", "sours.drink");
    await page.keyboard.press("Control+B");
    await page
      .locator(".codelens-decoration", { hasText: /on 1 menu/ })
      .first()
      .waitFor({ timeout: 60_000 });
    await shot("spec");
    await hoverWord(page, "Lantern", /strength/i);
    await shot("hover");
    if (theme === "light") {
      await page.keyboard.press("Control+B");
      await besideTheText(page, workspace, shot);
    }
  } finally {
    await close();
  }
  console.log(`${theme}: done`);
}
await onPaper(media);
