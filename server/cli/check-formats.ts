/** The forms that `mutchkin check` prints in. */
import { version } from "../../package.json";
import { type Checked, reportOf } from "../reports/check.ts";
import { checkCheckstyle } from "../reports/check-checkstyle.ts";
import { checkGithub } from "../reports/check-github.ts";
import { checkJunit } from "../reports/check-junit.ts";
import { checkSarif } from "../reports/check-sarif.ts";
import { checkText } from "../reports/check-text.ts";
import { rules } from "../rules/all.ts";
import type { Terminal } from "./terminal.ts";

export const checkFormatNames = ["text", "json", "sarif", "github", "junit", "checkstyle"] as const;
export type CheckFormat = (typeof checkFormatNames)[number];

interface Printing {
  readonly terminal: Pick<Terminal, "watched" | "look">;
  /** Every file could be read, and every rule ran. */
  readonly complete: boolean;
}

/** Each ends in a line break. */
export const checkFormats: Readonly<Record<CheckFormat, (checked: Checked, printing: Printing) => string>> = {
  text: (checked, { terminal: { watched, look } }) =>
    checkText(reportOf(checked), watched ? look : { ...look, width: Number.POSITIVE_INFINITY }),
  json: (checked) => `${JSON.stringify(reportOf(checked), null, 2)}\n`,
  sarif: (checked, { complete }) => checkSarif(checked, { rules, version, complete }),
  github: checkGithub,
  junit: checkJunit,
  checkstyle: checkCheckstyle,
};
