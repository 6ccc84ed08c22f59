/** Completion for tests: a text with `<>` at the cursor, what is offered there and what the text is after one is taken. */
import { TextDocument } from "vscode-languageserver-textdocument";
import { type CompletionItem, InsertReplaceEdit, type TextEdit } from "vscode-languageserver-types";
import { print } from "../../grammar/print.ts";
import type { CompletionOptions } from "../../server/features/completion/offer.ts";
import { completion, resolveCompletion } from "../../server/features/completion.ts";
import { type Fixture, fixtureOf } from "./cursor.ts";

const today = "2026-11-28";

/** As an editor sorts them while no letter tells more. */
export function itemsAt({ house, document, position }: Fixture, options: CompletionOptions = {}): CompletionItem[] {
  const { items } = completion(house, document, position, { today, ...options });
  return [...items].sort((one, other) => (one.sortText! < other.sortText! ? -1 : 1));
}

export function labelsAt(text: string): string[] {
  return itemsAt(fixtureOf(text)).map(({ label }) => label);
}

/** The edit that an editor makes of an item. */
export function editOf({ textEdit }: CompletionItem, how: "insert" | "replace" = "replace"): TextEdit {
  const edit = textEdit!;
  return InsertReplaceEdit.is(edit) ? { newText: edit.newText, range: edit[how] } : edit;
}

/** The line with the cursor after an item is taken. */
export function take(text: string, label: string, options?: CompletionOptions, how?: "insert" | "replace"): string {
  const { position } = fixtureOf(text);
  return linesAfter(text, label, options, how)[position.line]!;
}

export function linesAfter(text: string, label: string, options?: CompletionOptions, how?: "insert" | "replace"): string[] {
  const fixture = fixtureOf(text);
  const item = itemsAt(fixture, options).find((one) => one.label === label);
  if (!item) throw new Error(`“${label}” is not offered`);
  const file = TextDocument.create(fixture.document.uri, "mutchkin", 0, print(fixture.document.tree));
  return TextDocument.applyEdits(file, [editOf(item, how)]).split(/\r?\n/);
}

/** What an item says of itself once it is asked for. */
export function saysAt(text: string, label: string): { detail: string; text: string } {
  const fixture = fixtureOf(text);
  const item = itemsAt(fixture).find((one) => one.label === label);
  if (!item) throw new Error(`“${label}” is not offered`);
  // Through JSON and back, as it comes from a client.
  const { detail = "", documentation } = resolveCompletion(fixture.house, JSON.parse(JSON.stringify(item)) as CompletionItem);
  return { detail, text: typeof documentation === "object" ? documentation.value : "" };
}
