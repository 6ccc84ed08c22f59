/** A book as a manuscript for Word, every paragraph in a named style: what a publisher takes in. */
import { AlignmentType, Document, type FileChild, Footer, HeadingLevel, Packer, PageNumber, Paragraph, TextRun } from "docx";
import JSZip from "jszip";
import type { Book } from "../../house/book/book.ts";
import type { Section } from "./blocks.ts";
import { blockParts, opening, type Setting, settingOf } from "./docx-parts.ts";
import { numbering, styleIds, wordStyles } from "./docx-style.ts";
import { chapterParts } from "./docx-text.ts";
import { backSections, frontSection } from "./parts.ts";

/** The bytes of the document: the same book gives the same bytes, where `noted` is the same, which a zip file has to hold as its day. */
export async function bookDocx(book: Book, noted: Date): Promise<Uint8Array> {
  const { title, author, subtitle, style } = book;
  const document = new Document({
    title,
    ...(author && { creator: author, lastModifiedBy: author }),
    ...(subtitle && { subject: subtitle }),
    styles: wordStyles(style),
    numbering,
    sections: [
      {
        properties: {
          titlePage: true,
          page: {
            size: style.spelling === "American" ? { width: 12240, height: 15840 } : { width: 11906, height: 16838 },
            margin: { top: 1440, bottom: 1440, left: 1450, right: 1450 },
          },
        },
        footers: { default: footer(title), first: new Footer({ children: [new Paragraph("")] }) },
        children: bookParts(book),
      },
    ],
  });
  return settled(await Packer.toBuffer(document), noted);
}

function bookParts(book: Book): FileChild[] {
  const setting = settingOf(book);
  const front = frontSection(book);
  return [
    ...titlePage(book),
    ...(front ? sectionParts(setting, front) : []),
    ...book.chapters.flatMap((chapter) => chapterParts(setting, chapter)),
    ...backSections(book).flatMap((section) => sectionParts(setting, section)),
  ];
}

function titlePage({ title, subtitle, author, rights }: Book): Paragraph[] {
  const line = (style: string, text: string | undefined) => (text ? [new Paragraph({ style, text })] : []);
  return [
    new Paragraph({ heading: HeadingLevel.TITLE, text: title }),
    ...line(styleIds.subtitle, subtitle),
    ...line(styleIds.author, author),
    ...line(styleIds.rights, rights),
  ];
}

function sectionParts(setting: Setting, { id, title, blocks }: Section): FileChild[] {
  return [opening(setting, id, title), ...blockParts(setting, blocks, 1)];
}

function footer(title: string): Footer {
  const children = [
    new TextRun({ text: `${title}  `, italics: true, size: 18 }),
    new TextRun({ children: [PageNumber.CURRENT], size: 18 }),
  ];
  return new Footer({ children: [new Paragraph({ alignment: AlignmentType.CENTER, children })] });
}

/**
 * The library stamps a document with the time and with ids drawn by lot. What is drawn is numbered in the
 * order it comes, and the time is left out.
 */
async function settled(bytes: Uint8Array, noted: Date): Promise<Uint8Array> {
  const [given, made] = [await JSZip.loadAsync(bytes), new JSZip()];
  const ids = new Map<string, string>();
  const numbered = (text: string) =>
    text.replace(/\b(Id|r:id|r:embed)="(rId)?([\w-]{12,})"/g, (_, name: string, _prefix, drawn: string) => {
      if (!ids.has(drawn)) ids.set(drawn, `rIdL${ids.size + 1}`);
      return `${name}="${ids.get(drawn)}"`;
    });
  for (const name of Object.keys(given.files).sort()) {
    const file = given.files[name]!;
    if (file.dir) continue;
    const isText = /\.(?:xml|rels)$/.test(name);
    const content = isText ? numbered(withoutTime(await file.async("string"))) : await file.async("uint8array");
    made.file(name, content, { date: noted, createFolders: false });
  }
  return made.generateAsync({ type: "uint8array", compression: "DEFLATE", platform: "DOS" });
}

function withoutTime(xml: string): string {
  return xml.replace(/<dcterms:(created|modified)\b[^>]*>[^<]*<\/dcterms:\1>/g, "");
}
