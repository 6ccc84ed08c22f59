import { expect, test } from "vitest";
import manifest from "../../package.json";
import { defaultEditorSettings, readSettings, settingsSchema } from "../../server/lsp/settings.ts";

test("what is right is taken and what is missing has its default", () => {
  expect(readSettings(undefined)).toEqual({ settings: defaultEditorSettings, wrong: [] });
  expect(readSettings({ units: "oz" }).settings).toEqual({ ...defaultEditorSettings, units: "oz" });
});

test("a wrong setting falls back alone and is named with what was given and what is allowed", () => {
  const { settings, wrong } = readSettings({ units: "gill", maxFindings: 12, severity: { unbalanced: "loud", curdling: "off" } });
  expect(settings).toEqual({ ...defaultEditorSettings, units: "house", maxFindings: 12, severity: { curdling: "off" } });
  expect(wrong).toHaveLength(2);
  expect(wrong.join("\n")).toMatch(/mutchkin\.units” is "gill".*ml, cl or oz/);
  expect(wrong.join("\n")).toMatch(/“unbalanced” the level "loud".*hint/);
});

test("each hint is switched by itself", () => {
  const { settings, wrong } = readSettings({ inlayHints: { figures: false, otherUnits: "yes" } });
  expect(settings.inlayHints).toEqual({ figures: false, otherUnits: false, parts: true, changes: true });
  expect(wrong).toEqual([
    'The setting “mutchkin.inlayHints.otherUnits” is "yes", which is not allowed: it takes true or false. The default goes on being used.',
  ]);
});

test.each([
  null,
  3,
  { inlayHints: 3 },
  { inlayHints: null },
  { inlayHints: { figures: 3 } },
  "x",
  [],
  { severity: 3 },
  { maxFindings: 0 },
  { maxFindings: 2.5 },
])("%j is survived", (given) => {
  expect(settingsSchema.safeParse(readSettings(given).settings).success).toBe(true);
});

test("the manifest offers the same settings with the same defaults", () => {
  const offered = Object.entries(manifest.contributes.configuration.properties).filter(([name]) => !name.startsWith("mutchkin.trace"));
  const { inlayHints, ...plain } = defaultEditorSettings;
  const switches = Object.entries(inlayHints).map(([name, value]) => [`inlayHints.${name}`, value]);
  expect(Object.fromEntries(offered.map(([name, { default: value }]) => [name.replace("mutchkin.", ""), value]))).toEqual({
    ...plain,
    ...Object.fromEntries(switches),
  });
});
