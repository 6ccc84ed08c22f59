import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { rulesPage } from "../../server/reports/rules-page.ts";
import { rules } from "../../server/rules/all.ts";

const page = "server/rules/README.md";

test("the rules' page says what the rules say (`npm run docs` prints it)", () =>
  expect(rulesPage(readFileSync(page, "utf8"), rules)).toMatchFileSnapshot(`../../${page}`));
