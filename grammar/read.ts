/** From a text to its tree: lines split by hand, each read by itself, put together into entries. */
import { indentWidth, skipSpace, trimEnd } from "./characters.ts";
import { findField } from "./fields.ts";
import { isAtMargin, readAsHead, readLine } from "./line.ts";
import { shapeOf } from "./lines/field.ts";
import * as problems from "./problems.ts";
import {
  type BlankLine,
  type Content,
  type Entry,
  isOwnKind,
  type Line,
  type Name,
  type Reading,
  type TextLine,
  type Tree,
} from "./tree.ts";

/** Reads any text. Never throws; `print` gives the text back to the last character. */
export function read(text: string): Tree {
  const assembler = new Assembler();
  splitLines(text, (line, eol) => assembler.add(line, eol));
  return makeTree(assembler.finish());
}

/** A line of one of several texts in one: where `outside` says what it is, it is of no spec. */
export interface PartLine {
  readonly text: string;
  readonly eol: string;
  readonly outside?: TextLine | BlankLine;
}

/** Reads lines that belong to several texts: no entry reaches from the lines of specs over those outside, or over a heading. */
export function readParts(lines: readonly PartLine[]): Tree {
  const assembler = new Assembler(lines[0]?.outside ? "text" : "preamble");
  for (const [line, { text, eol, outside }] of lines.entries()) {
    const isHeading = outside?.kind === "text" && outside.level !== undefined;
    const above = lines[line - 1];
    if (above && (isHeading || (above.outside === undefined) !== (outside === undefined)))
      assembler.startPart(outside ? "text" : "preamble");
    if (outside) assembler.keep(makeLine({ content: outside }, text, eol));
    else assembler.add(text, eol);
  }
  return makeTree(assembler.finish());
}

/** The tree of these entries, in this order. */
export function makeTree(entries: readonly Entry[]): Tree {
  const starts: number[] = [];
  let lineCount = 0;
  for (const entry of entries) {
    starts.push(lineCount);
    lineCount += entry.lines.length;
  }
  return { entries, starts, lineCount };
}

/** Calls `take` with each line and its line break. The last line has none; a text of no characters is one empty line. */
export function splitLines(text: string, take: (line: string, eol: string) => void): void {
  let start = 0;
  let feed = text.indexOf("\n");
  let carriage = text.indexOf("\r");
  while (feed >= 0 || carriage >= 0) {
    if (carriage < 0 || (feed >= 0 && feed < carriage)) {
      take(text.slice(start, feed), "\n");
      start = feed + 1;
      feed = text.indexOf("\n", start);
    } else {
      const both = feed === carriage + 1;
      take(text.slice(start, carriage), both ? "\r\n" : "\r");
      start = carriage + (both ? 2 : 1);
      if (both) feed = text.indexOf("\n", start);
      carriage = text.indexOf("\r", start);
    }
  }
  take(text.slice(start), "");
}

/**
 * Puts lines together into entries, from any margin line on. What a line says depends on the lines
 * above it in three ways only, all kept here: the entry that is open, the prose field that is open,
 * and whether the preamble has been found fault with.
 */
export class Assembler {
  private readonly entries: Entry[] = [];
  private kind: Entry["kind"];
  private name: Name | undefined = undefined;
  private lines: Line[] = [];
  /** How deep the open prose field stands; -1 where none is open. */
  private prose = -1;
  private preambleFaulted = false;

  /** Starts behind an entry of kind `above`, or at the head of the file. */
  constructor(above: Entry["kind"] = "preamble") {
    this.kind = above;
  }

  /** What follows is another text's: it stands under no entry. */
  startPart(kind: "preamble" | "text"): void {
    this.begin(kind, undefined);
    this.preambleFaulted = false;
  }

  /** Adds a line that stands where it stood, behind the same lines. */
  keep(line: Line): void {
    const { content } = line;
    if (content.kind === "entry") this.begin(content.entry ?? "unknown", content.name);
    else if (content.kind !== "prose" && content.kind !== "blank") this.prose = -1;
    if (content.kind === "field") this.openProse(line.text, content.name.text);
    if (line.problem) this.preambleFaulted = true;
    this.lines.push(line);
  }

