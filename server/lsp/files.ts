/** Which files of a folder are the house's, whoever lists them: the disk or an editor. */
export const houseFiles = {
  endings: [".drink", ".md", ".markdown"],
  /** Folders of other people's or generated files. */
  passOver: ["node_modules", ".git", ".hg", ".svn", "dist"],
} as const;

/** Whether a URI or a path names a file of the house. */
export function isHouseFile(name: string): boolean {
  return houseFiles.endings.some((ending) => name.endsWith(ending));
}

/** Whether specs stand in blocks of such a file, between other text. */
export function isMarkdown(name: string): boolean {
  return !name.endsWith(".drink") && isHouseFile(name);
}
