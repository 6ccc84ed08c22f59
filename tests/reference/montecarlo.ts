/** `npm run montecarlo`: more random drinks than a test has time for; prints the table. */
import { parseArgs } from "node:util";
import { coverageOf } from "./coverage.ts";
import { coverageTable } from "./coverage-page.ts";

const { values } = parseArgs({
  options: {
    drinks: { type: "string", default: "10000" },
    draws: { type: "string", default: "20" },
    seed: { type: "string", default: "1" },
  },
});
console.log(coverageTable(coverageOf(Number(values.drinks), Number(values.draws), Number(values.seed))));
