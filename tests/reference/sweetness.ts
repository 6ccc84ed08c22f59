/** Relative sweetness. */

import { sugars } from "../../server/engine/substances.ts";
import type { Table } from "./checks.ts";

const ranges = [
  ["glucose", 0.5, 0.8],
  ["fructose", 1.2, 1.8],
  ["lactose", 0.15, 0.4],
  ["maltose", 0.3, 0.5],
  ["invert", 1, 1.3],
] as const;

export const sweetnessTables: readonly Table[] = [
  {
    title: "Relative sweetness, sucrose = 1",
    source:
      "Middles and half-widths of the union of: Public Health Nutr. 2022;26:952 table 2; J. Food Sci. Technol. 2011;51:611 table 2; Sweeteners: Nutritional Aspects, Applications and Production Technology, table 2.1; a dictionary of food and nutrition.",
    checks: ranges.map(([sugar, low, high]) => ({
      what: `${sugar}: ${low} to ${high}`,
      unit: "",
      reference: (low + high) / 2,
      ours: sugars[sugar].sweetness.value,
      within: (high - low) / 2,
    })),
  },
];
