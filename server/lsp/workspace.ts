/**
 * The texts of the open folders and the open editors, kept in one house. An open editor's text wins
 * over the disk's; a closed file is as it is on disk.
 */
import { FileChangeType, type FileEvent, type TextDocumentContentChangeEvent, type TextDocumentItem } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { URI } from "vscode-uri";
import { edit, type TextChange } from "../../grammar/edit.ts";
import { readMarkdown } from "../../grammar/markdown.ts";
import { read } from "../../grammar/read.ts";
import { chaptersOf } from "../house/book/chapter-files.ts";
import type { SpecDocument } from "../house/document.ts";
import { House } from "../house/house.ts";
import { houseFiles, isHouseFile, readHouseFile } from "../house/house-files.ts";
import { readLarder } from "../larder/larder.ts";
import type { Environment } from "./environment.ts";
import { turns } from "./turns.ts";

/** So many files are read from disk at the same time. */
const readingAtOnce = 64;

export interface Loading {
  report(done: number, all: number): void;
  readonly cancelled: boolean;
}

export class Workspace {
  readonly house: House;
  private readonly environment: Environment;
  /** What is open; of a Markdown file the whole text, of which the house has the specs alone. */
  private readonly open = new Map<string, TextDocument | undefined>();
  /** URIs as the client spells them, by the spelling that the house uses, of every text that was ever open. */
  private readonly spellings = new Map<string, string>();
  private folders: string[] = [];
  /** Readings may end in another order than they were begun in: the last one begun counts. */
  private readonly lastRead = new Map<string, number>();
  private reads = 0;
  /** Closed Markdown texts that the house has only as chapters of a book, or would have. */
  private readonly perhapsChapters = new Set<string>();
  private isChapter: (uri: string) => boolean = () => false;

  constructor(environment: Environment) {
    this.environment = environment;
    this.house = new House({ larder: readLarder() });
  }

  get roots(): readonly string[] {
    return this.folders;
  }

  /** The document that a client's URI means. */
  document(uri: string): SpecDocument | undefined {
    return this.house.document(canonical(uri));
  }

  /** The client's own spelling of a URI. */
  spelling(uri: string): string {
    return this.spellings.get(uri) ?? uri;
  }

  isOpen(uri: string): boolean {
    return this.open.has(uri);
  }

  openText({ uri, languageId, version, text }: TextDocumentItem): void {
    const key = canonical(uri);
    const whole = isMarkdown(key, languageId) ? TextDocument.create(uri, languageId, version, text) : undefined;
    this.open.set(key, whole);
    this.spellings.set(key, uri);
    this.house.setDocument({ uri: key, version, ...(whole ? readMarkdown(text) : { tree: read(text) }) });
  }

  changeText(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): void {
    const document = this.document(uri);
    if (!document) return;
    const whole = this.open.get(document.uri);
    const after = whole
      ? readMarkdown(TextDocument.update(whole, [...changes], version).getText())
      : { tree: edit(document.tree, changes as readonly TextChange[]) };
    this.house.setDocument({ ...document, version, ...after });
  }

  /** A closed text is again as it is on disk, or gone. */
  async closeText(uri: string): Promise<void> {
    const key = canonical(uri);
    this.open.delete(key);
    await this.readAgain([key]);
    await this.readChapters();
  }

  /**
   * Takes in what changed, came or went outside the editor: files, and folders, of which an editor may
   * name the folder alone.
   */
  async takeEvents(events: readonly FileEvent[]): Promise<void> {
    const keys = new Set<string>();
    for (const { uri, type } of events) {
      const key = canonical(uri);
      if (isHouseFile(key)) keys.add(key);
      else if (!mayBeFolder(key)) continue;
      else if (type === FileChangeType.Deleted) for (const below of this.textsBelow(key)) keys.add(below);
      else if (type === FileChangeType.Created && this.belongs(key)) {
        for (const found of await this.environment.list(key).catch(() => [])) keys.add(canonical(found));
      }
    }
    await this.readAgain([...keys]);
    await this.readChapters();
  }

  private textsBelow(folder: string): string[] {
    return [...this.house.documents()].flatMap(({ uri }) => (uri.startsWith(`${folder}/`) ? [uri] : []));
  }

