/** A book as one page that needs nothing else: read on a screen, or printed by a browser. */
import MarkdownIt, { type Token } from "markdown-it";
import { isSpec } from "../../../grammar/markdown.ts";
import type { Book, Chapter } from "../../house/book/book.ts";
import { isBreak } from "../../house/book/links.ts";
import { meaningOfToken, wordsOf } from "../../house/book/meaning.ts";
import { textId } from "../../house/book/parts.ts";
import { escapeHtml } from "../html.ts";
import type { Section } from "./blocks.ts";
import { blocksHtml, heading, recipeHtml, setHtml } from "./html-recipe.ts";
import { bookCss, footCss } from "./html-style.ts";
import { backSections, frontSection, partBlocks } from "./parts.ts";
import { dataUri } from "./pictures.ts";

/** The whole book. `printed` are its chapters as `chapterHtml` prints them, for whoever keeps those that did not change. */
export function bookHtml(book: Book, printed: readonly string[] = book.chapters.map((chapter) => chapterHtml(book, chapter))): string {
  const { title, subtitle, author, rights, style } = book;
  const front = frontSection(book);
  const back = backSections(book);
  const feet = [...(front ? [front] : []), ...book.chapters, ...back.filter((section) => !isShort(section))].map(({ id, title: words }) =>
    footCss(pageName(id), title, words),
  );
  return `<!doctype html>
<html lang="${style.spelling === "American" ? "en-US" : "en-GB"}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
${author ? `<meta name="author" content="${escapeHtml(author)}">\n` : ""}<style>
${bookCss(style)}
${feet.join("\n")}
${footCss(sharedPages, title, "Tables and indexes")}
</style>
</head>
<body>
<a class="skip" href="#${encodeURIComponent(book.chapters[0]?.id ?? textId)}">Skip to the text</a>
<header class="title-page">
<h1>${escapeHtml(title)}</h1>
${subtitle ? `<p class="subtitle">${escapeHtml(subtitle)}</p>\n` : ""}${author ? `<p class="author">${escapeHtml(author)}</p>\n` : ""}${rights ? `<p class="rights">${escapeHtml(rights)}</p>\n` : ""}</header>
<main id="${textId}">
${front ? sectionHtml(book, front) : ""}${printed.join("")}${back.map((section) => sectionHtml(book, section)).join("")}</main>
</body>
</html>
`;
}

/** One chapter, as it stands in the page. */
export function chapterHtml(book: Book, chapter: Chapter): string {
  const { id, title, isTitled, tokens } = chapter;
  const text = setter.renderer.render(tokens as Token[], setter.options, { book, level: 2 });
  return `<section class="chapter ${pageName(id)}">
${isTitled ? "" : `${heading(2, title, id)}\n`}${text}</section>
`;
}

/** Parts at the back that share their pages, and what stands below these. */
const sharedPages = "at-the-back";

/** A part without recipes goes on where the one before it ended: in a small book most would leave their page empty. */
function isShort({ blocks }: Section): boolean {
  return blocks.every(({ kind }) => kind !== "recipe" && kind !== "contents");
}

function sectionHtml(book: Book, section: Section): string {
  const { id, title, blocks } = section;
  return `<section class="chapter part ${isShort(section) ? sharedPages : pageName(id)}">
${heading(2, title, id)}
${blocksHtml(book, blocks, 2)}
</section>
`;
}

interface Setting {
  readonly book: Book;
  /** Of the heading above. */
  level: number;
}

/** Sets the tokens that the book's one reader of Markdown made. */
const setter = new MarkdownIt("commonmark").enable("table");
const { rules } = setter.renderer;
const fence = rules.fence!;

rules.directive = (tokens, index, _options, { book, level }: Setting) => {
  const { text, id, recipes, part } = meaningOfToken(tokens[index]!);
  // Such a book is not built, but a chapter of it is looked at while it is written.
  if (!part && !recipes?.length && text === undefined) return `<mark>${escapeHtml(tokens[index]!.content)}</mark>`;
  if (part) return `${blocksHtml(book, partBlocks(book, part), level)}\n`;
  if (recipes) return recipes.map((one) => `${recipeHtml(book, one)}\n`).join("");
  return id ? `<a href="#${encodeURIComponent(id)}">${setHtml(text ?? "")}</a>` : setHtml(text ?? "");
};
rules.text = (tokens, index) => setHtml(tokens[index]!.content);
rules.fence = (tokens, index, options, setting: Setting, self) => {
  const token = tokens[index]!;
  if (!isSpec(token)) return fence(tokens, index, options, setting, self);
  return (meaningOfToken(token).recipes ?? []).map((one) => `${recipeHtml(setting.book, one)}\n`).join("");
};
// The book's title is the page's first heading, so that a chapter's are a level lower.
rules.heading_open = (tokens, index, _options, setting: Setting) => {
  const token = tokens[index]!;
  setting.level = Math.min(6, Number(token.tag.slice(1)) + 1);
  return `<h${setting.level} id="${escapeHtml(meaningOfToken(token).id ?? "")}">`;
};
rules.heading_close = (_tokens, _index, _options, { level }: Setting) => `</h${level}>\n`;
rules.link_open = (tokens, index, options, _setting, self) => {
  const token = tokens[index]!;
  const { id } = meaningOfToken(token);
  if (id) token.attrSet("href", `#${encodeURIComponent(id)}`);
  return self.renderToken(tokens, index, options);
};
rules.image = (tokens, index, _options, { book }: Setting) => {
  const token = tokens[index]!;
  const { file } = meaningOfToken(token);
  const bytes = file === undefined ? undefined : book.pictures.get(file);
  return bytes ? `<img src="${dataUri(bytes)}" alt="${escapeHtml(wordsOf(token))}">` : escapeHtml(wordsOf(token));
};
rules.html_block = () => "";
rules.html_inline = (tokens, index) => (isBreak(tokens[index]!.content) ? "<br>" : "");
rules.hardbreak = () => "<br>\n";
rules.hr = () => "<hr>\n";
rules.table_open = () => `<section class="wide" aria-label="Table" tabindex="0"><table>\n`;
rules.table_close = () => "</table></section>\n";
rules.th_open = (tokens, index) => `<th scope="col"${alignment(tokens[index]!)}>`;
rules.td_open = (tokens, index) => `<td${alignment(tokens[index]!)}>`;

/** Markdown gives a cell its alignment as a style of its own. */
function alignment(token: Token): string {
  const [, side] = /text-align:(right|center)/.exec(token.attrGet("style") ?? "") ?? [];
  return side ? ` class="${side === "right" ? "figure" : "centred"}"` : "";
}

/** A name that CSS takes, the same for the same id. */
function pageName(id: string): string {
  return `at-${[...id].map((sign) => (/[a-z\d-]/.test(sign) ? sign : `_${sign.codePointAt(0)!.toString(16)}`)).join("")}`;
}
