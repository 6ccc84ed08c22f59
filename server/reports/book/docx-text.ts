/** An author's Markdown as paragraphs of Word, off the same tokens that the page is printed from. */

import {
  ExternalHyperlink,
  type FileChild,
  ImageRun,
  InternalHyperlink,
  type IParagraphOptions,
  Paragraph,
  type ParagraphChild,
  TextRun,
} from "docx";
import type { Token } from "markdown-it";
import { isSpec } from "../../../grammar/markdown.ts";
import type { Chapter } from "../../house/book/book.ts";
import { isBreak } from "../../house/book/links.ts";
import { meaningOfToken, wordsOf } from "../../house/book/meaning.ts";
import { bound } from "../../house/book/printed-units.ts";
import { blockParts, headings, opening, recipeParts, type Setting, tableOf } from "./docx-parts.ts";
import { lists, styleIds } from "./docx-style.ts";
import { partBlocks } from "./parts.ts";
import { pictureOf } from "./pictures.ts";

/** Where in lists and quotes a paragraph stands. */
interface Around {
  readonly lists: { readonly kind: "bullets" | "numbers"; readonly instance: number; isFresh: boolean }[];
  quotes: number;
}

export function chapterParts(setting: Setting, { id: chapterId, title, isTitled, tokens }: Chapter): FileChild[] {
  const parts: FileChild[] = isTitled ? [] : [opening(setting, chapterId, title)];
  const around: Around = { lists: [], quotes: 0 };
  let [level, follows] = [1, false];
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index]!;
    const { recipes, part, id } = meaningOfToken(token);
    const wasParagraph = follows;
    follows = false;
    if (token.type === "heading_open") {
      level = Number(token.tag.slice(1));
      const named = recipeNamed(setting, id);
      const look: IParagraphOptions = named
        ? { style: styleIds.recipeName, outlineLevel: level - 1 }
        : { heading: headings[level - 1]!, pageBreakBefore: index === 0 && isTitled };
      parts.push(new Paragraph({ ...look, children: setting.marked(id, runsOf(setting, tokens[index + 1])) }));
      index += 2;
    } else if (token.type === "paragraph_open") {
      const inline = tokens[index + 1];
      parts.push(new Paragraph({ ...placeOf(around, wasParagraph, inline), children: runsOf(setting, inline) }));
      index += 2;
      follows = true;
    } else if (token.type === "table_open") {
      const end = tokens.findIndex((one, at) => at > index && one.type === "table_close");
      parts.push(tableIn(setting, tokens.slice(index, end)));
      index = end;
    } else if (recipes) parts.push(...recipes.flatMap((one) => recipeParts(setting, one)));
    else if (part) parts.push(...blockParts(setting, partBlocks(setting.book, part), level));
    else if (token.type === "hr") parts.push(new Paragraph({ style: styleIds.break, text: "*" }));
    else if (token.type === "code_block" || (token.type === "fence" && !isSpec(token))) parts.push(codeOf(token));
    else follow(setting, around, token);
  }
  return parts;
}

function recipeNamed({ book }: Setting, id: string | undefined): boolean {
  return book.recipes.some((one) => one.id === id && one.isNamed);
}

function follow(setting: Setting, around: Around, { type }: Token): void {
  if (type === "bullet_list_open") around.lists.push({ kind: "bullets", instance: 0, isFresh: false });
  else if (type === "ordered_list_open") around.lists.push({ kind: "numbers", instance: setting.nextList(), isFresh: false });
  else if (/_list_close$/.test(type)) around.lists.pop();
  else if (type === "list_item_open") around.lists.at(-1)!.isFresh = true;
  else if (type === "blockquote_open") around.quotes++;
  else if (type === "blockquote_close") around.quotes--;
}