  /** Adds the next line. `known` is used again where it says what the line says here. */
  add(text: string, eol: string, known?: Line): void {
    if (this.prose >= 0 && this.addToProse(text, eol, known)) return;
    const reading = readLine(text);
    const { kind } = reading.content;
    if (kind === "entry") this.open(text, eol, reading, known);
    else if (kind === "blank" || kind === "comment" || kind === "unread" || !isAtMargin(text)) this.push(text, eol, reading, known);
    else if (this.takes(reading)) this.push(text, eol, this.kind === "unknown" ? reading : unindented(text, reading), known);
    else this.open(text, eol, readAsHead(text), known);
  }

  /** Whether this line would open an entry where the lines so far end. */
  opens(line: { readonly text: string; readonly content?: Content }): boolean {
    // An entry's own word opens it everywhere; an unknown head may be a field that some entry takes.
    if (line.content?.kind === "entry" && line.content.entry) return true;
    const { text } = line;
    const reading = readLine(text);
    const { kind } = reading.content;
    if (kind === "entry") return true;
    return (kind === "field" || kind === "pour") && isAtMargin(text) && !this.takes(reading);
  }

  /** The entries so far, the last one closed. */
  finish(): Entry[] {
    this.close();
    return this.entries;
  }

  private addToProse(text: string, eol: string, known: Line | undefined): boolean {
    const start = skipSpace(text, 0, text.length);
    if (start < text.length && indentWidth(text) <= this.prose) {
      this.prose = -1;
      return false;
    }
    if (start === text.length) this.lines.push(known?.eol === eol ? known : makeLine(readLine(text), text, eol));
    else if (known?.content.kind === "prose" && known.eol === eol) this.lines.push(known);
    else {
      const end = trimEnd(text, start, text.length);
      this.lines.push(makeLine({ content: { kind: "prose", start, end, text: text.slice(start, end) } }, text, eol));
    }
    return true;
  }

  private push(text: string, eol: string, reading: Reading, known: Line | undefined): void {
    const { content } = reading;
    let used = reading;
    if (this.kind === "unknown") {
      if (reading.problem) used = { content, comment: reading.comment, problem: undefined };
    } else if (this.kind === "preamble" && content.kind !== "blank" && content.kind !== "comment") used = this.inPreamble(text, reading);
    if (content.kind === "field") this.openProse(text, content.name.text);
    this.lines.push(known && says(known, used, eol) ? known : makeLine(used, text, eol));
  }

  /** Only the first line that stands under no entry is found fault with: the rest has the same cure. */
  private inPreamble(text: string, reading: Reading): Reading {
    const start = skipSpace(text, 0, text.length);
    const problem = this.preambleFaulted ? undefined : problems.homeless({ start, end: trimEnd(text, start, text.length) });
    this.preambleFaulted = true;
    return { content: reading.content, comment: reading.comment, problem };
  }

  private open(text: string, eol: string, reading: Reading, known: Line | undefined): void {
    const { content } = reading;
    if (content.kind !== "entry") throw new Error("An entry was opened by a line that is no head.");
    this.begin(content.entry ?? "unknown", content.name);
    this.lines.push(known && says(known, reading, eol) ? known : makeLine(reading, text, eol));
  }

  private begin(kind: Entry["kind"], name: Name | undefined): void {
    this.close();
    this.kind = kind;
    this.name = name;
  }

  private openProse(text: string, field: string): void {
    if (shapeOf(field) === "prose") this.prose = indentWidth(text);
  }

  private close(): void {
    this.prose = -1;
    if (this.lines.length > 0) this.entries.push({ kind: this.kind, lines: this.lines, name: this.name });
    this.lines = [];
  }

  /** Whether a margin line stays with the open entry. */
  private takes({ content }: Reading): boolean {
    if (content.kind === "pour") return true;
    if (content.kind !== "field") return false;
    return findField(content.name.text, isOwnKind(this.kind) ? this.kind : undefined) !== undefined;
  }
}

function unindented(text: string, reading: Reading): Reading {
  return { content: reading.content, comment: reading.comment, problem: problems.unindented(text) };
}

function makeLine(reading: Reading, text: string, eol: string): Line {
  return { content: reading.content, comment: reading.comment, problem: reading.problem, text, eol };
}

function says(line: Line, reading: Reading, eol: string): boolean {
  return line.content === reading.content && line.eol === eol && line.problem === reading.problem;
}
