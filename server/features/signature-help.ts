/**
 * How the value of a field, a step, a pour or a swap is written, with the part that the cursor is in. Nothing
 * where the field's name or the list of words says all there is, and nothing in prose and comments.
 */

import type { Position, SignatureHelp } from "vscode-languageserver-types";
import { findField } from "../../grammar/fields.ts";
import { isOwnKind } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import { type Cursor, cursorAt } from "./place.ts";
import { fieldForm } from "./signatures/fields.ts";
import type { Form } from "./signatures/form.ts";
import { pourForm } from "./signatures/pours.ts";
import { stepForm } from "./signatures/steps.ts";

export function signatureHelp(document: SpecDocument, position: Position): SignatureHelp | null {
  const cursor = cursorAt(document, position);
  if (!cursor || (cursor.text.comment && cursor.column > cursor.text.comment.start)) return null;
  const form = formAt(cursor);
  if (!form) return null;
  const markdown = (value: string) => ({ kind: "markdown" as const, value });
  const parameters = form.parts.map(({ label, doc }) => ({ label, documentation: markdown(doc) }));
  const signature = { label: form.label, documentation: markdown(form.doc), parameters, activeParameter: form.active };
  return { signatures: [signature], activeSignature: 0, activeParameter: form.active };
}

function formAt({ entry, content, text: { text }, column }: Cursor): Form | undefined {
  if (!isOwnKind(entry.kind)) return undefined;
  if (content.kind !== "field") return entry.kind === "drink" || entry.kind === "prep" ? pourForm(content, text, column) : undefined;
  if (column <= text.indexOf(":", content.name.end)) return undefined;
  return findField(content.name.text, entry.kind)?.shape === "steps"
    ? stepForm(content, text, column)
    : fieldForm(content, entry.kind, text, column);
}
