/** The reports whose shape is published. */
export const reportNames = ["assess", "check"] as const;
export type ReportName = (typeof reportNames)[number];
