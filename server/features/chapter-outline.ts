/** The outline of a chapter: its recipes under the headings that they stand under; a heading without any is left out. */
import { type DocumentSymbol, SymbolKind } from "vscode-languageserver-types";
import type { Entry, Line, TextLine } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { rangeOnLine } from "./place.ts";

interface Heading {
  readonly level: number;
  readonly symbol: DocumentSymbol;
}

/** `symbolOf`: how an entry stands in an outline. */
export function chapterOutline(
  { tree }: SpecDocument,
  symbolOf: (entry: Entry, firstLine: number) => DocumentSymbol | undefined,
): DocumentSymbol[] {
  const top: DocumentSymbol[] = [];
  const open: Heading[] = [];
  const add = (symbol: DocumentSymbol) => (open.at(-1)?.symbol.children ?? top).push(symbol);
  for (const [index, entry] of tree.entries.entries()) {
    const first = tree.starts[index]!;
    const last = first + entry.lines.length - 1;
    const heading = headingOf(entry, first);
    while (heading && open.length > 0 && open.at(-1)!.level >= heading.level) open.pop();
    if (heading) {
      add(heading.symbol);
      open.push(heading);
    }
    for (const { symbol } of open) symbol.range = { ...symbol.range, end: { line: last, character: entry.lines.at(-1)!.text.length } };
    if (entry.kind === "text") for (const symbol of printedIn(entry, first)) add(symbol);
    else {
      const symbol = symbolOf(entry, first);
      if (symbol) add(symbol);
    }
  }
  return withRecipes(top);
}

function headingOf({ lines }: Entry, line: number): Heading | undefined {
  const { content, text } = lines[0] as Line;
  if (content.kind !== "text" || content.level === undefined) return undefined;
  const name = text.replace(/^[\s>#*+-]*(?:\d+[.)]\s+)?#*\s*/, "").replace(/\s+#*\s*$/, "");
  const range = rangeOnLine(line, { start: 0, end: text.length });
  return {
    level: content.level,
    symbol: { name: name || text, detail: "", kind: SymbolKind.String, range, selectionRange: range, children: [] },
  };
}

function printedIn({ lines }: Entry, firstLine: number): DocumentSymbol[] {
  return lines.flatMap(({ content }, index) => (content.kind === "text" ? specsOn(content, firstLine + index) : []));
}

function specsOn({ directives }: TextLine, line: number): DocumentSymbol[] {
  return directives.flatMap(({ block, name, label, ...span }) => {
    const text = label?.text.trim();
    if (!block || name.text !== "spec" || !text) return [];
    return [
      {
        name: text,
        detail: "printed here",
        kind: SymbolKind.Class,
        range: rangeOnLine(line, span),
        selectionRange: rangeOnLine(line, label!),
      },
    ];
  });
}

/** A heading is a string here, and nothing else is. */
function withRecipes(symbols: readonly DocumentSymbol[]): DocumentSymbol[] {
  return symbols.flatMap((symbol) => {
    if (symbol.kind !== SymbolKind.String || symbol.detail) return [symbol];
    const children = withRecipes(symbol.children ?? []);
    return children.length > 0 ? [{ ...symbol, children }] : [];
  });
}
