/**
 * A file with each of its drinks, preps and menus in a file of its own, in the same folder, so that no
 * name means anything else. The comments right above an entry go with it; what is shared (house, stocks,
 * glasses, ice, families) and what else is written there stays.
 */
import type { Entry } from "../../../grammar/tree.ts";
import { classOf, namesOf } from "../../house/declarations.ts";
import { fileNameOf, folderOf, type SpecDocument } from "../../house/document.ts";
import type { Addition, Edit } from "../../house/finding.ts";
import type { House } from "../../house/house.ts";
import { unaccented } from "../../house/names.ts";
import { isComment, ownEnd, removeLine } from "./lines.ts";
import type { Refactoring } from "./refactoring.ts";

export const splitFile: Refactoring = {
  name: "splitFile",
  where: "Put the cursor on the head of an entry, in a spec file that holds several.",
  kind: "refactor.move",
  offers({ house, document, entry, first, createsFiles }) {
    const onHead = entry.lines[first]?.content.kind === "entry";
    // A text that was never saved stands in no folder.
    const isFiled = document.uri.includes("/") && !document.uri.startsWith("untitled:");
    if (!createsFiles || !isFiled || !onHead || document.margins || !isMovable(house, entry)) return [];
    const moved = document.tree.entries.filter((one) => isMovable(house, one) && slugOf(one) !== fileOf(document));
    const isAlone = document.tree.entries.filter(({ kind }) => kind !== "preamble").length < 2;
    if (isAlone || moved.length === 0) return [];
    return [
      {
        title:
          moved.length === 1
            ? "Move 1 entry into a file of its own"
            : `Split into ${moved.length} files, one for each drink, prep and menu`,
        edits: () => moveAll(house, document, moved),
      },
    ];
  },
};

/** Where it stands decides what its name means only where another has the same name. */
function isMovable(house: House, entry: Entry): boolean {
  const nameClass = classOf(entry);
  if (!nameClass || !movable.has(entry.kind) || !entry.name?.text) return false;
  const scope = house.scopeOf(entry);
  const namesakes = namesOf(entry).flatMap((name) => house.lookup(scope, nameClass, name));
  return namesakes.every((other) => other.entry === entry || house.scopeOf(other.entry) !== scope);
}
const movable: ReadonlySet<string> = new Set(["drink", "prep", "menu"]);

function moveAll(house: House, document: SpecDocument, moved: readonly Entry[]): (Edit | Addition)[] {
  const { entries } = document.tree;
  const taken = new Set([...house.documents()].map(({ uri }) => uri.toLowerCase()));
  const gone = new Map<Entry, Set<number>>();
  const take = (entry: Entry, line: number) => {
    gone.set(entry, (gone.get(entry) ?? new Set()).add(line));
    return entry.lines[line]!.text;
  };
  const files = moved.map((entry): Addition => {
    const above = entries[entries.indexOf(entry) - 1];
    const lines = above ? commentsAtEnd(above).map((line) => take(above, line)) : [];
    const end = ownEnd(entry);
    for (let line = 0; line <= end; line++) lines.push(take(entry, line));
    for (let line = end + 1; entry.lines[line]?.content.kind === "blank"; line++) take(entry, line);
    const uri = freshUri(folderOf(document.uri), slugOf(entry), taken);
    return { uri, text: lines.map((line) => line + (entry.lines[0]!.eol || "\n")).join(""), fresh: true };
  });
  return [...files, ...[...gone].flatMap(([entry, lines]) => [...lines].map((line) => removeLine(entry, line)))];
}

/** The comment lines right above the next entry. */
function commentsAtEnd(entry: Entry): number[] {
  const last = entry.lines.length - 1;
  // An entry's own head is no comment, but a preamble may be nothing else.
  let first = last + 1;
  while (first > 0 && isComment(entry.lines[first - 1]) && !/^\s/.test(entry.lines[first - 1]!.text)) first--;
  return Array.from({ length: last + 1 - first }, (_, index) => first + index);
}

function freshUri(folder: string, slug: string, taken: Set<string>): string {
  for (let number = 1; ; number++) {
    const uri = `${folder}/${encodeURIComponent(number === 1 ? slug : `${slug}-${number}`)}.drink`;
    if (taken.has(uri.toLowerCase())) continue;
    taken.add(uri.toLowerCase());
    return uri;
  }
}

/** Letters and digits, so that every disk takes it. */
function slugOf(entry: Entry): string {
  const slug = unaccented(entry.name!.text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .join("-");
  const short = Array.from(slug).slice(0, longest).join("");
  if (!short) return entry.kind;
  return devices.test(short) ? `${short}-${entry.kind}` : short;
}
const longest = 60;
/** What Windows takes for a device, whatever stands behind the point: Naming Files, Paths, and Namespaces. */
const devices = /^(?:con|prn|aux|nul|(?:com|lpt)\d)$/;

function fileOf({ uri }: SpecDocument): string {
  return fileNameOf(uri).replace(/\.drink$/, "");
}
