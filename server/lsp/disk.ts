/** The environment of a server that runs on Node. */
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fdir } from "fdir";
import { URI } from "vscode-uri";
import { houseFiles, isHouseFile } from "../house/house-files.ts";
import type { Environment, Files } from "./environment.ts";
import { gitRevisions } from "./git.ts";

const passedOver: ReadonlySet<string> = new Set(houseFiles.passOver);

/** What is not on disk is `elsewhere`. */
export function diskEnvironment(elsewhere: Files): Environment {
  const page = join(__dirname, "..", "server", "rules", "README.md");
  return {
    async list(folder) {
      const uri = URI.parse(folder);
      if (uri.scheme !== "file") return elsewhere.list(folder);
      const paths = await new fdir()
        .withFullPaths()
        .exclude((name) => passedOver.has(name))
        .filter(isHouseFile)
        .crawl(uri.fsPath)
        .withPromise();
      return paths.map((path) => URI.file(path).toString());
    },
    async read(uri) {
      const { scheme, fsPath } = URI.parse(uri);
      if (scheme !== "file") return elsewhere.read(uri);
      try {
        return await readFile(fsPath, "utf8");
      } catch {
        return undefined; // Gone or unreadable between listing and reading: as if it were not there.
      }
    },
    now: () => performance.now(),
    nextTurn: () => new Promise((resolve) => setImmediate(resolve)),
    revisions: gitRevisions,
    ...(existsSync(page) && { rulesPage: URI.file(page).toString() }),
  };
}
