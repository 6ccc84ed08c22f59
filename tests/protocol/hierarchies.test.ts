/** The hierarchies and the signature help as an editor asks for them, also of a block that is nested in Markdown. */
import { expect, test } from "vitest";
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  Range,
  SignatureHelp,
  TypeHierarchyItem,
} from "vscode-languageserver-types";
import { nowhere, start } from "./start.ts";

const [card, chapter] = [nowhere("card.drink"), nowhere("chapter.md")];

const specs = [
  "stock harbour rum", //           0
  "  abv: 40 %", //                 1
  "prep rum syrup", //              2
  "  100 g harbour rum", //         3
  "drink Slip", //                  4
  "  60 ml harbour rum", //         5
  "menu Winter", //                 6
  "  - Rope 9", //                  7
  "",
].join("\n");

/** A spec nested in a list in a quote: each line's margin is four columns wide. */
const text = [
  "# Slack Water", //               0
  "", //                            1
  "> - ```drink", //                2
  ">   drink Rope", //              3
  ">     from: Slip", //            4
  ">     10 ml harbour rum", //     5
  ">     20 ml rum syrup", //       6
  ">     glass: coupe, ", //        7
  ">   ```", //                     8
  "",
].join("\n");

async function open() {
  const client = await start();
  await client.open(card, specs);
  await client.open(chapter, text, 1, "markdown");
  const ask = <T>(method: string, uri: string, line: number, character: number) =>
    client.request<T>(method, { textDocument: { uri }, position: { line, character } });
  return { client, ask };
}

const place = ({ start, end }: Range) => `${start.line}:${start.character}-${end.line}:${end.character}`;

test("a drink's type, upwards and downwards, between a spec file and a chapter", async () => {
  const { client, ask } = await open();
  const [slip] = await ask<TypeHierarchyItem[]>("textDocument/prepareTypeHierarchy", chapter, 4, 13);
  expect(slip).toMatchObject({ name: "Slip", uri: card });
  expect([place(slip!.range), place(slip!.selectionRange)]).toEqual(["4:0-5:19", "4:6-4:10"]);
  const [rope] = await client.request<TypeHierarchyItem[]>("typeHierarchy/subtypes", { item: slip });
  expect(rope).toMatchObject({ name: "Rope", uri: chapter });
  expect([place(rope!.range), place(rope!.selectionRange)]).toEqual(["3:4-7:20", "3:10-3:14"]);
  const above = await client.request<TypeHierarchyItem[]>("typeHierarchy/supertypes", { item: rope });
  expect(above.map(({ name, uri }) => [name, uri])).toEqual([["Slip", card]]);
});

test("calls stand where they are written, the caller's in its text and the asked one's in its own", async () => {
  const { client, ask } = await open();
  const [rum] = await ask<CallHierarchyItem[]>("textDocument/prepareCallHierarchy", chapter, 5, 14);
  expect(rum).toMatchObject({ name: "harbour rum", uri: card });
  const callers = await client.request<CallHierarchyIncomingCall[]>("callHierarchy/incomingCalls", { item: rum });
  expect(callers.map(({ from, fromRanges }) => [from.name, from.uri, place(from.selectionRange), ...fromRanges.map(place)])).toEqual([
    ["rum syrup", card, "2:5-2:14", "3:8-3:19"],
    ["Slip", card, "4:6-4:10", "5:8-5:19"],
    ["Rope", chapter, "3:10-3:14", "5:12-5:23"],
  ]);
  const rope = callers[2]!.from;
  const called = await client.request<CallHierarchyOutgoingCall[]>("callHierarchy/outgoingCalls", { item: rope });
  expect(called.map(({ to, fromRanges }) => [to.name, to.uri, place(to.selectionRange), ...fromRanges.map(place)])).toEqual([
    ["harbour rum", card, "0:6-0:17", "5:12-5:23"],
    ["rum syrup", card, "2:5-2:14", "6:12-6:21"],
  ]);
  const listed = await client.request<CallHierarchyIncomingCall[]>("callHierarchy/incomingCalls", { item: rope });
  expect(listed.map(({ from, fromRanges }) => [from.name, from.uri, ...fromRanges.map(place)])).toEqual([["Winter", card, "7:4-7:8"]]);
});

test("an item whose entry has gone since answers nothing, and one that moved is found", async () => {
  const { client, ask } = await open();
  const [rope] = await ask<CallHierarchyItem[]>("textDocument/prepareCallHierarchy", chapter, 3, 12);
  const top = { line: 0, character: 0 };
  await client.change(chapter, 2, [{ range: { start: top, end: top }, text: "More.\n\n" }]);
  const called = await client.request<CallHierarchyOutgoingCall[]>("callHierarchy/outgoingCalls", { item: rope });
  expect(called.map(({ fromRanges }) => fromRanges.map(place))).toEqual([["7:12-7:23"], ["8:12-8:21"]]);
  await client.change(chapter, 3, [{ text: "Nothing left.\n" }]);
  expect(await client.request("callHierarchy/outgoingCalls", { item: rope })).toBeNull();
});

test("the form of a field's value, with the part that the cursor is in; nothing in the prose around a block", async () => {
  const { client, ask } = await open();
  expect(client.capabilities().signatureHelpProvider?.triggerCharacters).toBeUndefined();
  const help = await ask<SignatureHelp>("textDocument/signatureHelp", chapter, 7, 20);
  expect(help.signatures[0]!.label).toBe("glass: GLASS, HOW");
  expect(help.activeParameter).toBe(1);
  expect(await ask("textDocument/signatureHelp", chapter, 0, 8)).toBeNull();
});
