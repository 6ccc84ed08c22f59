/** What a guest has to be able to take, as labelled lines: somebody can be hurt, so they come first. */
import { showList } from "../house/show.ts";
import { showDiets, showSources } from "../house/suitability-text.ts";
import type { DrinkReport } from "./assess-schema.ts";

export function suitsLines({ serve, allergens, diets }: DrinkReport): [label: string, text: string][] {
  const { contains, notStated } = allergens;
  const silent = notStated.length > 0 ? [`not stated for ${showList(notStated, 6)}`] : [];
  const brought =
    contains.length > 0
      ? [showSources(contains, serve.counted.country)]
      : silent.length > 0
        ? []
        : ["none, by all that is stated or assumed"];
  const decided = showDiets(diets);
  const open = diets.filter(({ suits }) => suits === null).map(({ diet }) => diet);
  return [
    ["Allergens", [...brought, ...silent].join("; ")],
    [
      "Diets",
      decided.length === 0 ? "not stated" : [...decided, ...(open.length > 0 ? [`not stated: ${open.join(", ")}`] : [])].join("; "),
    ],
  ];
}
