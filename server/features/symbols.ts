/** The outline of a file: its entries, under a drink its pours, under a menu its sections. */
import { type DocumentSymbol, SymbolKind } from "vscode-languageserver-types";
import type { Content, Entry, Words } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { chapterOutline } from "./chapter-outline.ts";
import { rangeOfEntry, rangeOnLine } from "./place.ts";

/** What an editor shows each kind of entry as. */
export const symbolKinds: Readonly<Record<Exclude<Entry["kind"], "preamble" | "text">, SymbolKind>> = {
  house: SymbolKind.Namespace,
  stock: SymbolKind.Constant,
  prep: SymbolKind.Function,
  drink: SymbolKind.Class,
  menu: SymbolKind.Module,
  family: SymbolKind.Interface,
  glass: SymbolKind.Object,
  ice: SymbolKind.Object,
  book: SymbolKind.Package,
  unknown: SymbolKind.String,
};

export function documentSymbols(document: SpecDocument): DocumentSymbol[] {
  const { entries, starts } = document.tree;
  if (document.margins) return chapterOutline(document, symbolOf);
  return entries.flatMap((entry, index) => symbolOf(entry, starts[index]!) ?? []);
}

function symbolOf(entry: Entry, firstLine: number): DocumentSymbol | undefined {
  const head = entry.lines[0];
  if (entry.kind === "preamble" || entry.kind === "text" || head?.content.kind !== "entry") return undefined;
  const { word, name } = head.content;
  const range = rangeOfEntry(entry, firstLine);
  const selectionRange = rangeOnLine(firstLine, name?.quoted ?? name ?? word);
  const children = entry.lines.flatMap(({ content }, line) => childOf(content, firstLine + line) ?? []);
  return {
    name: name?.text || word.text,
    detail: name?.text ? word.text : "",
    kind: symbolKinds[entry.kind],
    range,
    selectionRange,
    ...(children.length > 0 && { children }),
  };
}

function childOf(content: Content, line: number): DocumentSymbol | undefined {
  if (content.kind === "section" && content.title) return leaf(content.title, "section", SymbolKind.Field, line);
  if (content.kind === "pour" && content.pour.name) {
    const { name, quantity } = content.pour;
    const amount = quantity ? [quantity.about?.text, quantity.numeral.text, quantity.unit?.text].filter(Boolean).join(" ") : "";
    return leaf(name, amount, SymbolKind.Property, line);
  }
  return undefined;
}

function leaf(words: Words, detail: string, kind: SymbolKind, line: number): DocumentSymbol | undefined {
  const range = rangeOnLine(line, words);
  return words.text ? { name: words.text, detail, kind, range, selectionRange: range } : undefined;
}
