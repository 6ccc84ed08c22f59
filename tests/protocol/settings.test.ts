import { expect, test } from "vitest";
import { DiagnosticSeverity, type PublishDiagnosticsParams } from "vscode-languageserver/node";
import { has, lacks } from "./findings.ts";
import { layOut, nowhere, start } from "./start.ts";

const uri = nowhere("card.drink");
const lamp = "drink Lantern\n  50 ml lamp oil\n";
/** Answers the extension's section whole, whatever the scope. */
const all = (mutchkin: object) => (section?: string) => (section === "mutchkin" ? mutchkin : null);

test("a severity from the editor's settings is used", async () => {
  const client = await start({ settings: all({ severity: { "unknown-ingredient": "hint" } }) });
  await client.open(uri, lamp);
  const { diagnostics } = await client.diagnosticsOf(uri, 1);
  expect(diagnostics.find(({ code }) => code === "unknown-ingredient")?.severity).toBe(DiagnosticSeverity.Hint);
});

test("a changed severity takes effect at once, and back again", async () => {
  const client = await start({ settings: all({}) });
  await client.open(uri, lamp);
  await client.diagnosticsOf(uri, has("unknown-ingredient"));
  await client.configure(all({ severity: { "unknown-ingredient": "off" } }));
  await client.diagnosticsOf(uri, lacks("unknown-ingredient"));
  await client.configure(all({}));
  await client.diagnosticsOf(uri, has("unknown-ingredient"));
});

test("a changed severity makes a pulling client ask again", async () => {
  const client = await start({ pull: true, settings: all({}) });
  await client.open(uri, lamp);
  const first = await client.pull(uri);
  const asked = client.refreshed();
  await client.configure(all({ severity: { "unknown-ingredient": "off" } }));
  await asked;
  const second = await client.pull(uri, first.resultId);
  expect(second.kind === "full" && lacks("unknown-ingredient")({ diagnostics: second.items })).toBe(true);
});

test("a wrong setting is named with what was given and what is allowed, and the default goes on being used", async () => {
  const client = await start({ settings: all({ maxFindings: -3, severity: { "unknown-ingredient": "hint" } }) });
  const { message } = await client.said(/maxFindings/);
  expect(message).toContain("mutchkin.maxFindings");
  expect(message).toContain("-3");
  expect(message).toMatch(/1 to/);
  await client.open(uri, `drink Lantern\n${"  50 ml lamp oil\n".repeat(4)}`);
  const { diagnostics } = await client.diagnosticsOf(uri, 1);
  const unknown = diagnostics.filter(({ code }) => code === "unknown-ingredient");
  // The wrong setting cuts nothing off, and the right one beside it counts.
  expect(unknown.map(({ severity }) => severity)).toEqual([4, 4, 4, 4]);
});

test("one wrong severity does not silence the others", async () => {
  const client = await start({ settings: all({ severity: { syntax: "deafening", "unknown-ingredient": "off" } }) });
  const { message } = await client.said(/deafening/);
  expect(message).toContain("syntax");
  expect(message).toContain("information");
  await client.open(uri, `${lamp}  50 50 50 %% ml\n`);
  expect(lacks("unknown-ingredient")(await client.diagnosticsOf(uri, 1))).toBe(true);
});

test("a wrong setting is told once, not at every change", async () => {
  const client = await start({ settings: all({ maxFindings: "many" }) });
  await client.said(/maxFindings/);
  await client.configure(all({ maxFindings: "many", severity: { "unknown-ingredient": "off" } }));
  await client.open(uri, lamp);
  await client.diagnosticsOf(uri, lacks("unknown-ingredient"));
  expect(client.messages.filter(({ message }) => message.includes("maxFindings"))).toHaveLength(1);
});

test("each folder has its own settings", async () => {
  const house = layOut({ "loud/card.drink": lamp, "quiet/card.drink": lamp });
  const quiet = house.folder("quiet");
  const settings = (_section?: string, scope?: string) => (scope === quiet.uri ? { severity: { "unknown-ingredient": "off" } } : {});
  const client = await start({ folders: [house.folder("loud"), quiet], settings });
  for (const name of ["loud", "quiet"]) await client.open(house.uriOf(`${name}/card.drink`), lamp);
  expect(has("unknown-ingredient")(await client.diagnosticsOf(house.uriOf("loud/card.drink"), 1))).toBe(true);
  expect(lacks("unknown-ingredient")(await client.diagnosticsOf(house.uriOf("quiet/card.drink"), 1))).toBe(true);
});

test("a client that cannot be asked sends its settings along", async () => {
  const client = await start({
    params: { capabilities: {}, initializationOptions: { severity: { "unknown-ingredient": "off" } } },
  });
  await client.open(uri, lamp);
  await client.diagnosticsOf(uri, lacks("unknown-ingredient"));
  await client.configure(() => null, { mutchkin: { severity: {} } });
  await client.diagnosticsOf(uri, has("unknown-ingredient"));
});

test("a house sets a severity for itself, and the editor's counts before it", async () => {
  const text = (level: string) => `house Small\n  severity: unknown-ingredient ${level}\n\n${lamp}`;
  const severityIs = (severity: number) => (push: PublishDiagnosticsParams) =>
    push.diagnostics.some((one) => one.code === "unknown-ingredient" && one.severity === severity);
  const client = await start({ settings: all({}) });
  await client.open(uri, text("hint"));
  await client.diagnosticsOf(uri, severityIs(DiagnosticSeverity.Hint));
  await client.configure(all({ severity: { "unknown-ingredient": "error" } }));
  await client.diagnosticsOf(uri, severityIs(DiagnosticSeverity.Error));
});

test("what a house turns off stays off, whatever the editor's settings say", async () => {
  const client = await start({ settings: all({ severity: { "unknown-ingredient": "error" } }) });
  await client.open(uri, `house Small\n  severity: unknown-ingredient off\n\n${lamp}`);
  expect(lacks("unknown-ingredient")(await client.diagnosticsOf(uri, 1))).toBe(true);
});
