/** What a person does in the workbench: opens a file, points at a word, takes a fix. */

/** The editor, once a file is open. View lines hold no-break spaces: match `\s`, never a blank. */
const openEditor = ".editor-instance .monaco-editor";
const patience = { timeout: 150_000 };

export async function openFile(page, ...path) {
  for (const [depth, name] of path.entries()) {
    const row = page.locator(".explorer-viewlet .monaco-list-row", { has: page.getByText(name, { exact: true }) }).first();
    await row.waitFor(patience);
    const last = depth === path.length - 1;
    if (last) await row.dblclick();
    else if ((await row.getAttribute("aria-expanded")) !== "true") await row.click();
  }
  await page.locator(`${openEditor} .view-line span span`).first().waitFor(patience);
}

/** Runs a command from the palette; what it asks then is the caller's to answer. */
export async function runCommand(page, title) {
  await page.keyboard.press("F1");
  await page.keyboard.type(title);
  await page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first().waitFor(patience);
  await page.keyboard.press("Enter");
  // The palette closes, the command's own question opens.
  await page.locator(".quick-input-title", { hasText: /\S/ }).first().waitFor(patience);
}

/** The theme's class of each word's token: equal classes are equal colours. */
export async function tokenClasses(page, words) {
  const classes = {};
  for (const word of words) classes[word] = await (await token(page, word)).getAttribute("class");
  return classes;
}

export async function squiggle(page) {
  await page
    .locator(`${openEditor} :is(.squiggly-error, .squiggly-warning, .squiggly-info, .squiggly-hint)`)
    .first()
    .waitFor({ state: "attached", ...patience });
}

/** Points at a word until the hover tells the text; a server that is still starting says nothing at first. */
export async function hoverWord(page, word, text) {
  const hover = page.locator(".monaco-hover:not(.hidden)", { hasText: text }).first();
  await again(page, async () => {
    await page.mouse.move(0, 0);
    await (await token(page, word)).hover({ position: { x: 8, y: 8 }, timeout: 6000 });
    await hover.waitFor({ timeout: 6000 });
  });
}

/** Opens the menu of fixes on a word. */
export async function openFixes(page, word, title) {
  const fix = page.locator(".action-widget .monaco-list-row", { hasText: title }).first();
  await again(page, async () => {
    // A hover or a menu that is still open would catch the click.
    await page.keyboard.press("Escape");
    await page.mouse.move(0, 0);
    await (await token(page, word)).click({ position: { x: 8, y: 8 }, timeout: 6000 });
    await page.keyboard.press("Control+.");
    await fix.waitFor({ timeout: 6000 });
  });
  return fix;
}

/** Tries until it works or patience is at its end. */
async function again(page, act) {
  const end = Date.now() + patience.timeout;
  for (;;) {
    try {
      return await act();
    } catch (cause) {
      if (Date.now() > end) throw cause;
      // Bringing a word into view can leave the editor scrolled with another word lying over it.
      await page.keyboard.press("Escape");
      await page.locator(`${openEditor} .view-lines`).first().hover({ force: true });
      await page.mouse.wheel(0, -10_000);
    }
  }
}

export async function applyFirstFix(page, word, title) {
  await openFixes(page, word, title);
  await page.keyboard.press("Enter");
}

async function token(page, word) {
  const found = page.locator(`${openEditor} .view-line span span`, { hasText: word }).first();
  await found.waitFor(patience);
  return found;
}
