/** `mutchkin adjust`: the amount of one pour that brings a drink or a prep to a target, printed or written into its file. */
import type { Entry } from "../../grammar/tree.ts";
import { toTextEdits } from "../features/edits.ts";
import { type Way, waysTo, wayWith } from "../house/bring-to.ts";
import { changeable } from "../house/changeable.ts";
import type { House } from "../house/house.ts";
import { type NotUnderstood, readTarget } from "../house/targets.ts";
import { adjustReport } from "../reports/adjust.ts";
import { adjustText } from "../reports/adjust-text.ts";
import { entryNamed } from "./entry-named.ts";
import { exitCodes } from "./exit-codes.ts";
import type { Files } from "./files.ts";
import { openHouse, type Session } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { writeEdits } from "./write-text.ts";

export interface AdjustOptions {
  readonly format: "text" | "json";
  readonly drink?: string;
  readonly prep?: string;
  readonly to: string;
  readonly with?: string;
  readonly write?: boolean;
}

/** Prints the ways; answers the exit code, which tells whether the target is reached. */
export function adjustCommand(paths: readonly string[], options: AdjustOptions, terminal: Terminal): number {
  if (options.write && options.with === undefined) {
    throw new UsageError("`--write` needs to know which pour to change.", 'Name it, such as `--with "lemon juice"`.');
  }
  const session = openHouse(paths, terminal);
  const { house } = session;
  const of = changeable(house, entryAsked(session, options))!;
  const target = understood(readTarget(house, of.entry, options.to));
  const ways = options.with === undefined ? waysTo(of, target) : [understood(wayWith(house, of, target, options.with))];
  const edit = options.write && ways[0]?.reached?.edit;
  const report = adjustReport(house, of, target, ways, { ...session, written: edit !== undefined && edit !== false });
  if (edit) write(house, of.entry, edit, terminal.files, session);
  const complete = session.finish();
  terminal.print(options.format === "json" ? `${JSON.stringify(report, null, 2)}\n` : adjustText(report, of.settings, terminal.look));
  return !complete ? exitCodes.failed : ways.some(({ reached }) => reached) ? exitCodes.clean : exitCodes.findings;
}

function entryAsked(session: Session, { drink, prep }: AdjustOptions): Entry {
  if ((drink === undefined) === (prep === undefined)) {
    throw new UsageError("Name one drink or one prep.", 'Write `--drink "Its Name"` or `--prep "its name"`.');
  }
  return drink === undefined ? entryNamed(session, "prep", prep!) : entryNamed(session, "drink", drink);
}

function understood<T extends object>(answer: T | NotUnderstood): T {
  if ("problem" in answer && !("pour" in answer)) throw new UsageError(answer.problem as string, "Nothing was changed.");
  return answer as T;
}

function write(house: House, entry: Entry, edit: NonNullable<NonNullable<Way["reached"]>["edit"]>, files: Files, session: Session): void {
  const document = house.getDocumentOf(entry);
  const edits = toTextEdits(house, document, { title: "", safe: false, edits: [edit] });
  writeEdits(files, session, document, edits);
}
