/** A riff's lines: what its parent pours, as far as no other line of the riff has taken it out. */
import { CompletionItemKind } from "vscode-languageserver-types";
import { readLine } from "../../../grammar/line.ts";
import type { Pour } from "../../../grammar/tree.ts";
import { findFieldIn } from "../../house/entry.ts";
import { ingredientOf } from "../../house/ingredient.ts";
import { fold } from "../../house/names.ts";
import { type FlatPour, flatten, sameIngredient, sameQuantity } from "../../house/riff.ts";
import type { Declaration } from "../../house/scope.ts";
import { writtenName } from "../../house/write.ts";
import { quantityText } from "../../house/written.ts";
import type { NearOf } from "./names.ts";
import { type Asked, blank, type Group, lineEnd, near, type Offer } from "./offer.ts";
import { inPour } from "./pours.ts";
import { wordStart } from "./values.ts";

/** Behind `without`, and behind `without all`. */
export function inWithout(asked: Asked, start: number, all: boolean): Group[] {
  const left = leftIn(asked);
  const offers = all ? named(left.filter((one) => twinsOf(one, left) > 1)) : left.map((one) => offerOf(one, left, ""));
  const several = left.some((one) => twinsOf(one, left) > 1);
  const word: Offer = {
    label: "all",
    text: "all ",
    kind: CompletionItemKind.Keyword,
    near: near.word,
    about: { what: "word", name: "all" },
  };
  return [{ start, until: lineEnd, offers }, ...(several && !all ? [{ start, until: blank, offers: [word] }] : [])];
}

/** Behind `swap`: what goes out, then what comes in. */
export function inSwap(asked: Asked, into: Pour | undefined): Group[] {
  const { before, behind } = asked;
  const start = wordStart(before, /^\s*\S+/.exec(before)![0].length);
  const parted = partedAt(before, start);
  if (parted !== undefined) return inPour(asked, into, likeFirst(asked, before.slice(start, parted)));
  const left = leftIn(asked);
  const after = behindFor.test(behind) ? "" : " for ";
  return [{ start, until: behindFor, offers: left.map((one) => offerOf(one, left, after)) }];
}
const behindFor = /\sfor(?:\s|$)/i;

/** Where the ` for ` ends that the cursor is behind; in quotation marks it is part of a name. */
function partedAt(before: string, start: number): number | undefined {
  let quoted = false;
  for (let at = start; at < before.length; at++) {
    if (/["“”]/.test(before[at]!)) quoted = !quoted;
    const word = quoted || at === start ? null : /^\sfor\s/i.exec(before.slice(at, at + 5));
    if (word) return at + word[0].length;
  }
  return undefined;
}

/** What is of the same kind as what goes out is likelier to come in. */
function likeFirst(asked: Asked, out: string): NearOf {
  const { house, scope } = asked;
  const { content } = readLine(`  without ${out.replace(/\sfor\s*$/i, "")}`);
  const name = content.kind === "without" ? content.pour?.name : undefined;
  const wanted = name && kindOf(asked, house.resolve(scope, ["ingredient"], name).found);
  return ({ nameClass, alias, name: other }) => {
    if (name && fold(other) === fold(name.text)) return near.last;
    if (wanted === undefined || nameClass !== "ingredient" || alias) return undefined;
    return kindOf(asked, house.lookup(scope, "ingredient", other)[0]) === wanted ? near.likely : undefined;
  };
}

/** What a stock is, by the nearest entry of its name that says so. */
function kindOf({ house, scope }: Asked, declared: Declaration | undefined): string | undefined {
  if (declared?.entry.kind !== "stock") return declared?.entry.kind;
  const named = house.lookup(scope, "ingredient", declared.entry.name?.text ?? "");
  return named.flatMap(({ entry }) => findFieldIn(entry, "kind")?.field.value?.text.toLowerCase() ?? [])[0];
}

/** The flattened parent's pours without those that the riff's other lines swap or take out. */
function leftIn({ house, scope, entry, line }: Asked): readonly FlatPour[] {
  const parent = entry.kind === "drink" ? flatten(house, entry).parent : undefined;
  let left = [...(parent?.pours ?? [])];
  for (const [number, { content }] of entry.lines.entries()) {
    if (number === line) continue;
    const all = content.kind === "without" && content.all !== undefined;
    for (const out of content.kind === "without" ? [content.pour] : content.kind === "swap" ? content.readings.map((one) => one.out) : []) {
      if (!out?.name) continue;
      const meant = ingredientOf(house, scope, out.name);
      const same = left.filter((one) => sameIngredient(one, meant));
      const gone = out.quantity && same.length > 1 ? same.filter((one) => sameQuantity(one.quantity, out.quantity!)) : same;
      if (gone.length === 1 || all) left = left.filter((one) => !gone.includes(one));
    }
  }
  return left;
}

function twinsOf({ ingredient }: FlatPour, pours: readonly FlatPour[]): number {
  return pours.filter((one) => sameIngredient(one, ingredient)).length;
}

/** One of two pours of the same thing is told apart by its amount. */
function offerOf(pour: FlatPour, left: readonly FlatPour[], after: string): Offer {
  const { text } = pour.ingredient.resolution;
  const isTwin = twinsOf(pour, left) > 1 && pour.quantity;
  const label = isTwin ? `${quantityText(pour.quantity!)} ${writtenName(text)}` : writtenName(text);
  return {
    label,
    ...(after && { text: label + after }),
    kind: CompletionItemKind.Value,
    near: near.usual,
    used: left.length - left.indexOf(pour),
    about: { what: pour.ingredient.resolution.found?.nameClass === "drink" ? "drink" : "ingredient", name: text },
  };
}

function named(pours: readonly FlatPour[]): Offer[] {
  const offers = new Map<string, Offer>();
  for (const pour of pours) offers.set(fold(pour.ingredient.resolution.text), offerOf(pour, [pour], ""));
  return [...offers.values()];
}
