import { expect, test } from "vitest";
import type { WorkspaceEdit } from "vscode-languageserver-types";
import { layOut, start } from "./start.ts";

test("a folder without a house gets one that works, and a folder with one is told so", async () => {
  const disk = layOut({ "taken/house.drink": "house The Slip\n" });
  const client = await start({ folders: [disk.folder()] });
  const folder = disk.folder("bar").uri;
  const { countries } = await client.request<{ countries: { country: string }[] }>("mutchkin/newHouseChoices", { folder });
  expect(countries.map(({ country }) => country)).toContain("GB");
  const asked = { folder, name: "The Halyard Room", country: "GB" };
  const { edit, open } = await client.request<{ edit: WorkspaceEdit; open: { uri: string } }>("mutchkin/newHouse", asked);
  for (const change of edit.documentChanges!) {
    if (!("edits" in change)) continue;
    const [first] = change.edits as { newText: string }[];
    await client.open(change.textDocument.uri, first!.newText);
  }
  expect((await client.diagnosticsOf(open.uri)).diagnostics).toEqual([]);
  const taken = { ...asked, folder: disk.folder("taken").uri };
  expect(await client.request("mutchkin/newHouse", taken)).toEqual({ problem: expect.stringContaining("line 1 of house.drink") });
});
