/** The name that a cursor is on, and what it means in the house. */
import type { FieldLine, Name, Part, Span } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { menuEntryOf } from "../house/menu.ts";
import type { NameClass } from "../house/names.ts";
import type { Declaration, Scope } from "../house/scope.ts";
import { type Cursor, holds } from "./place.ts";

export interface Named {
  /** What is declared by that name, the nearest first; never empty. */
  readonly declarations: readonly Declaration[];
  readonly span: Span;
}

/** The fields whose values name something declared, and what. One row each. */
export const namedIn: Readonly<Record<string, readonly NameClass[]>> = {
  family: ["family"],
  from: ["drink"],
  glass: ["glass"],
  ice: ["ice"],
  garnish: ["ingredient"],
  rim: ["ingredient"],
};

/** Absent where the cursor is on no name, or on one that nobody declared. */
export function nameAt(house: House, scope: Scope, { content, column }: Cursor): Named | undefined {
  switch (content.kind) {
    case "pour":
    case "or":
    case "without":
      return content.pour?.name && nameIn(house, scope, content.pour.name, column);
    case "swap": {
      const names = content.readings.flatMap((reading) => [reading.out.name, reading.in.name]);
      const name = names.find((one) => one && holds(one, column));
      return name && nameIn(house, scope, name, column);
    }
    case "field":
      return nameInField(house, scope, content, column);
    case "menu": {
      const found = menuEntryOf(house, scope, content);
      return found && holds(found.name, column) ? declared(house.lookup(scope, "drink", found.name.text), found.name) : undefined;
    }
    default:
      return undefined;
  }
}

/** The part of a field's value under the cursor as a name: the whole value where that is declared, else one item's head. */
export function nameInField(house: House, scope: Scope, field: FieldLine, column: number): Named | undefined {
  const classes = namedIn[field.name.text.toLowerCase()] ?? [];
  const part = field.items.flatMap((item) => item.parts).find((one) => holds(one, column));
  for (const nameClass of classes) {
    const texts = nameClass === "ingredient" ? [part && withoutAmount(part)] : [field.value, part];
    for (const words of texts) {
      const found = words && declared(house.lookup(scope, nameClass, words.text), words);
      if (found) return found;
    }
  }
  return undefined;
}

function nameIn(house: House, scope: Scope, name: Name, column: number): Named | undefined {
  const { text, start, end } = house.resolve(scope, ["ingredient", "drink"], name);
  if (!holds({ start, end }, column)) return undefined;
  const found = house.lookup(scope, "ingredient", text);
  return declared(found.length > 0 ? found : house.lookup(scope, "drink", text), { start, end });
}

function declared(declarations: readonly Declaration[], { start, end }: Span): Named | undefined {
  return declarations.length > 0 ? { declarations, span: { start, end } } : undefined;
}

function withoutAmount(part: Part): Span & { readonly text: string } {
  if (!part.quantity) return part;
  const rest = part.text.slice(part.quantity.end - part.start);
  const text = rest.trim();
  const start = part.quantity.end + rest.indexOf(text);
  return { text, start, end: start + text.length };
}
