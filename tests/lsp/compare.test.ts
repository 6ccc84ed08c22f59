/** Comparing where no program can be run, as in a browser. */
import { expect, onTestFinished, test } from "vitest";
import { environmentOf, startHere } from "./in-process.ts";

test("without git it says plainly why there is nothing to compare with, and hints beside an earlier text are there", async () => {
  const uri = "vault://bar/card.drink";
  const now = "drink Slip\n  glass: none\n  method: none\n  50 ml rum\n  50 ml water\n";
  const { client, stop } = await startHere(
    environmentOf(new Map([[uri, now]]), () => 1),
    ["vault://bar"],
  );
  onTestFinished(stop);
  const textDocument = { uri };
  const problem = expect.stringContaining("cannot be run in a browser");
  expect(await client.sendRequest("mutchkin/revisions", { textDocument, of: "branches" })).toEqual({ problem });
  expect(await client.sendRequest("mutchkin/compare", { textDocument, revision: "main" })).toEqual({ problem });
  expect(await client.sendRequest("mutchkin/pastText", { uri, commit: "0".repeat(40) })).toEqual({ problem });
  const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
  const hints = await client.sendRequest("mutchkin/changeHints", { textDocument, range, before: now.replace("50 ml rum", "40 ml rum") });
  expect(hints).toEqual([
    expect.objectContaining({ position: { line: 0, character: 10 }, label: expect.stringMatching(/^strength .* → .* % vol/) }),
  ]);
});
