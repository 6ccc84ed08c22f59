/** What stands behind `mutchkin cost` and `mutchkin prep`: names of menus and paths, in any order. */
import { resolve } from "node:path";
import type { Entry } from "../../grammar/tree.ts";
import { fold } from "../house/names.ts";
import { askFor, nearestOf } from "../house/nearest.ts";
import { openHouse, type Session } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

/** A path where something stands is that path; anything else names a menu. Without a name all menus of the paths are meant. */
export function openMenus(asked: readonly string[], terminal: Terminal): Session & { readonly menus: readonly Entry[] } {
  const { names, session } = openAsked(asked, terminal);
  const all = session.documents.flatMap((document) => document.tree.entries).filter((entry) => entry.kind === "menu" && entry.name);
  if (names.length === 0) {
    if (all.length === 0)
      throw new UsageError("There is no menu here.", "Write one: `menu Its Name`, and below it `- Drink 12.50` for each drink.");
    return { ...session, menus: all };
  }
  return { ...session, menus: names.flatMap((name) => menusNamed(name, all)) };
}

/** The names among what was asked for, and the house of the paths. */
export function openAsked(asked: readonly string[], terminal: Terminal): { readonly names: readonly string[]; readonly session: Session } {
  const isPath = (text: string) => text !== "" && terminal.files.kindOf(resolve(terminal.currentFolder, text)) !== undefined;
  return { names: asked.filter((text) => !isPath(text)), session: openHouse(asked.filter(isPath), terminal) };
}

function menusNamed(name: string, all: readonly Entry[]): readonly Entry[] {
  const found = all.filter((entry) => fold(entry.name!.text) === fold(name));
  if (found.length > 0) return found;
  const known = all.map((entry) => entry.name!.text);
  const there = known.length > 0 ? `There is ${known.map((one) => `“${one}”`).join(", ")}.` : "There is none at all.";
  throw new UsageError(`There is no menu and no file or folder “${name}” here.`, askFor(nearestOf(name, known), there));
}
