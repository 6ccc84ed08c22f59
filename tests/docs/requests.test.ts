import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { requests } from "../../server/lsp/requests.ts";
import { requestsPage } from "../../server/reports/requests-page.ts";

const page = "server/lsp/README.md";

test("the server's page lists the requests that are registered (`npm run docs` prints it)", () =>
  expect(requestsPage(readFileSync(page, "utf8"), requests)).toMatchFileSnapshot(`../../${page}`));
