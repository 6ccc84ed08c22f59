/** What every table of published figures is made of. */

export interface Check {
  readonly what: string;
  readonly unit: string;
  /** As published. */
  readonly reference: number;
  readonly ours: number;
  /** How far ours may be from it. */
  readonly within: number;
}

export interface Table {
  readonly title: string;
  /** Where the figures were published, and what has to be known to read them. */
  readonly source: string;
  readonly checks: readonly Check[];
}

/** Rows of the same kind: each gives what it is, the published figure, and ours. */
export function checks<Row extends readonly unknown[]>(
  unit: string,
  within: number,
  rows: readonly Row[],
  read: (row: Row) => readonly [what: string, reference: number, ours: number],
): Check[] {
  return rows.map((row) => {
    const [what, reference, ours] = read(row);
    return { what, unit, reference, ours, within };
  });
}
