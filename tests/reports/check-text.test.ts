import { expect, test } from "vitest";
import type { CheckReport, FindingReport } from "../../server/reports/check-schema.ts";
import { checkText } from "../../server/reports/check-text.ts";
import { plainLook } from "../../server/reports/sheet.ts";

const finding = (changed: Partial<FindingReport>): FindingReport => ({
  file: "bar.drink",
  line: 12,
  column: 3,
  endColumn: 9,
  code: "unbalanced",
  severity: "warning",
  message: "This is too sweet for “sour”: sweetness is 25 ± 1 times the acid, where 4 to 13 is usual.",
  todo: "30 ml sugar syrup in place of 67.5 ml puts it right.",
  docs: "server/rules/README.md#unbalanced",
  ...changed,
});

const report: CheckReport = {
  findings: [
    finding({ severity: "error", code: "syntax", line: 2, message: "Nothing is named here.", todo: "Name it." }),
    finding({}),
    finding({ file: "cards/long.drink", severity: "hint", code: "no-garnish", message: "No garnish is named.", todo: "" }),
  ],
  summary: { files: 3, errors: 1, warnings: 1, information: 0, hints: 1 },
};

test("findings by file, whole lines for a pipe, read by eye", () => {
  expect(checkText(report, { ...plainLook, width: Number.POSITIVE_INFINITY })).toMatchInlineSnapshot(`
    "bar.drink:2:3  error  Nothing is named here. [syntax]
        Name it.
    bar.drink:12:3  warning  This is too sweet for “sour”: sweetness is 25 ± 1 times the acid, where 4 to 13 is usual. [unbalanced]
        30 ml sugar syrup in place of 67.5 ml puts it right.

    cards/long.drink:12:3  hint  No garnish is named. [no-garnish]

    3 files checked: 1 error, 1 warning, 1 hint.
    "
  `);
});

test("broken for a narrow terminal, read by eye", () => {
  expect(checkText(report, { ...plainLook, width: 60 })).toMatchInlineSnapshot(`
    "bar.drink:2:3  error  Nothing is named here. [syntax]
        Name it.
    bar.drink:12:3  warning  This is too sweet for “sour”:
        sweetness is 25 ± 1 times the acid, where 4 to 13 is
        usual. [unbalanced]
        30 ml sugar syrup in place of 67.5 ml puts it right.

    cards/long.drink:12:3  hint  No garnish is named.
        [no-garnish]

    3 files checked: 1 error, 1 warning, 1 hint.
    "
  `);
});

test("nothing found in one file, in several", () => {
  const summary = { files: 1, errors: 0, warnings: 0, information: 0, hints: 0 };
  expect(checkText({ findings: [], summary }, plainLook)).toBe("1 file checked: nothing found.\n");
  expect(checkText({ findings: [], summary: { ...summary, files: 12 } }, plainLook)).toBe("12 files checked: nothing found.\n");
});
