/** What is off tonight, as a list for the pass: menu by menu, what is off before what falls back. */
import { showMissing } from "../house/out.ts";
import { showCount } from "../house/show.ts";
import type { OutDrink, OutReport } from "./out-schema.ts";
import { type Look, labelled, readable } from "./sheet.ts";

export function outText({ drinks, summary }: OutReport, look: Look): string {
  const { off, fallBack } = summary;
  const counts = [off > 0 && `${off} off`, fallBack > 0 && `${fallBack} with something to fall back on`].filter(Boolean);
  const title = look.strong(`${showCount(summary.drinks, "drink")}: ${counts.join(", ") || "nothing is out that one of them needs"}.`);
  const menus = [...new Set(drinks.flatMap(({ menus: names }) => names))];
  const groups = menus.map((menu): [string, OutDrink[]] => [menu, drinks.filter((drink) => drink.menus.includes(menu))]);
  const others = drinks.filter((drink) => drink.menus.length === 0);
  if (others.length > 0) groups.push([menus.length > 0 ? "On no menu" : "", others]);
  const parts = groups.map(([heading, of]) => {
    const lines = [...of.filter(isOff), ...of.filter((drink) => !isOff(drink))].map((drink) => lineOf(drink, look));
    return [...(heading ? [look.faint(readable(heading))] : []), ...lines].join("\n");
  });
  return `${[title, ...parts].join("\n\n")}\n`;
}

function isOff({ state }: OutDrink): boolean {
  return state === "off";
}

function lineOf(drink: OutDrink, look: Look): string {
  const lacks = drink.missing.map((one) => `${showMissing(one)}${one.instead ? `: ${one.instead} instead` : ""}`);
  return labelled(drink.state === "off" ? "Off" : "Falls back", `${drink.name}: ${lacks.join("; ")}`, look);
}
