/** What lines say, whatever their blanks, and the case of the words that open them. */
import type { Line } from "./tree.ts";

/** What lines say, without where it stands and how it is spaced. */
export function sense(lines: readonly Line[]): string {
  return JSON.stringify(
    lines.map(({ content, comment, problem }) => [content, comment?.text, problem?.code]),
    (key, value) =>
      key === "start" || key === "end"
        ? undefined
        : key === "commas"
          ? value.length
          : key === "quoted"
            ? value !== undefined
            : typeof value === "string"
              ? plainly(value)
              : value,
  );
}

function plainly(text: string): string {
  return text
    .toLowerCase()
    .replace(/[ \t]+/g, " ")
    .replace(/ ?([;,:]) ?/g, "$1")
    .replace(/(\d) ?(?=[^\d\s])/g, "$1 ")
    .trim();
}
