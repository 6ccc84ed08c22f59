/**
 * The text's own parts as colours, for an editor that has no grammar of ours: keywords, fields, numbers and
 * their units, comments and prose. What a name means is no concern here.
 */
import type { Entry, Line, Pour, Quantity, Span } from "../../grammar/tree.ts";

export const syntaxTypes = ["keyword", "property", "number", "comment"] as const;

export interface SyntaxToken extends Span {
  readonly line: number;
  readonly type: (typeof syntaxTypes)[number] | "string";
}

/** In no order; a number may stand inside a name. */
export function syntaxTokens(entry: Entry): SyntaxToken[] {
  return entry.lines.flatMap((text, line) => partsOf(text).map(([type, { start, end }]) => ({ line, type, start, end })));
}

type Typed = readonly [SyntaxToken["type"], Span];

function partsOf({ content, comment }: Line): Typed[] {
  const parts: Typed[] = comment ? [["comment", comment]] : [];
  const add = (type: SyntaxToken["type"], ...spans: (Span | undefined)[]) => {
    for (const span of spans) if (span) parts.push([type, span]);
  };
  const addPour = (pour: Pour | undefined) => {
    add("keyword", pour?.lead);
    parts.push(...(pour?.quantity ? quantityParts(pour.quantity) : []));
  };
  switch (content.kind) {
    case "entry":
      if (content.entry) add("keyword", content.word);
      break;
    case "prose":
      add("string", content);
      break;
    case "field": {
      add("property", content.name);
      const quantities = content.items.flatMap((item) => item.parts.flatMap((part) => part.quantities));
      if (content.items.length === 0) add("string", content.value);
      parts.push(...quantities.flatMap(quantityParts));
      break;
    }
    case "pour":
      addPour(content.pour);
      break;
    case "or":
      add("keyword", content.word);
      addPour(content.pour);
      break;
    case "swap":
      add("keyword", content.word);
      addPour(content.readings[0]?.out);
      addPour(content.readings[0]?.in);
      break;
    case "without":
      add("keyword", content.word, content.all);
      addPour(content.pour);
      break;
    case "section":
      add("keyword", content.word);
      add("string", content.title);
      break;
    case "menu":
      add("number", ...(content.priced?.prices ?? []));
      break;
  }
  return parts;
}

function quantityParts({ about, numeral, unit }: Quantity): Typed[] {
  return [...(about ? [["keyword", about] as const] : []), ["number", numeral], ...(unit ? [["keyword", unit] as const] : [])];
}
