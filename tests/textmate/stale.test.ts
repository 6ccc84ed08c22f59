import { expect, test } from "vitest";
import { textMateGrammar } from "../../grammar/textmate.ts";

test("the printed grammar is the one that the tables make (`npm run docs` prints it)", () =>
  expect(`${JSON.stringify(textMateGrammar(), null, 2)}\n`).toMatchFileSnapshot("../../grammar/mutchkin.tmLanguage.json"));
