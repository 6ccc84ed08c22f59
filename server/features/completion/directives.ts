/** In what is written around specs: directives, the recipes and pours that they name, their attributes. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Entry } from "../../../grammar/tree.ts";
import { type DirectiveRow, directiveRows } from "../../house/book/directives.ts";
import { assessDrink } from "../../house/drink.ts";
import { prepPours } from "../../house/prep.ts";
import { namedFor } from "./names.ts";
import { type Asked, type Group, inOrder, near, type Offer } from "./offer.ts";

/** Nothing where no directive is being typed: running text is left alone. */
export function inText(asked: Asked): Group[] {
  return groupsAt(asked).map((group) => ({ ...group, isJoined: true }));
}

function groupsAt(asked: Asked): Group[] {
  const { before } = asked;
  const [, colons = "", name = "", rest = ""] = /(?:^|[^:\w])(::?)([a-z][\w-]*)?([[{][^\n]*)?$/i.exec(afterLast(before)) ?? [];
  if (!colons) return [];
  const block = colons.length === 2;
  if (!rest) return [namesOfDirectives(before.length - name.length, block)];
  const row = directiveRows.find((one) => one.name === name && one.block === block);
  if (!row) return [];
  const [, label = "", attributes] = /^\[([^\]]*)(?:\](.*))?$/s.exec(rest) ?? [undefined, "", rest];
  if (rest.startsWith("[") && !/\]/.test(rest)) return [labels(asked, row, before.length - label.length)];
  const open = /^\{([^}]*)$/.exec(attributes ?? "")?.[1];
  return open === undefined ? [] : inAttributes(asked, row, label, open);
}

/** The stretch that the last directive of the line would stand in, from a colon on. */
function afterLast(before: string): string {
  const starts = [...before.matchAll(/(?:^|[^:\w])::?(?:[a-z][\w-]*)?(?=$|[[{])/gi)];
  return before.slice(starts.at(-1)?.index ?? before.length);
}

function namesOfDirectives(start: number, block: boolean): Group {
  const rows = directiveRows.filter((row) => row.block === block);
  return { start, until: /[^\w-]|$/, offers: inOrder(rows.map((row) => directiveOffer(row))) };
}

function directiveOffer({ name, of, attributes }: DirectiveRow): Offer {
  const needed = attributes.filter((one) => one.needed);
  const braces = needed.map(({ name: key, values }, index) =>
    values ? `${key}=\${${index + 2}|${values.join(",")}|}` : `${key}="$${index + 2}"`,
  );
  return {
    label: name,
    snippet: `${name}${of.length > 0 ? "[$1]" : ""}${braces.length > 0 ? `{${braces.join(" ")}}` : ""}`,
    kind: CompletionItemKind.Function,
    near: near.usual,
    about: { what: "directive", name },
  };
}

function labels(asked: Asked, row: DirectiveRow, start: number): Group {
  const until = /[\]}]|$/;
  const within = row.name === "pour" ? /^[^\]]*\]\{[^}]*in="([^"}]+)"/.exec(asked.behind)?.[1] : undefined;
  const recipe = within && recipeNamed(asked, within);
  if (recipe) return { start, until, offers: inOrder(pouredBy(asked, recipe).map((name) => ingredientOffer(name))) };
  return { start, until, ...recipesNamed(asked, row, start) };
}

function recipesNamed(asked: Asked, row: DirectiveRow, start: number): Pick<Group, "offers" | "isLong"> {
  const { named, isLong } = namedFor(asked, row.of, asked.before.slice(start), ({ kind, larder }) =>
    larder ? near.larder : nearOfKind(row, kind),
  );
  const wanted = named.filter(({ called }) => row.name === "pour" || called.kind === "drink" || called.kind === "prep");
  return {
    isLong,
    offers: wanted.map(({ called: { name, nameClass, kind }, count, near: at }) => ({
      label: name,
      kind: kind === "drink" ? CompletionItemKind.Class : CompletionItemKind.Function,
      near: at,
      used: count,
      from: kind,
      about: { what: nameClass === "drink" ? "drink" : "ingredient", name },
    })),
  };
}

function nearOfKind({ name }: DirectiveRow, kind: Entry["kind"]): number {
  return name === "pour" || kind === "drink" ? near.poured : near.own;
}

function inAttributes(asked: Asked, row: DirectiveRow, label: string, open: string): Group[] {
  const { before } = asked;
  const [, key, quote, typed] = /([a-z][\w-]*)=(["']?)([^"'{}]*)$/i.exec(open) ?? [];
  if (key === undefined || (!quote && /\s/.test(typed!))) {
    const begun = /[\w-]*$/.exec(open)![0];
    const offers = row.attributes.map(
      ({ name, doc, values, needed }): Offer => ({
        label: name,
        ...(values ? { snippet: `${name}=\${1|${values.join(",")}|}` } : needed && { snippet: `${name}="$1"` }),
        kind: CompletionItemKind.Property,
        near: near.usual,
        from: doc,
        about: { what: "directive", name: row.name },
      }),
    );
    return [{ start: before.length - begun.length, until: /[\s}=]|$/, offers: inOrder(offers) }];
  }
  const start = before.length - typed!.length;
  if (key === "in") return [{ start, until: /["'}]|$/, ...holding(asked, label, start) }];
  const values = row.attributes.find(({ name }) => name === key)?.values ?? [];
  return [
    {
      start,
      until: /["'\s}]|$/,
      offers: inOrder(values.map((name) => ({ ...ingredientOffer(name), about: { what: "directive", name: row.name } }))),
    },
  ];
}

/** The recipes that pour what the label names come first. */
function holding(asked: Asked, label: string, start: number): Pick<Group, "offers" | "isLong"> {
  const row = directiveRows.find(({ name }) => name === "see")!;
  const { offers, isLong } = recipesNamed(asked, row, start);
  const pours = (name: string) => {
    const recipe = recipeNamed(asked, name);
    return recipe !== undefined && pouredBy(asked, recipe).some((one) => one.toLowerCase() === label.trim().toLowerCase());
  };
  return { isLong: isLong ?? false, offers: offers.map((offer) => (pours(offer.label) ? { ...offer, near: near.first } : offer)) };
}

function recipeNamed({ house, scope }: Asked, name: string): Entry | undefined {
  return (["drink", "ingredient"] as const)
    .flatMap((nameClass) => house.find(scope, nameClass, name)?.entry ?? [])
    .find(({ kind }) => kind === "drink" || kind === "prep");
}

function pouredBy({ house }: Asked, recipe: Entry): string[] {
  const pours = recipe.kind === "drink" ? assessDrink(house, recipe).flat.pours : prepPours(house, recipe);
  return [...new Set(pours.map(({ ingredient }) => ingredient.resolution.text))];
}

function ingredientOffer(name: string): Offer {
  return { label: name, kind: CompletionItemKind.Value, near: near.usual, about: { what: "ingredient", name } };
}
