/**
 * Between a Markdown file's places and those of the specs inside it. They differ by each line's margin
 * only, what a list or a quote puts before the spec's line; what is in no block is asked about nothing.
 */
import type { Position, Range, TextEdit } from "vscode-languageserver-types";
import type { Margins } from "../../grammar/markdown.ts";

interface Texts {
  document(uri: string): { readonly margins?: Margins } | undefined;
}

interface Places {
  readonly position?: Position;
  readonly positions?: readonly Position[];
  readonly range?: Range;
  readonly context?: { readonly diagnostics?: readonly { readonly range: Range }[] };
}

/**
 * What is asked, with the places that it has in the specs; absent where a place is in no block, unless
 * what is written around the specs is asked about too, `inText`. A range is cut to its blocks.
 */
export function inward<P extends object>(params: P, margins: Margins, inText = false): P | undefined {
  const { position, positions, range, context } = params as Places;
  const asked = [...(position ? [position] : []), ...(positions ?? [])];
  if (!inText && asked.some(({ line }) => typeof margins[line] !== "string")) return undefined;
  const outside = (character: number) => (inText ? 0 : character);
  const shifted = ({ line, character }: Position) => ({
    line,
    character: Math.max(0, character - (margins[line]?.length ?? outside(character))),
  });
  const within = ({ start, end }: Range) => ({ start: shifted(start), end: shifted(end) });
  return {
    ...params,
    ...(position && { position: shifted(position) }),
    ...(positions && { positions: positions.map(shifted) }),
    ...(range && { range: within(range) }),
    ...(context?.diagnostics && {
      context: { ...context, diagnostics: context.diagnostics.map((one) => ({ ...one, range: within(one.range) })) },
    }),
  };
}

/**
 * An answer with the places that it has in the files. The `workspace` knows the margins of a text that
 * the answer names by its URI; what names none is of the text that was asked about, `here`, and the places of
 * an incoming call are of its caller's. Lines that an edit adds get the margin of the line they are added to. `data` comes back to the server and is left as it is.
 */
export function outward<T>(answer: T, here: Margins | undefined, workspace: Texts): T {
  if (Array.isArray(answer)) return answer.map((one) => outward(one, here, workspace)) as T;
  if (typeof answer !== "object" || answer === null) return answer;
  if (isPosition(answer)) return { ...answer, character: answer.character + marginAt(here, answer.line).length };
  const parts = answer as Readonly<Record<string, unknown>>;
  const [text, caller] = [parts.textDocument, parts.from] as ({ uri?: string } | undefined)[];
  const named = parts.uri ?? parts.targetUri ?? text?.uri ?? caller?.uri;
  const margins = typeof named === "string" ? workspace.document(named)?.margins : here;
  const shifted: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(parts)) {
    const inside = key === "originSelectionRange" ? here : margins;
    shifted[key] = key === "data" ? value : outward(value, inside, workspace);
  }
  if (isEdit(parts)) shifted.newText = parts.newText.replaceAll(/\r\n|\r|\n/g, `$&${marginAt(margins, lineOf(parts))}`);
  return shifted as T;
}

/** The margin of a line; behind a block, where its fence closes, that of the block. */
function marginAt(margins: Margins | undefined, line: number): string {
  const own = margins?.[line];
  return (own === undefined ? margins?.[line - 1] : own) ?? "";
}

function isPosition(value: object): value is Position {
  return "line" in value && "character" in value;
}

type AnyEdit = Pick<TextEdit, "newText"> & { readonly range?: Range; readonly insert?: Range };

function isEdit(parts: object): parts is AnyEdit {
  return "newText" in parts && ("range" in parts || "insert" in parts);
}

function lineOf({ range, insert }: AnyEdit): number {
  return (range ?? insert)!.start.line;
}
