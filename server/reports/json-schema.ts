/** The reports' shapes as JSON Schema (draft 2020-12), for whoever reads them with another program. */
import { z } from "zod";
import { assessSchema } from "./assess-schema.ts";
import { checkSchema } from "./check-schema.ts";
import type { ReportName } from "./report-names.ts";

export function jsonSchemaOf(report: ReportName): object {
  return z.toJSONSchema(report === "assess" ? assessSchema : checkSchema);
}
