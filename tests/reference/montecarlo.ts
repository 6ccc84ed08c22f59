/** `npm run montecarlo`: more random drinks than a test has time for; prints the table. */
import { parseArgs } from "node:util";
import { coverageOf } from "./coverage.ts";
import { coverageTable, fewestDraws } from "./coverage-page.ts";

const { values } = parseArgs({
  options: {
    drinks: { type: "string", default: "10000" },
    draws: { type: "string", default: "20" },
    seed: { type: "string", default: "1" },
  },
});
const [drinks, draws] = [Number(values.drinks), Number(values.draws)];
if (!(drinks * draws >= fewestDraws))
  throw new Error(`Fewer than ${fewestDraws} draws in all say nothing: ask for more drinks or more draws.`);
console.log(coverageTable(coverageOf(drinks, draws, Number(values.seed))));