  private async readAgain(keys: readonly string[], rest?: (done: number) => Promise<boolean>): Promise<void> {
    for (let from = 0; from < keys.length; from += readingAtOnce) {
      const some = keys.slice(from, from + readingAtOnce);
      const turn = ++this.reads;
      for (const key of some) this.lastRead.set(key, turn);
      const texts = await Promise.all(some.map((key) => (this.belongs(key) ? this.environment.read(key) : undefined)));
      for (const [index, key] of some.entries()) {
        // A later reading knows better, and what was opened meanwhile is the editor's.
        if (this.lastRead.get(key) !== turn) continue;
        this.lastRead.delete(key);
        if (!this.open.has(key)) this.takeClosed(key, this.belongs(key) ? texts[index] : undefined);
      }
      if (rest && !(await rest(from))) return;
    }
  }

  /** Opens and closes folders; reads what is new, forgets what belongs to none any more. */
  async setFolders(folders: readonly string[], loading: Loading): Promise<void> {
    const before = this.folders;
    this.folders = folders.map((folder) => canonical(folder).replace(/\/$/, ""));
    this.house.setRoots(this.folders);
    for (const { uri } of [...this.house.documents()]) if (!this.open.has(uri) && !this.belongs(uri)) this.house.removeDocument(uri);
    for (const folder of this.folders) if (!before.includes(folder)) await this.load(folder, loading);
  }

  private async load(folder: string, loading: Loading): Promise<void> {
    const keys = (await this.environment.list(folder)).map(canonical);
    const turn = turns(this.environment);
    await this.readAgain(keys, async (done) => {
      if (await turn()) loading.report(done, keys.length);
      return !loading.cancelled;
    });
    await this.readChapters();
  }

  /** A preface is read once it is known that it is one: its book may be read after it, or change. */
  private async readChapters(): Promise<void> {
    this.isChapter = chaptersOf(this.house);
    const changed = (uri: string) => !this.open.has(uri) && this.isChapter(uri) !== (this.house.document(uri) !== undefined);
    await this.readAgain([...this.perhapsChapters].filter(changed));
  }

  /** The whole Markdown texts of a folder and below, those with no spec in them too: open ones as they are typed. */
  async markdownIn(folder: string): Promise<{ readonly uri: string; readonly text: string }[]> {
    const open = [...this.open.keys()].filter((key) => key.startsWith(`${folder}/`));
    const keys = new Set([...(await this.environment.list(folder)).map(canonical), ...open].filter((key) => isMarkdown(key, "")));
    const texts = await Promise.all(
      [...keys].map(async (uri) => ({ uri, text: this.open.get(uri)?.getText() ?? (await this.environment.read(uri)) })),
    );
    return texts.flatMap(({ uri, text }) => (text === undefined ? [] : [{ uri, text }]));
  }

  private takeClosed(key: string, text: string | undefined): void {
    const given = text === undefined ? undefined : readHouseFile(key, text, this.isChapter(key));
    if (text !== undefined && (!given || this.isChapter(key))) this.perhapsChapters.add(key);
    else this.perhapsChapters.delete(key);
    if (given) this.house.setDocument({ uri: key, version: null, ...given });
    else this.house.removeDocument(key);
  }

  private belongs(uri: string): boolean {
    return this.folders.some((folder) => uri.startsWith(`${folder}/`));
  }
}

/** By its name where that tells: some clients say one language of all that they have a server for. */
function isMarkdown(uri: string, languageId: string): boolean {
  return isHouseFile(uri) ? !uri.endsWith(".drink") : languageId === "markdown";
}

/** Whether what came or went may be a folder with files of the house in it: it has no ending, and is nobody else's. */
function mayBeFolder(uri: string): boolean {
  const parts = uri.split("/");
  return !/\.\w{1,5}$/.test(parts.at(-1)!) && !parts.some((part) => houseFiles.passOver.includes(part));
}

/** One spelling for one file, whatever an editor escapes. */
export function canonical(uri: string): string {
  let key = spellings.get(uri);
  if (key === undefined) {
    key = URI.parse(uri).toString();
    if (spellings.size > 100_000) spellings.clear();
    spellings.set(uri, key);
  }
  return key;
}

const spellings = new Map<string, string>();
