/** A page that the product made, in a real browser, and what is wrong with it for whoever reads it. */
import axe from "axe-core";
import { HtmlValidate } from "html-validate";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { findBrowser } from "../../server/cli/browser-pdf.ts";

/** One browser for the tests of a file. Fails where there is none: what a page looks like cannot be known otherwise. */
export function inBrowser(): { open(html: string, media?: "screen" | "print"): Promise<Page> } {
  let browser: Browser | undefined;
  beforeAll(async () => {
    const executablePath = await findBrowser();
    if (!executablePath) throw new Error("These tests want a browser of the Chromium family: install one, or set CHROME_PATH.");
    browser = await chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ["--no-sandbox"] : [] });
  });
  afterAll(() => browser?.close());
  return {
    async open(html, media = "print") {
      const page = await browser!.newPage({ viewport: { width: 1000, height: 1300 } });
      await page.emulateMedia({ media });
      await page.setContent(html);
      return page;
    },
  };
}

/** Faults against the HTML standard, by html-validate's recommended rules; how the source is written is no matter. */
export async function markupFaults(html: string): Promise<string[]> {
  const validator = new HtmlValidate({
    extends: ["html-validate:recommended"],
    rules: { "long-title": "off", "no-trailing-whitespace": "off", "doctype-style": ["error", { style: "lowercase" }] },
  });
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) => messages.map(({ ruleId, message, line }) => `line ${line}: ${message} [${ruleId}]`));
}

/** What axe finds against WCAG 2.2 A and AA and its own best practices; contrast as the browser paints it. */
export async function accessFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = (await page.evaluate("axe.run()")) as axe.AxeResults;
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ html }) => `${help} [${id}]: ${html.slice(0, 200)}`));
}
