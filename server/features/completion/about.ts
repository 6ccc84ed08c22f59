/** What an item is about: sent along with it, and handed back when the editor wants its documentation. */

/** What the name names. */
export type What =
  | "entry word"
  | "field"
  | "word"
  | "unit"
  | "modifier"
  | "glass word"
  | "technique"
  | "step"
  | "country"
  | "currency"
  | "choice"
  | "rule"
  | "severity"
  | "temperature"
  | "written"
  | "ingredient"
  | "drink"
  | "family"
  | "glass"
  | "ice"
  | "menu"
  | "book"
  | "directive";

export interface About {
  readonly what: What;
  readonly name: string;
  /** What the name alone does not tell: the field that a word stands in, the kind of entry. */
  readonly of?: string;
}

export interface Data extends About {
  readonly uri: string;
}

/** Reads what a client hands back; absent where it is none of ours. */
export function readData(data: unknown): Data | undefined {
  const { uri, what, name, of } = (data ?? {}) as Partial<Record<keyof Data, unknown>>;
  if (typeof uri !== "string" || typeof what !== "string" || typeof name !== "string") return undefined;
  return { uri, what: what as What, name, ...(typeof of === "string" && { of }) };
}
