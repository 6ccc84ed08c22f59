/**
 * The editor suite: `node tests/editor/run.mjs [steady|newest|web]`, after `setup.mjs` and `npm run package`.
 *
 * Three times over: asked of the editor itself in a folder, the same without a folder, and looked at
 * on the page with the packaged extension installed. Ends with `N passed, N failed`.
 */
import { join } from "node:path";
import { until } from "./browser.mjs";
import { chosenEditor, root } from "./editors.mjs";
import { applyFirstFix, hoverWord, openFile, runCommand, squiggle, tokenClasses } from "./page.mjs";
import { openWebWorkbench } from "./web-workbench.mjs";
import { openWorkbench } from "./workbench.mjs";

const editor = chosenEditor();
const open = editor.name === "web" ? openWebWorkbench : openWorkbench;
const suite = join(root, "tests/editor/suite.js");
const results = [];

// Whatever hangs, the run ends.
setTimeout(() => {
  record("everywhere", "the suite ends within a quarter of an hour", "it did not", 900_000);
  end();
}, 900_000).unref();

await asked("in a folder", { suite });
await asked("without a folder", { suite, folder: false });
await looked("with the packaged extension", { vsix: join(root, "mutchkin.vsix") });

end();

function end() {
  const failed = results.filter(({ failure }) => failure).length;
  console.log(`${results.length - failed} passed, ${failed} failed`);
  process.exit(failed ? 1 : 0);
}

/** Runs the suite in the extension host. */
async function asked(where, options) {
  await inWorkbench(where, options, async (workbench) => {
    for (const { name, failure, milliseconds } of await workbench.report()) record(where, name, failure, milliseconds);
  });
}

/** Looks at the page as a person does. */
async function looked(where, options) {
  await inWorkbench(where, options, async ({ page }) => {
    await look(where, "words of different meaning have different colours", async () => {
      await openFile(page, "specs", "sours.drink");
      // The text is there a moment before its colours are.
      await until("four colours or more", 60_000, async () => {
        const classes = await tokenClasses(page, ["drink", "Slipway", "family", "60", "aged", "frozen"]);
        return new Set(Object.values(classes)).size >= 4;
      });
    });
    await look(where, "a house is written into a folder without one, by the keyboard", async () => {
      await runCommand(page, "Mutchkin: New House");
      await page.keyboard.type("The Halyard Room");
      await page.keyboard.press("Enter");
      await page.locator(".quick-input-list .monaco-list-row").first().waitFor({ timeout: 60_000 });
      await page.keyboard.press("Enter");
      await page
        .locator(".view-line", { hasText: /drink\sFirst\sFerry/ })
        .first()
        .waitFor({ timeout: 60_000 });
      await page
        .locator(".codelens-decoration", { hasText: /on 1 menu/ })
        .first()
        .waitFor({ timeout: 60_000 });
      await openFile(page, "specs", "sours.drink");
    });
    await look(where, "the wrong name is underlined", () => squiggle(page));
    await look(where, "the mouse on a drink's name shows its figures", () => hoverWord(page, "Slipway", /strength/i));
    await look(where, "the fix in the menu changes the text", async () => {
      await applyFirstFix(page, "juce", /lemon juice/i);
      await page
        .locator(".view-line", { hasText: /lemon\sjuice/ })
        .first()
        .waitFor({ timeout: 60_000 });
    });
    if (editor.name === "web") return; // There is no git to ask.
    await look(where, "what that changes is compared with a branch, on a page whose rows can be followed", async () => {
      await runCommand(page, "Mutchkin: Compare with a Revision");
      await page.locator(".quick-input-list .monaco-list-row", { hasText: "main" }).first().waitFor({ timeout: 60_000 });
      await page.keyboard.press("Enter");
      const shown = page.frameLocator("iframe.webview.ready").frameLocator("#active-frame");
      const article = shown.locator("article", { hasText: "Slipway Sour, changed" });
      await article.locator("li", { hasText: "lemon juice" }).first().waitFor({ timeout: 60_000 });
      await shown.locator("a", { hasText: "Compare again" }).click();
      await article.locator("a", { hasText: "Lines then and now" }).click();
      await page.locator(".tab", { hasText: "↔ now" }).first().waitFor({ timeout: 60_000 });
    });
  });
}

/** A page is slow and moves under the mouse: what fails is tried once more, and the report says so. */
async function look(where, name, act) {
  const started = Date.now();
  const first = await act().then(() => undefined, String);
  if (first) console.log(`${where}: ${name}: tried again, because of\n  ${first}`);
  const failure = first && (await act().then(() => undefined, String));
  record(where, name, failure, Date.now() - started);
}

/** A workbench that does not come up is a failure like another, with what it said. */
async function inWorkbench(where, options, act) {
  let workbench;
  try {
    workbench = await open({ editor, ...options });
    await act(workbench);
  } catch (cause) {
    console.log(workbench?.log.slice(-60).join("\n") ?? "");
    record(where, "the editor comes up and answers", String(cause), 0);
  } finally {
    await workbench?.close();
  }
}

function record(where, name, failure, milliseconds) {
  results.push({ failure });
  console.log(`${failure ? "✗" : "✓"} ${editor.title}, ${where}: ${name} (${milliseconds} ms)${failure ? `\n  ${failure}` : ""}`);
}
