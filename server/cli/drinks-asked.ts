/** What stands behind `mutchkin card`: names of drinks and menus, and paths, in any order. */
import type { Entry } from "../../grammar/tree.ts";
import { fold } from "../house/names.ts";
import { askFor, nearestOf } from "../house/nearest.ts";
import { openAsked } from "./menus-asked.ts";
import type { Session } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

/** The drinks and the menus of these names, in the order asked for; every drink of the paths where none is named. */
export function openDrinks(asked: readonly string[], terminal: Terminal): Session & { readonly entries: readonly Entry[] } {
  const { names, session } = openAsked(asked, terminal);
  const all = session.documents
    .flatMap((document) => document.tree.entries)
    .filter(({ kind, name }) => (kind === "drink" || kind === "menu") && name?.text);
  if (names.length > 0) return { ...session, entries: names.flatMap((name) => entriesNamed(name, all)) };
  const drinks = all.filter(({ kind }) => kind === "drink");
  if (drinks.length === 0) throw new UsageError("There is no drink here.", "Write one: `drink Its Name`, and its pours below it.");
  return { ...session, entries: drinks };
}

function entriesNamed(name: string, all: readonly Entry[]): readonly Entry[] {
  const found = all.filter((entry) => fold(entry.name!.text) === fold(name));
  if (found.length > 0) return found;
  const near = nearestOf(
    name,
    all.map((entry) => entry.name!.text),
  );
  throw new UsageError(
    `There is no drink, no menu and no file or folder “${name}” here.`,
    askFor(near, "`mutchkin assess` lists all drinks."),
  );
}
