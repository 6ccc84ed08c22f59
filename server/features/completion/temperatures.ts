/** Behind `at`: the places of the house that have a temperature, as degrees. */
import { CompletionItemKind } from "vscode-languageserver-types";
import { type Settings, settingsOf } from "../../house/settings.ts";
import { type Asked, type Group, listEnd, near } from "./offer.ts";

/** The places of a house with a temperature of their own. One row each. */
export const places = [
  { setting: "freezerC", place: "freezer", word: "frozen" },
  { setting: "fridgeC", place: "fridge", word: "chilled" },
  { setting: "ambientC", place: "back bar", word: "" },
  { setting: "hotC", place: "hot", word: "hot" },
] as const satisfies readonly { setting: keyof Settings; place: string; word: string }[];

/** Where `at` was typed at the column, or further on behind it; else absent. */
export function temperaturesAt(asked: Asked, from: number): Group | undefined {
  const at = /(?:^|\s)at\s+([-−]?[\d.]*\s*[°\w]*)$/i.exec(asked.before.slice(from));
  if (!at) return undefined;
  const settings = settingsOf(asked.house, asked.scope);
  const offers = places.map(({ setting }, index) => {
    const label = `${Number(settings[setting].value.toFixed(1))} C`;
    return {
      label,
      kind: CompletionItemKind.Value,
      near: near.usual,
      used: places.length - index,
      about: { what: "temperature", name: setting },
    } as const;
  });
  return { start: asked.before.length - at[1]!.length, until: listEnd, offers };
}
