/** Which files of a folder are the house's, whoever lists them: the disk or an editor. */
export const houseFiles = {
  endings: [".drink"],
  /** Folders of other people's or generated files. */
  passOver: ["node_modules", ".git", ".hg", ".svn", "dist"],
} as const;
