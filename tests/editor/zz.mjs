/**
 * Pictures of the real editor for the README, into `client/media/`: `npm run screenshots`.
 * Look at each of them afterwards: a picture that came out empty passes no test.
 */
import { join } from "node:path";
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
  };
  const { page, close, log } = await openWorkbench({ editor: chosenEditor(), vsix: join(root, "mutchkin.vsix"), settings });
  const shot = async (name) => {
    await page.waitForTimeout(700); // for fading in
    await page.screenshot({ path: join(media, `${name}-${theme}.png`), animations: "disabled", caret: "hide" });
  };
  try {
    await page.setViewportSize({ width: 860, height: 520 });
    await openFile(page, "samples", "halyard-room", "sours.drink");
    await page.keyboard.press("Control+B"); // the explorer's room is wanted for the text
    await hoverWord(page, "Lantern", /strength/i).catch(async (e) => { console.log(log.filter(l=>!/404|vsda/.test(l)).slice(-25).join("\n")); throw e; });
    await shot("hover");

    await page.keyboard.press("Control+B");
    await openFile(page, "samples", "mistakes", "unbalanced.drink");
    await page.keyboard.press("Control+B");
    await squiggle(page);
    await hoverWord(page, "sour", /too sweet/i);
    await shot("squiggle");
    await openFixes(page, "sour", /sugar syrup/i);
    await shot("quick-fix");
  } finally {
    await close();
  }
  console.log(`${theme}: three pictures`);
}
