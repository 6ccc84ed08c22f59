/** Above an empty text, what it could start with. The frames themselves are the editor's snippets. */
import type { CodeLens } from "vscode-languageserver-types";
import type { SpecDocument } from "../house/document.ts";
import { rangeOnLine } from "./place.ts";

/** What an editor runs to put in one of its snippets by name: of its own, since no request of the protocol does it. */
export const insertFrame = "mutchkin.insertFrame";

/** As the editor's snippets are called. */
const frames = {
  "start with a drink": "Drink",
  "with a house": "House",
  "with a prep": "Prep",
  "with a menu": "Menu",
  "with a book": "Book",
};

export function firstSteps({ tree, margins }: SpecDocument): CodeLens[] {
  const isEmpty = !margins && tree.entries.every(({ lines }) => lines.every(({ content }) => content.kind === "blank"));
  if (!isEmpty) return [];
  const range = rangeOnLine(0, { start: 0, end: 0 });
  return Object.entries(frames).map(([title, name]) => ({ range, command: { title, command: insertFrame, arguments: [name] } }));
}
