/** How cold a pour is, as a word that another pour can carry. */
import type { Ingredient } from "../../house/ingredient.ts";
import { temperatureIn } from "../../house/modifiers.ts";

const places: Readonly<Record<string, string>> = { freezer: "frozen", fridge: "chilled", hot: "hot" };

/** What the pour says, else where its stock stands; empty for what is as warm as the room. */
export function temperatureWord({ resolution, facts }: Ingredient): string {
  const said = resolution.modifiers.find(isTemperature);
  return said?.text.toLowerCase() ?? places[facts?.stored ?? ""] ?? "";
}

export function isTemperature(modifier: Ingredient["resolution"]["modifiers"][number]): boolean {
  return Object.values(places).includes(modifier.text.toLowerCase()) || temperatureIn([modifier]) !== undefined;
}
