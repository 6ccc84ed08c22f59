import fc from "fast-check";
import { expect, test } from "vitest";
import type { DocumentDiagnosticReport } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Client } from "./client.ts";
import { plain } from "./findings.ts";
import { nowhere, start } from "./start.ts";

const shelf = nowhere("shelf.drink");
const card = nowhere("card.drink");
const shelfText = "stock aged rum\n  kind: spirit\n  abv: 43 %\n\nstock lime juice\n  kind: juice\n  acid: 6 g/100 ml as citric\n";
const cardText = `# Le Café 🍹, e\u0301te\u0301

drink Lantern Sour
  family: sour
  glass: coupe, chilled
  method: shake 12 s; fine strain
  story: Named for the lamp, which
    has not been lit 🪔 since.

  60 ml aged rum, frozen
  1½ oz lime juice
    or 22.5 ml lamp oil
  2 dashes nothing known
drink Low Tide
  from: Lantern Sour
  swap aged rum for 60 ml lime juice
`;

/** What people type and paste, and what they half type. */
const pieces = fc.constantFrom(
  ...' |\n|\r\n|\n\n|\n  |  |:|;|,|#|# allow unknown-ingredient: it is a test|drink |drink Lantern Sour\n|stock |  50 ml aged rum\n|ml|1/2|½|🍹|e\u0301|“|"|from: Low Tide\n|aged rum|q|story:\n|    deeper\n|top |or |swap |without |\u00a0|\t|'.split(
    "|",
  ),
);
const edit = fc.record({ at: fc.nat(), removed: fc.oneof({ weight: 3, arbitrary: fc.nat(3) }, fc.nat(120)), typed: pieces });
/** Notifications, each with one change or several. */
const typing = fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 12 });

test("a text that was typed has the findings of the same text freshly opened", { timeout: 60_000 }, async () => {
  const [typed, fresh] = await Promise.all([start({ pull: true }), start({ pull: true })]);
  for (const client of [typed, fresh]) await client.open(shelf, shelfText);
  await fc.assert(
    fc.asyncProperty(typing, async (notifications) => {
      await typed.open(card, cardText);
      const document = TextDocument.create(card, "mutchkin", 1, cardText);
      for (const [index, edits] of notifications.entries()) {
        const changes = edits.map(({ at, removed, typed: text }) => {
          const length = document.getText().length;
          const offset = at % (length + 1);
          const range = {
            start: document.positionAt(offset),
            end: document.positionAt(Math.min(length, offset + removed)),
          };
          // One change is applied before the next is placed, as the protocol has it.
          TextDocument.update(document, [{ range, text }], index + 2);
          return { range, text };
        });
        await typed.change(card, index + 2, changes);
        // Asking in between makes the server keep what the next edit must then put right.
        if (index % 2 === 0) await typed.pull(card);
      }
      await fresh.open(card, document.getText());
      expect(await findings(typed, card)).toEqual(await findings(fresh, card));
      expect(await findings(typed, shelf)).toEqual(await findings(fresh, shelf));
      await Promise.all([typed.close(card), fresh.close(card)]);
    }),
    { numRuns: 60 },
  );
});

test("a change without a range replaces the whole text", async () => {
  const client = await start({ pull: true });
  await client.open(card, cardText);
  await client.change(card, 2, [{ text: "drink Empty\n  garnish: none\n" }]);
  const replaced = await findings(client, card);
  await client.close(card);
  await client.open(card, "drink Empty\n  garnish: none\n");
  expect(await findings(client, card)).toEqual(replaced);
});

test("a range outside the text is taken as far as it reaches", async () => {
  const client = await start({ pull: true });
  await client.open(card, "drink Lantern\n");
  const end = { line: 99, character: 99 };
  await client.change(card, 2, [{ range: { start: end, end }, text: "  50 ml lamp oil\n" }]);
  expect((await findings(client, card)).join("\n")).toContain("lamp oil");
});

async function findings(client: Client, uri: string): Promise<string[]> {
  const report: DocumentDiagnosticReport = await client.pull(uri);
  return report.kind === "full" ? plain(report.items) : [report.kind];
}
