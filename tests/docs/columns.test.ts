import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { columnsPage } from "../../server/reports/columns-page.ts";

const page = "server/cli/README.md";

test("the command line's page lists the columns that are written and read (`npm run docs` prints it)", () =>
  expect(columnsPage(readFileSync(page, "utf8"))).toMatchFileSnapshot(`../../${page}`));