/** How a paragraph is set where it stands. Only the first of a list's item has the item's mark. */
function placeOf({ lists: all, quotes }: Around, followsOne: boolean, inline: Token | undefined): IParagraphOptions {
  const list = all.at(-1);
  if (list?.isFresh) {
    list.isFresh = false;
    return {
      style: styleIds.list,
      numbering: { reference: lists[list.kind], level: Math.min(5, all.length - 1), instance: list.instance },
    };
  }
  if (list) return { style: styleIds.list, indent: { left: 360 * all.length } };
  if (quotes > 0) return { style: styleIds.quote };
  if (inline?.children?.length === 1 && inline.children[0]!.type === "image") return { style: styleIds.picture };
  return { style: followsOne ? styleIds.body : styleIds.first };
}

function codeOf({ content }: Token): Paragraph {
  const lines = content.replace(/\n$/, "").split("\n");
  return new Paragraph({
    style: styleIds.code,
    children: lines.map((text, index) => new TextRun({ text, ...(index > 0 && { break: 1 }) })),
  });
}

function tableIn(setting: Setting, tokens: readonly Token[]): FileChild {
  const rows: ParagraphChild[][][] = [];
  for (const [index, token] of tokens.entries()) {
    if (token.type === "tr_open") rows.push([]);
    else if (/^t[hd]_open$/.test(token.type)) rows.at(-1)!.push(runsOf(setting, tokens[index + 1]));
  }
  const [head = [], ...body] = rows;
  return tableOf(
    head.map((children) => ({ children })),
    body,
  );
}

interface Look {
  readonly bold?: boolean;
  readonly italics?: boolean;
  readonly font?: string;
}

/** The runs of a paragraph's tokens. */
function runsOf(setting: Setting, inline: Pick<Token, "children"> | undefined): ParagraphChild[] {
  const stack: { href: string; id: string | undefined; children: ParagraphChild[] }[] = [];
  const all: ParagraphChild[] = [];
  let look: Look = {};
  const put = (child: ParagraphChild) => (stack.at(-1)?.children ?? all).push(child);
  for (const token of inline?.children ?? []) {
    const { type, content } = token;
    if (type === "strong_open" || type === "strong_close") look = { ...look, bold: type === "strong_open" };
    else if (type === "em_open" || type === "em_close") look = { ...look, italics: type === "em_open" };
    else if (type === "text" || type === "text_special") put(new TextRun({ ...look, text: bound(content) }));
    else if (type === "softbreak") put(new TextRun({ ...look, text: " " }));
    else if (type === "hardbreak" || (type === "html_inline" && isBreak(content))) put(new TextRun({ break: 1 }));
    else if (type === "code_inline") put(new TextRun({ ...look, font: "Courier New", text: content }));
    else if (type === "directive") put(saidRun(setting, token, look));
    else if (type === "image") put(imageRun(setting, token));
    else if (type === "link_open") stack.push({ href: String(token.attrGet("href")), id: meaningOfToken(token).id, children: [] });
    else if (type === "link_close") {
      const { href, id, children } = stack.pop()!;
      put(id ? new InternalHyperlink({ anchor: setting.anchor(id), children }) : new ExternalHyperlink({ link: href, children }));
    }
  }
  return all;
}

function saidRun(setting: Setting, token: Token, look: Look): ParagraphChild {
  const { text = "", id } = meaningOfToken(token);
  const run = new TextRun({ ...look, text: bound(text) });
  return id ? new InternalHyperlink({ anchor: setting.anchor(id), children: [run] }) : run;
}

/** As wide as the text at most. */
const widest = 600;

function imageRun({ book }: Setting, token: Token): ParagraphChild {
  const { file } = meaningOfToken(token);
  const data = file === undefined ? undefined : book.pictures.get(file);
  const picture = data && pictureOf(data);
  const alt = wordsOf(token);
  if (!data || !picture?.size || picture.type === "svg")
    return new TextRun({ italics: true, text: alt ? `[Picture: ${alt}]` : "[Picture]" });
  const { width, height } = picture.size;
  const scale = Math.min(1, widest / width);
  return new ImageRun({
    type: picture.type,
    data,
    transformation: { width: Math.round(width * scale), height: Math.round(height * scale) },
    altText: { name: file!, title: alt, description: alt },
  });
}
