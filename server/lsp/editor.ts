/** Files that the editor is asked for: in a browser there is no disk, and on a desktop not every folder is on it. */
import type { Connection } from "vscode-languageserver";
import { houseFiles } from "../house/house-files.ts";
import type { Files } from "./environment.ts";

/** An editor that does not know our requests has no such files. */
export function filesOfEditor(connection: Connection): Files {
  return {
    list: (folder) => connection.sendRequest<string[]>("mutchkin/listFiles", { folder, ...houseFiles }).catch(() => []),
    async read(uri) {
      const text = await connection.sendRequest<string | null>("mutchkin/readFile", { uri }).catch(() => null);
      return text ?? undefined;
    },
  };
}
