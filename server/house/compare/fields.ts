/** Which fields of an entry say something else than before. */
import { type EntryKind, type Field, fieldsOf } from "../../../grammar/fields.ts";
import { type Entry, isOwnKind } from "../../../grammar/tree.ts";
import { findFieldIn } from "../entry.ts";

export interface FieldCompared {
  readonly name: string;
  /** As written; absent where the field is not there. Of prose nothing but that it is another. */
  readonly before?: string;
  readonly after?: string;
  readonly prose: boolean;
}

/** `textOf` gives a field's value, an inherited one too. */
export function compareFields(
  before: Entry,
  after: Entry,
  valueIn = (entry: Entry, name: string) => findFieldIn(entry, name)?.field.value?.text,
): FieldCompared[] {
  if (!isOwnKind(after.kind)) return [];
  const [one, other] = [proseOf(before), proseOf(after)];
  return fieldsOf(after.kind as EntryKind).flatMap(({ name, shape }: Field): FieldCompared[] => {
    if (shape === "prose") return one.get(name) === other.get(name) ? [] : [{ name, prose: true }];
    const [was, is] = [valueIn(before, name), valueIn(after, name)];
    if (plainly(was) === plainly(is)) return [];
    return [{ name, prose: false, ...(was !== undefined && { before: was }), ...(is !== undefined && { after: is }) }];
  });
}

const plainly = (text: string | undefined) =>
  text
    ?.toLowerCase()
    .replace(/\s+/g, " ")
    .replace(/ ?([;,]) ?/g, "$1");

function proseOf({ lines }: Entry): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  let open = "";
  for (const { content } of lines) {
    if (content.kind === "field") open = content.name.text.toLowerCase();
    const text =
      content.kind === "field"
        ? content.items.length === 0
          ? (content.value?.text ?? "")
          : undefined
        : content.kind === "prose"
          ? content.text
          : undefined;
    if (text !== undefined && open) texts.set(open, `${texts.get(open) ?? ""} ${text}`.trim());
  }
  return texts;
}
