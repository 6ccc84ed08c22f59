/** `mutchkin batch`: a drink mixed ahead, as a page for the kitchen wall. */
import { batchTyped, readBottle } from "../features/batch.ts";
import { batchOf, type BatchOptions as Mixing, type NoBatch } from "../house/batch.ts";
import { batchReport } from "../reports/batch.ts";
import { batchText } from "../reports/batch-text.ts";
import { entryNamed } from "./entry-named.ts";
import { exitCodes } from "./exit-codes.ts";
import { openHouse } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface BatchOptions {
  readonly format: "text" | "json";
  readonly serves?: string;
  readonly volume?: string;
  readonly bottle?: string;
  readonly fill?: boolean;
  readonly water?: boolean;
  readonly made?: string;
}

/** Prints the batch; answers the exit code. */
export function batchCommand(drink: string, paths: readonly string[], options: BatchOptions, terminal: Terminal): number {
  const { serves, volume, fill } = options;
  if ([serves, volume, fill || undefined].filter((one) => one !== undefined).length !== 1) {
    throw new UsageError("Say how much is to be made, in one way.", 'Write `--serves 40`, `--volume "5 l"` or `--fill`.');
  }
  const made = options.made ?? terminal.today();
  const session = openHouse(paths, terminal);
  const { house } = session;
  const entry = entryNamed(session, "drink", drink);
  const bottle = options.bottle === undefined ? undefined : understood(readBottle(house, entry, options.bottle));
  const mixing: Mixing = { made, ...(bottle && { bottleMl: bottle.ml }), ...(options.water !== undefined && { water: options.water }) };
  const batch = understood(fill ? batchOf(house, entry, { fill }, mixing) : batchTyped(house, entry, typedSize(serves, volume), mixing));
  const report = batchReport(house, batch, session.pathOf);
  const complete = session.finish();
  terminal.print(options.format === "json" ? `${JSON.stringify(report, null, 2)}\n` : batchText(report, batch.settings, terminal.look));
  return complete ? exitCodes.clean : exitCodes.failed;
}

function typedSize(serves: string | undefined, volume: string | undefined): string {
  const isNumber = /^[\d.,\s/½⅓¼¾⅔]+$/.test(serves ?? volume!);
  if (serves !== undefined && !isNumber) throw new UsageError(`“${serves}” is no number of serves.`, "Write one, such as `--serves 40`.");
  if (volume !== undefined && isNumber) throw new UsageError(`“${volume}” is no volume.`, 'Write its unit too, such as `--volume "5 l"`.');
  return serves ?? volume!;
}

function understood<T extends object>(answer: T | NoBatch): T {
  if ("problem" in answer) throw new UsageError(answer.problem, "Nothing was batched.");
  return answer;
}
