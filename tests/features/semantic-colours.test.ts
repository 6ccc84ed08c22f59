/** That the themes which come with VS Code tell apart what the house tells apart: bought, made here, the larder's, drinks, unknown. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { nameTypes, tokenModifiers } from "../../server/features/semantic-tokens.ts";

interface Contribution {
  readonly language: string;
  readonly scopes: Readonly<Record<string, readonly string[]>>;
}
const { contributes } = JSON.parse(readFileSync("package.json", "utf8")) as { contributes: { semanticTokenScopes: Contribution[] } };
const [{ scopes }] = contributes.semanticTokenScopes as [Contribution];

type Theme = Readonly<Record<string, string>>;

// Of the `tokenColors` in VS Code 1.91 `extensions/theme-defaults/themes`, those that the scopes above can meet.
const darkVs: Theme = {
  string: "#ce9178",
  "constant.language": "#569cd6",
  "entity.other.attribute-name": "#9cdcfe",
  "markup.inserted": "#b5cea8",
};
const darkPlus: Theme = {
  ...darkVs,
  variable: "#9CDCFE",
  "entity.name.function": "#DCDCAA",
  "entity.name.type": "#4EC9B0",
  "entity.name.label": "#C8C8C8",
};
const lightVs: Theme = {
  string: "#a31515",
  "constant.language": "#0000ff",
  "entity.other.attribute-name": "#e50000",
  "markup.inserted": "#098658",
};
const lightPlus: Theme = {
  ...lightVs,
  variable: "#001080",
  "entity.name.function": "#795E26",
  "entity.name.type": "#267f99",
  "entity.name.label": "#000000",
};
const highContrast: Theme = {
  string: "#ce9178",
  variable: "#9CDCFE",
  "constant.language": "#569cd6",
  "entity.name.function": "#DCDCAA",
  "entity.name.type": "#4EC9B0",
  "markup.inserted": "#b5cea8",
};
const highContrastLight: Theme = {
  string: "#0F4A85",
  variable: "#001080",
  "constant.language": "#0F4A85",
  "entity.name.function": "#5e2cbc",
  "entity.name.type": "#185E73",
  "entity.name.label": "#000000",
  "markup.inserted": "#096d48",
};
const themes = { darkVs, darkPlus, lightVs, lightPlus, highContrast, highContrastLight };

/** As the editor does: the first scope that the theme has a rule for, by the rule's dotted beginning; else the plain text's. */
function colourOf(theme: Theme, selector: string): string {
  const rules = Object.keys(theme);
  for (const scope of scopes[selector]!) {
    const [rule] = rules.filter((one) => scope === one || scope.startsWith(`${one}.`)).sort((one, other) => other.length - one.length);
    if (rule) return theme[rule]!;
  }
  return "plain";
}

test.each(Object.entries(themes))("%s shows five different things", (_, theme) => {
  const colours = ["variable", "function", "variable.defaultLibrary", "class", "string"].map((selector) => colourOf(theme, selector));
  expect(new Set(colours).size, colours.join(" ")).toBe(5);
});

test.each(Object.entries(themes))("%s shows no family, glass, ice or menu that is declared like one that is not", (_, theme) => {
  for (const selector of ["interface", "struct", "namespace"]) expect(colourOf(theme, selector)).not.toBe(colourOf(theme, "string"));
});

test("every kind of token that is sent has its scopes, and no other", () => {
  const [types, modifiers] = [nameTypes, tokenModifiers as readonly string[]]; // the rest is the grammar's in VS Code
  expect(
    Object.keys(scopes)
      .filter((selector) => !selector.includes("."))
      .sort(),
  ).toEqual([...types].sort());
  for (const selector of Object.keys(scopes)) {
    const [type, ...more] = selector.split(".");
    expect(types).toContain(type);
    expect(more.every((one) => modifiers.includes(one))).toBe(true);
  }
});
