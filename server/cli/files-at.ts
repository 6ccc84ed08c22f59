/** A commit's files, to be read as those of the disk are: whoever gathers a house from them need not know. */
import { dirname, join, resolve, sep } from "node:path";
import { type Files, Unreadable, Unwritable } from "./files.ts";
import type { Git } from "./git.ts";

/** The house's files of a commit, at the places they have in the checkout that holds the folder. */
export function filesAt(git: Git, commit: string, folder: string): Files {
  const top = resolve(
    folder,
    ...git.prefix
      .split("/")
      .filter(Boolean)
      .map(() => ".."),
  );
  const texts = new Map([...git.textsAt(commit)].map(([path, text]) => [join(top, ...path.split("/")), text]));
  const paths = [...texts.keys()].sort();
  const inFolder = new Map<string, string[]>([top, join(top, ".git")].map((folder) => [folder, []]));
  for (const path of paths) {
    for (let above = dirname(path); !inFolder.has(above); above = dirname(above)) inFolder.set(above, []);
    inFolder.get(dirname(path))?.push(path);
  }
  const below = (path: string, parent: string) => path.startsWith(parent.endsWith(sep) ? parent : `${parent}${sep}`);
  return {
    kindOf: (path) => (texts.has(path) ? "file" : inFolder.has(path) ? "folder" : undefined),
    list: (parent, depth) => (depth === "shallow" ? (inFolder.get(parent) ?? []) : paths.filter((path) => below(path, parent))),
    read(path) {
      const text = texts.get(path);
      if (text === undefined) throw new Unreadable("it is not in that revision");
      return text;
    },
    write() {
      throw new Unwritable("a revision does not change");
    },
  };
}
