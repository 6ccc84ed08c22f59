/** The reports whose shape is published. */
export const reportNames = ["assess", "check", "adjust", "batch", "out", "diff", "cost", "prep", "card", "import"] as const;
export type ReportName = (typeof reportNames)[number];
