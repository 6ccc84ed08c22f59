/** Which files of a folder are the house's, whoever lists them, and what each gives to the house. */
import { mayHoldSpecs, readMarkdown } from "../../grammar/markdown.ts";
import { read } from "../../grammar/read.ts";
import type { SpecDocument } from "./document.ts";

export const houseFiles = {
  endings: [".drink", ".md", ".markdown"],
  /** Folders of other people's or generated files. */
  passOver: ["node_modules", ".git", ".hg", ".svn", "dist"],
} as { readonly endings: readonly string[]; readonly passOver: readonly string[] };

/** Whether a URI or a path names a file of the house. */
export function isHouseFile(name: string): boolean {
  return houseFiles.endings.some((ending) => name.endsWith(ending));
}

/**
 * What a file's text gives to the house; absent for a Markdown text in which there is no spec, unless it
 * `isChapter`: there may be thousands of those, and what they say is nobody's business here.
 */
export function readHouseFile(name: string, text: string, isChapter = false): Pick<SpecDocument, "tree" | "margins"> | undefined {
  if (name.endsWith(".drink")) return { tree: read(text) };
  return isChapter || mayHoldSpecs(text) ? readMarkdown(text) : undefined;
}
