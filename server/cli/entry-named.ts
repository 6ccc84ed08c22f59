/** The one drink or prep that a command line names. */
import type { Entry } from "../../grammar/tree.ts";
import { fold } from "../house/names.ts";
import { askFor, nearestOf } from "../house/nearest.ts";
import type { Session } from "./session.ts";
import { UsageError } from "./usage-error.ts";

/** Throws a `UsageError` where there is none, or more than one. */
export function entryNamed({ documents, house, pathOf }: Session, kind: "drink" | "prep", name: string): Entry {
  const all = documents.flatMap((document) => document.tree.entries).filter((entry) => entry.kind === kind && entry.name);
  const found = all.filter((entry) => fold(entry.name!.text) === fold(name));
  if (found.length === 1) return found[0]!;
  if (found.length > 1) {
    const places = found.map((entry) => `${pathOf(house.getDocumentOf(entry).uri)}:${house.getLineOf(entry) + 1}`);
    throw new UsageError(`There is more than one ${kind} “${name}” here: ${places.join(", ")}.`, "Name the file too.");
  }
  const near = nearestOf(
    name,
    all.map((entry) => entry.name!.text),
  );
  throw new UsageError(`There is no ${kind} “${name}” here.`, askFor(near, "`mutchkin assess` lists all of them."));
}
