/** What is out tonight, on the drink that lacks it and on what is lacking. */
import type { Entry } from "../../../grammar/tree.ts";
import type { House } from "../../house/house.ts";
import { drinksWithout, isOff, missingIn, outBehind, showMissing } from "../../house/out.ts";
import { showList } from "../../house/show.ts";
import { asText, bold } from "../markdown.ts";

/** On a drink: off tonight, or what it falls back on. Absent where nothing is out. */
export function describeMissing(house: House, drink: Entry): string | undefined {
  const missing = missingIn(house, drink);
  if (missing.length === 0) return undefined;
  const lacks = missing.map(({ out, through, instead }) => {
    const why = showMissing({ out: nameOf(out), ...(through && { through }) });
    return instead ? `${why}: ${instead.ingredient.resolution.text} instead` : why;
  });
  return `${bold(isOff(missing) ? "Off tonight" : "Falls back")}: ${asText(lacks.join("; "))}.`;
}

/** On a stock or a prep: the drinks of the whole house that it takes off tonight, if it is out. */
export function describeOut(house: House, entry: Entry): string | undefined {
  const out = outBehind(house, entry);
  if (!out) return undefined;
  if (out !== entry) return `${bold("Cannot be made")}: ${asText(nameOf(out))} is out.`;
  const { off, fallBack } = drinksWithout(house, entry);
  const takes = [
    off.length > 0 && `it takes ${showList(off.map(nameOf), 8)} off tonight`,
    fallBack.length > 0 && `${showList(fallBack.map(nameOf), 8)} ${fallBack.length > 1 ? "fall" : "falls"} back on something else`,
  ].filter(Boolean);
  return `${bold("Out")}: ${asText(takes.join("; ") || "no drink needs it")}.`;
}

function nameOf(entry: Entry): string {
  return entry.name?.text ?? "something without a name";
}
