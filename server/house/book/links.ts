/** Links and pictures that the author wrote: where they lead in the printed book, and which lead nowhere. */
import type { Token } from "markdown-it";
import type { BookFiles, Chapter } from "./book.ts";
import type { ReadChapter } from "./chapters.ts";
import { type Meaning, meaningOfToken, wordsOf } from "./meaning.ts";
import type { BookProblem } from "./problems.ts";
import { slugger } from "./slugs.ts";

/** Sets what each link and picture means; answers the bytes of the pictures. */
export function linksIn(
  read: readonly ReadChapter[],
  chapters: readonly Chapter[],
  files: BookFiles,
  problems: BookProblem[],
): ReadonlyMap<string, Uint8Array> {
  const pictures = new Map<string, Uint8Array>();
  const anchors = new Map(chapters.map((chapter) => [chapter.file, anchorsOf(chapter)]));
  for (const { file, text, tokens } of read) {
    const lines = text.split(/\r\n?|\n/);
    const report = (line: number, written: string, what: string, todo: string) => {
      const column = Math.max(0, (lines[line] ?? "").indexOf(written)) + 1;
      problems.push({ file, line: line + 1, column, what, todo });
    };
    for (const { token, line } of marksIn(tokens)) {
      if (token.type === "image") {
        const source = String(token.attrGet("src"));
        const path = pathFrom(file, source);
        const bytes = path === undefined ? undefined : (pictures.get(path) ?? files.picture?.(path));
        if (path !== undefined && bytes) {
          pictures.set(path, bytes);
          token.meta = { file: path } satisfies Meaning;
        } else if (files.picture)
          report(line, source, `There is no picture “${source}”.`, "Put the file beside the chapter, or leave the picture out.");
      } else if (token.type === "link_open") {
        const href = String(token.attrGet("href"));
        const id = href ? targetOf(href, file, anchors, chapters) : undefined;
        if (id) token.meta = { id } satisfies Meaning;
        else if (!isOutside(href)) report(line, href, `The link to “${href}” leads nowhere in this book.`, leadsNowhere);
      } else if (token.type.startsWith("html_") && !isHarmless(token.content)) {
        const [first = ""] = token.content.trim().split("\n");
        report(line, first, `“${first}” is HTML, which not every form of the book can print.`, "Write it in Markdown.");
      }
    }
  }
  return pictures;
}

const leadsNowhere =
  "Link to a chapter's file, to a heading of it as file.md#the-heading, or to a whole address; for a recipe write :see[…].";

/** A remark prints nowhere, a line break everywhere. */
export function isHarmless(html: string): boolean {
  return /^\s*(?:<!--[\s\S]*?-->\s*)*$/.test(html) || isBreak(html);
}

export function isBreak(html: string): boolean {
  return /^\s*<br\s*\/?>\s*$/i.test(html);
}

function* marksIn(tokens: readonly Token[]): Generator<{ token: Token; line: number }> {
  let block = 0;
  for (const token of tokens) {
    block = token.map?.[0] ?? block;
    if (token.type === "html_block") yield { token, line: block };
    let line = block;
    for (const child of token.children ?? []) {
      if (child.type === "softbreak" || child.type === "hardbreak") line++;
      yield { token: child, line };
    }
  }
}

function isOutside(href: string): boolean {
  return /^(?:[a-z][a-z\d+.-]*:|\/\/)/i.test(href);
}

function pathFrom(file: string, link: string): string | undefined {
  if (isOutside(link) || link.startsWith("/")) return undefined;
  const parts = file.split("/").slice(0, -1);
  for (const part of decoded(link).split("/")) {
    if (part === "..") {
      if (parts.pop() === undefined) return undefined;
    } else if (part !== ".") parts.push(part);
  }
  return parts.join("/");
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

function targetOf(
  href: string,
  file: string,
  anchors: ReadonlyMap<string, ReadonlyMap<string, string>>,
  chapters: readonly Chapter[],
): string | undefined {
  if (isOutside(href)) return undefined;
  const [path = "", hash] = href.split("#");
  const target = path === "" ? file : pathFrom(file, path);
  if (target === undefined) return undefined;
  return hash ? anchors.get(target)?.get(decoded(hash)) : chapters.find((one) => one.file === target)?.id;
}

/** What a heading and a recipe are called in their own file, and what they are called in the book. */
function anchorsOf({ tokens, recipes }: Chapter): ReadonlyMap<string, string> {
  const anchors = new Map<string, string>();
  for (const { id } of recipes) anchors.set(id, id);
  const slug = slugger();
  for (const [index, token] of tokens.entries()) {
    if (token.type === "heading_open") anchors.set(slug(wordsOf(tokens[index + 1])), meaningOfToken(token).id!);
  }
  return anchors;
}
