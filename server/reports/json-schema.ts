/** The reports' shapes as JSON Schema (draft 2020-12), for whoever reads them with another program. */
import { z } from "zod";
import { adjustSchema } from "./adjust-schema.ts";
import { assessSchema } from "./assess-schema.ts";
import { checkSchema } from "./check-schema.ts";
import { outSchema } from "./out-schema.ts";
import type { ReportName } from "./report-names.ts";

export function jsonSchemaOf(report: ReportName): object {
  return z.toJSONSchema(schemas[report]);
}

const schemas = { assess: assessSchema, check: checkSchema, adjust: adjustSchema, out: outSchema } satisfies Record<ReportName, z.ZodType>;
