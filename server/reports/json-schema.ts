/** The reports' shapes as JSON Schema (draft 2020-12), for whoever reads them with another program. */
import { z } from "zod";
import { adjustSchema } from "./adjust-schema.ts";
import { assessSchema } from "./assess-schema.ts";
import { batchSchema } from "./batch-schema.ts";
import { cardSchema } from "./card-schema.ts";
import { checkSchema } from "./check-schema.ts";
import { costSchema } from "./cost-schema.ts";
import { diffSchema } from "./diff-schema.ts";
import { importSchema } from "./import-schema.ts";
import { outSchema } from "./out-schema.ts";
import { prepSchema } from "./prep-schema.ts";
import type { ReportName } from "./report-names.ts";

export function jsonSchemaOf(report: ReportName): object {
  return z.toJSONSchema(schemas[report]);
}

const schemas = {
  assess: assessSchema,
  check: checkSchema,
  adjust: adjustSchema,
  batch: batchSchema,
  out: outSchema,
  diff: diffSchema,
  cost: costSchema,
  prep: prepSchema,
  card: cardSchema,
  import: importSchema,
} satisfies Record<ReportName, z.ZodType>;
