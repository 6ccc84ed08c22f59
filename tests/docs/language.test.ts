import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { languagePage } from "../../server/reports/language-page.ts";

const page = "grammar/README.md";

test("the language's page lists what the tables list (`npm run docs` prints it)", () =>
  expect(languagePage(readFileSync(page, "utf8"))).toMatchFileSnapshot(`../../${page}`));
