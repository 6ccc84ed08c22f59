/** A page as PDF, printed by whatever browser of the Chromium family stands on this machine. */
import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { UsageError } from "./usage-error.ts";

/** A browser that hangs is ended after this: practice, no source. */
const patienceMs = 120_000;

/**
 * The PDF of a page that needs nothing else. `CHROME_PATH` names the browser; without it the machine is
 * searched. The browser gets a folder of its own, which is gone afterwards. Throws a `UsageError` where
 * there is no browser, or it prints nothing; `instead` is how the caller writes the page itself.
 */
export async function printPdf(
  html: string,
  instead: string,
  find: (instead: string) => Promise<string | undefined> = findBrowser,
): Promise<Uint8Array> {
  const otherWay = `Set CHROME_PATH to the browser's program, or ${instead}: opened in any browser, it prints the same.`;
  const browser = await find(otherWay);
  if (!browser) throw new UsageError("There is no browser here to make the PDF with: none of the Chromium family was found.", otherWay);
  const folder = mkdtempSync(join(tmpdir(), "mutchkin-print-"));
  try {
    const [page, pdf] = [join(folder, "page.html"), join(folder, "page.pdf")];
    writeFileSync(page, html);
    const said = await printed(browser, argumentsFor(page, pdf, join(folder, "profile")));
    if (!existsSync(pdf)) throw new UsageError(`The browser “${browser}” made no PDF: ${said}`, otherWay);
    return readFileSync(pdf);
  } finally {
    // On Windows a browser that has just ended may still hold its files.
    rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  }
}

/** The installed browser; absent where there is none. `todo` is what to do where the one that was named is not there. */
export async function findBrowser(todo = "Set CHROME_PATH to the browser's program."): Promise<string | undefined> {
  const named = process.env.CHROME_PATH;
  if (named && !existsSync(named)) throw new UsageError(`CHROME_PATH names “${named}”, and nothing stands there.`, todo);
  if (named) return named;
  // Only this needs it; everything else starts faster without.
  const { Launcher } = await import("chrome-launcher");
  try {
    const found = Launcher.getFirstInstallation();
    if (found) return found;
  } catch {
    // It throws where it finds none.
  }
  return alsoOfTheFamily().find((path) => existsSync(path));
}

/** What is there on its own on every Windows, and often elsewhere. */
function alsoOfTheFamily(): string[] {
  const { "PROGRAMFILES(X86)": programs86, PROGRAMFILES: programs } = process.env;
  return [
    ...[programs86, programs].flatMap((folder) => (folder ? [join(folder, "Microsoft", "Edge", "Application", "msedge.exe")] : [])),
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    "/usr/bin/microsoft-edge",
  ];
}

function argumentsFor(page: string, pdf: string, profile: string): string[] {
  return [
    "--headless",
    "--disable-gpu",
    "--no-first-run",
    "--no-default-browser-check",
    "--disable-extensions",
    "--disable-background-networking",
    `--user-data-dir=${profile}`,
    // A browser does not start its sandbox for the superuser, as in a container.
    ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
    "--no-pdf-header-footer",
    `--print-to-pdf=${pdf}`,
    pathToFileURL(page).href,
  ];
}

/** What the browser said in the end, to tell why there is no PDF. */
async function printed(browser: string, args: string[]): Promise<string> {
  try {
    const { stderr } = await promisify(execFile)(browser, args, { timeout: patienceMs, killSignal: "SIGKILL", maxBuffer: 1 << 26 });
    return lastLine(stderr) || "it said nothing.";
  } catch (cause) {
    const { stderr = "", message, killed } = cause as { stderr?: string; message: string; killed?: boolean };
    return killed ? `it was not done after ${patienceMs / 60_000} minutes.` : lastLine(stderr) || message;
  }
}

function lastLine(text: string): string {
  return text.trim().split("\n").at(-1) ?? "";
}
