/** The reports whose shape is published. */
export const reportNames = ["assess", "check", "adjust", "out"] as const;
export type ReportName = (typeof reportNames)[number];
