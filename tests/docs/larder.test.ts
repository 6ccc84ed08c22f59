import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { larderPage } from "../../server/reports/larder-page.ts";
import { houseOf } from "../house/make.ts";

const page = "server/larder/README.md";

test("the larder's page lists what is in it (`npm run docs` prints it)", () =>
  expect(larderPage(readFileSync(page, "utf8"), houseOf(""))).toMatchFileSnapshot(`../../${page}`));
