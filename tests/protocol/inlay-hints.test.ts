import { expect, test } from "vitest";
import type { InlayHint } from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const uri = nowhere("card.drink");
const asked = { textDocument: { uri }, range: { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } } };

test("hints of what is switched on, and their tooltips when asked for", async () => {
  const client = await start();
  await client.open(uri, "drink Slip\n  part: 30 ml\n  2 parts gin\n  5 ml lemon juice\n");
  const hints = await client.request<InlayHint[]>("textDocument/inlayHint", asked);
  expect(hints.map(({ label }) => label)).toEqual([expect.stringMatching(/% vol · \d+ ml/), "= 60 ml"]);
  const resolved = await client.request<InlayHint>("inlayHint/resolve", hints[1]!);
  expect(resolved).toEqual({ ...hints[1], tooltip: { kind: "markdown", value: "By `part: 30 ml`." } });

  await client.configure(() => ({ units: "oz", inlayHints: { figures: false, parts: true, otherUnits: true } }));
  await expect
    .poll(async () => (await client.request<InlayHint[]>("textDocument/inlayHint", asked)).map(({ label }) => label))
    .toEqual(["= 2.03 oz", "0.169 oz"]);
});
