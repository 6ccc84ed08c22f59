/**
 * The server in a client that is not ours: `npm run test:neovim`.
 *
 * Neovim, without a window, with the configuration that `server/lsp/README.md` gives, as it stands there, and
 * a house on the disk; `neovim.lua` does and looks as a person would. Ends with `N passed, N failed`.
 */
import { spawn } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { root } from "./editors.mjs";

/** Whatever hangs, the run ends. The script in the editor gives up before that. */
const longestMs = 120_000;

/** Beside the demo house. */
const texts = {
  ".git/HEAD": "ref: refs/heads/main\n",
  "neovim/rum.drink": "stock slip rum\n  kind: spirit\n  abv: 40 %\n",
  // An accent and an emoji before what is looked for: Neovim counts bytes, the protocol UTF-16.
  "neovim/card.drink": `drink Été 🍋 Sour
  family: sour
  glass: coupe
  method: shake 12 s; fine strain
  60   ml slip rum
  25 ml lemon juce # é 🍋
  15 ml simple syrup
`,
  "neovim/book.md": "# Slack Water\n\n> A chapter.\n>\n> ```drink\n> drink Ebb\n>   60 ml slip rum\n>   20 ml lamp oil\n> ```\n",
};

const place = mkdtempSync(join(tmpdir(), "mutchkin-neovim-"));
try {
  const failed = await run();
  process.exitCode = failed ? 1 : 0;
} finally {
  rmSync(place, { recursive: true, force: true, maxRetries: 5 });
}

/** Answers whether anything failed. */
async function run() {
  write("config/nvim/plugin/mutchkin.lua", configuration());
  // The configuration names the installed command.
  write("bin/mutchkin", `#!/bin/sh\nexec "${process.execPath}" "${join(root, "dist/cli.js")}" "$@"\n`, 0o755);
  cpSync(join(root, "samples/halyard-room"), join(place, "house"), { recursive: true });
  for (const [name, text] of Object.entries(texts)) write(`house/${name}`, text);

  const { code, output } = await neovim();
  const lines = output.split(/\r?\n/).filter((line) => /^(passed|failed): /.test(line));
  const failed = lines.filter((line) => line.startsWith("failed"));
  for (const line of lines) console.log(line);
  if (code !== 0 && failed.length === 0) failed.push(console.error(`Neovim ended with ${code} before it was through:\n${output}`));
  console.log(`${lines.length - lines.filter((line) => line.startsWith("failed")).length} passed, ${failed.length} failed`);
  return failed.length > 0 || lines.length === 0;
}

/** The text of the page, so that the page cannot say what does not work. */
function configuration() {
  const page = readFileSync(join(root, "server/lsp/README.md"), "utf8");
  const found = /<!-- neovim -->\s+```lua\n(.*?)```/s.exec(page);
  if (!found)
    throw new Error("server/lsp/README.md has no block of Lua behind `<!-- neovim -->`: put the marker back, or change this test.");
  return found[1];
}

function neovim() {
  const folder = (name) => join(place, name);
  const child = spawn("nvim", ["--headless", "-n", "-i", "NONE", "-c", `luafile ${join(root, "tests/editor/neovim.lua")}`], {
    cwd: folder("house"),
    // A group of its own, so that the server goes with it.
    detached: true,
    stdio: ["ignore", "pipe", "pipe"],
    env: {
      ...process.env,
      PATH: `${folder("bin")}${delimiter}${process.env.PATH}`,
      XDG_CONFIG_HOME: folder("config"),
      XDG_DATA_HOME: folder("data"),
      XDG_STATE_HOME: folder("state"),
      XDG_CACHE_HOME: folder("cache"),
    },
  });
  return new Promise((settle) => {
    let output = "";
    for (const stream of [child.stdout, child.stderr]) stream.setEncoding("utf8").on("data", (text) => (output += text));
    const timer = setTimeout(() => process.kill(-child.pid, "SIGKILL"), longestMs);
    const end = (code) => {
      clearTimeout(timer);
      settle({ code, output });
    };
    child.once("error", (cause) => {
      output += `Neovim could not be started (on Debian: apt-get install neovim): ${cause.message}\n`;
      end(1);
    });
    child.once("close", (code, signal) => end(code ?? signal));
  });
}

function write(path, text, mode) {
  mkdirSync(join(place, path, ".."), { recursive: true });
  writeFileSync(join(place, path), text, { mode });
}
