/** The environment of a server that runs on Node: files on disk. */
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fdir } from "fdir";
import { URI } from "vscode-uri";
import type { Environment } from "./environment.ts";

const skipped = new Set(["node_modules", ".git", ".hg", ".svn", "dist"]);

export function diskEnvironment(): Environment {
  const page = join(__dirname, "..", "server", "rules", "README.md");
  return {
    async list(folder) {
      const uri = URI.parse(folder);
      if (uri.scheme !== "file") return [];
      const paths = await new fdir()
        .withFullPaths()
        .exclude((name) => skipped.has(name))
        .filter((path) => path.endsWith(".drink"))
        .crawl(uri.fsPath)
        .withPromise();
      return paths.map((path) => URI.file(path).toString());
    },
    async read(uri) {
      try {
        return await readFile(URI.parse(uri).fsPath, "utf8");
      } catch {
        return undefined; // Gone or unreadable between listing and reading: as if it were not there.
      }
    },
    now: () => performance.now(),
    nextTurn: () => new Promise((resolve) => setImmediate(resolve)),
    ...(existsSync(page) && { rulesPage: URI.file(page).toString() }),
  };
}
