/** Refactorings on fixtures: one `<>` is the cursor, two are the ends of a selection. */
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Range } from "vscode-languageserver-types";
import { print } from "../../../grammar/print.ts";
import { read } from "../../../grammar/read.ts";
import { toTextEdits } from "../../../server/features/edits.ts";
import { type OfferedRefactoring, refactoringsAt } from "../../../server/features/refactorings/all.ts";
import type { SpecDocument } from "../../../server/house/document.ts";
import type { Fix } from "../../../server/house/finding.ts";
import type { House } from "../../../server/house/house.ts";
import { entryNamed, houseOf, root } from "../../house/make.ts";

export interface Offered {
  readonly house: House;
  readonly document: SpecDocument;
  readonly offers: readonly OfferedRefactoring[];
}

export function offered(text: string, createsFiles = true): Offered {
  const { range, file, plain } = takeMarks(text);
  const house = houseOf(plain);
  const document = house.document(`${root}/${file}`)!;
  return { house, document, offers: refactoringsAt(house, document, range, createsFiles) };
}

/** With the cursor on the head of the entry of that name. */
export function offeredOn(house: House, name: string): Offered {
  const entry = entryNamed(house, name);
  const document = house.getDocumentOf(entry);
  const head = { line: house.getLineOf(entry), character: 0 };
  return { house, document, offers: refactoringsAt(house, document, { start: head, end: head }, true) };
}

export function titles(text: string): string[] {
  return offered(text).offers.map(({ title }) => title);
}

/** The one whose title starts so, as the change that it makes; a refusal fails the test. */
export function chosen({ house, document, offers }: Offered, title: string): { house: House; document: SpecDocument; fix: Fix } {
  const offer = offers.find((one) => one.title.startsWith(title));
  if (!offer) throw new Error(`“${title}” is not offered, but: ${offers.map((one) => one.title).join("; ")}`);
  const edits = offer.edits();
  if ("because" in edits) throw new Error(edits.because);
  return { house, document, fix: { title: offer.title, safe: false, edits } };
}

/** Why it cannot be done after all. */
export function refusal(text: string, title: string): string {
  const edits = offered(text)
    .offers.find((one) => one.title.startsWith(title))
    ?.edits();
  if (!edits || !("because" in edits)) throw new Error(`“${title}” is not refused`);
  return edits.because;
}

/** The file with the cursor after it. */
export function apply(text: string, title: string): string {
  const { house, document, fix } = chosen(offered(text), title);
  return textAfter(house, document, fix);
}

/** The house after it, with the new files that it makes. */
export function houseAfter({ house, fix }: { house: House; fix: Fix }): House {
  const after = house.supposing([]);
  for (const document of house.documents()) {
    const text = textAfter(house, document, fix);
    if (text !== print(document.tree)) after.setDocument({ ...document, tree: read(text) });
  }
  for (const edit of fix.edits) if ("uri" in edit) after.setDocument({ uri: edit.uri, version: null, tree: read(edit.text) });
  return after;
}

/** The text of a file after a change. */
export function textAfter(house: House, document: SpecDocument, fix: Fix): string {
  return TextDocument.applyEdits(TextDocument.create(document.uri, "mutchkin", 0, print(document.tree)), toTextEdits(house, document, fix));
}

function takeMarks(text: string): { range: Range; file: string; plain: string } {
  const marks: { line: number; character: number }[] = [];
  let [file, found, line] = ["spec.drink", "spec.drink", -1];
  for (const one of text.split("\n")) {
    const start = /^=== (\S+)$/.exec(one);
    if (start) [file, line] = [start[1]!, -1];
    else line++;
    for (let rest = one; rest.includes("<>"); rest = rest.replace("<>", "")) {
      marks.push({ line, character: rest.indexOf("<>") });
      found = file;
    }
  }
  const [start, end = start] = marks;
  if (!start || !end) throw new Error("the fixture has no cursor");
  return { range: { start, end }, file: found, plain: text.replaceAll("<>", "") };
}
