/** Which files of a commit are the house's, and their texts: what git prints, read. It is run elsewhere. */
import { houseFiles, isHouseFile } from "./house-files.ts";

/** What lists a commit's files, and what prints the texts of those that are asked for. */
export const gitCommands = {
  list: (commit: string) => ["ls-tree", "-r", "-z", "--full-tree", commit],
  print: ["cat-file", "--batch"],
} as const;

export interface CommittedFile {
  /** From the repository's top, with forward slashes. */
  readonly path: string;
  readonly id: string;
}

/** The house's files among those that `list` prints. */
export function committedFiles(listed: Uint8Array): CommittedFile[] {
  return textFrom(listed)
    .split("\0")
    .flatMap((row) => {
      // Neither a link nor another repository: those have no text of their own.
      const [, id, path] = /^100\d+ blob (\w+)\t([\s\S]+)$/.exec(row) ?? [];
      const isOthers = path?.split("/").some((part) => houseFiles.passOver.includes(part)) ?? true;
      return id && path && isHouseFile(path) && !isOthers ? [{ path, id }] : [];
    });
}

/** What `print` is to be handed, for these files. */
export function askedFor(files: readonly CommittedFile[]): string {
  return files.map(({ id }) => `${id}\n`).join("");
}

/** The texts that `print` prints for these files, by their paths. */
export function committedTexts(files: readonly CommittedFile[], printed: Uint8Array): Map<string, string> {
  const texts = new Map<string, string>();
  let at = 0;
  for (const { path } of files) {
    const end = printed.indexOf(10, at);
    const size = Number(textFrom(printed.subarray(at, end)).split(" ")[2]);
    texts.set(path, textFrom(printed.subarray(end + 1, end + 1 + size)));
    at = end + 1 + size + 1;
  }
  return texts;
}

/** As a file is read: a byte order mark stays, and a byte that is none of UTF-8 becomes a replacement character. */
export function textFrom(bytes: Uint8Array): string {
  return decoder.decode(bytes);
}

const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
