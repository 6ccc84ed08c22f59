import type { Contact } from "../engine/plan.ts";
import { showFigure, showNumber, showWeight } from "./show.ts";

/** `15 kJ from the drink + 1.2 kJ from the vessel = 16.2 kJ; ÷ 334 J/g = 48.5 g melted of 150 g of ice`. */
export function heatBalance({ iceG, meltG, fromDrinkJ, fromVesselJ, meltingJ, restOfIceJ }: Contact): string {
  if (iceG === 0) return "no ice, so nothing melts";
  if (!(meltG > 0)) return `what is in the vessel is so cold that nothing melts of ${showWeight(iceG)} of ice`;
  const given = [
    [fromDrinkJ, "the drink"],
    [fromVesselJ, "the vessel"],
    [-restOfIceJ, "the rest of the ice"],
  ] as const;
  const terms = given.filter(([joules]) => joules > leastJ).map(([joules, from]) => `${kilojoules(joules)} from ${from}`);
  const taken = given.filter(([joules]) => joules < -leastJ).map(([joules, into]) => `${kilojoules(-joules)} into ${into}`);
  const sum = `${terms.join(" + ")}${taken.map((term) => ` − ${term}`).join("")} = ${kilojoules(meltingJ)}`;
  return `${sum}; ÷ ${showNumber(meltingJ / meltG)} J/g = ${showWeight(meltG)} melted of ${showWeight(iceG)} of ice`;
}

/** Less is not worth a term. */
const leastJ = 50;

function kilojoules(joules: number): string {
  return showFigure(joules / 1000, "kJ", 1);
}
