/** Runs a command line on a folder made for one test, and keeps what it prints. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { onTestFinished } from "vitest";
import { disk } from "../../server/cli/files.ts";
import { run } from "../../server/cli/program.ts";
import type { Terminal } from "../../server/cli/terminal.ts";
import { plainLook } from "../../server/reports/sheet.ts";

/** A folder of files: `=== path` starts one. It is gone after the test. */
export function folderOf(text: string): string {
  const folder = mkdtempSync(join(tmpdir(), "mutchkin-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const part of text.split(/^=== /m).slice(1)) {
    const [path, ...lines] = part.split("\n");
    const file = join(folder, path!);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, lines.join("\n"));
  }
  return folder;
}

export interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export async function mutchkin(folder: string, argv: readonly string[], changed: Partial<Terminal> = {}): Promise<Ended> {
  let out = "";
  let err = "";
  const terminal: Terminal = {
    files: disk,
    currentFolder: folder,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text;
    },
    progress: () => undefined,
    look: plainLook,
    watched: false,
    debug: false,
    startServer: () => undefined,
    today: () => "2026-11-28",
    ...changed,
  };
  const code = await run(argv, terminal);
  return { code, out, err };
}

/** A house whose one drink has nothing wrong with it. */
export const soundHouse = `=== house.drink
house Test Room
  jigger: 2.5 ml
=== bar.drink
stock plain spirit
  kind: spirit
  abv: 40 %

glass small coupe
  holds: 240 ml

drink Slack Rope
  family: sour
  glass: small coupe
  method: shake 12 s; fine strain
  garnish: none

  60 ml plain spirit
  30 ml lime juice
  17.5 ml rich sugar syrup
`;
