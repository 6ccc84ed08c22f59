import { expect, test } from "vitest";
import { textMateGrammar } from "../../grammar/textmate.ts";
import { markdownInjection } from "../../grammar/textmate-markdown.ts";

test("the printed grammar is the one that the tables make (`npm run docs` prints it)", () =>
  expect(`${JSON.stringify(textMateGrammar(), null, 2)}\n`).toMatchFileSnapshot("../../grammar/mutchkin.tmLanguage.json"));

test("and so is the one that colours specs inside Markdown", () =>
  expect(`${JSON.stringify(markdownInjection(), null, 2)}\n`).toMatchFileSnapshot("../../grammar/mutchkin-in-markdown.tmLanguage.json"));
