/** Units in a text: the very next whole word, or two (`fl oz`), in any case and with a point or none behind. */
import { skipSpace } from "./characters.ts";
import { type Unit, units } from "./units.ts";
import { wordEnd } from "./words.ts";

export interface UnitWord {
  readonly unit: Unit;
  /** As it stands in the text. */
  readonly written: string;
  readonly end: number;
}

/** The unit that starts here. */
export function findUnitAt(text: string, at: number, end: number): UnitWord | undefined {
  if (at >= end) return undefined;
  const last = text.charCodeAt(at) === percent ? at + 1 : wordEnd(text, at, Math.min(end, at + longest));
  if (last === at || (last === at + longest && last < end)) return undefined;
  const written = text.slice(at, last);
  const spelling = spellings.get(written) ?? findFolded(written);
  if (!spelling) return undefined;
  const two = spelling.opens ? findSecondWord(text, spelling.written, at, last, end) : undefined;
  if (two) return two;
  // The table's own string, so that thousands of lines hold one.
  return spelling.unit && { unit: spelling.unit, written: written === spelling.written ? spelling.written : written, end: last };
}

const percent = 37;

interface Spelling {
  readonly written: string;
  readonly unit: Unit | undefined;
  /** Whether a unit of two words starts so. */
  readonly opens: boolean;
}

const spellings = new Map<string, Spelling>();
let longest = 0;
for (const unit of units) {
  for (const spelling of [unit.id, ...unit.also]) {
    for (const written of [spelling, spelling.toLowerCase()]) {
      spellings.set(written, { written, unit, opens: spellings.get(written)?.opens ?? false });
      const gap = written.indexOf(" ");
      const first = gap > 0 ? written.slice(0, gap) : "";
      if (first) spellings.set(first, { written: first, unit: spellings.get(first)?.unit, opens: true });
    }
    longest = Math.max(longest, spelling.length + 2);
  }
}

/** Any case, and a closing point. */
function findFolded(written: string): Spelling | undefined {
  const folded = written.toLowerCase();
  return spellings.get(folded.endsWith(".") ? folded.slice(0, -1) : folded);
}

function findSecondWord(text: string, first: string, at: number, firstEnd: number, end: number): UnitWord | undefined {
  const start = skipSpace(text, firstEnd, Math.min(end, at + longest));
  const last = wordEnd(text, start, Math.min(end, start + longest));
  if (start === firstEnd || last === start) return undefined;
  const unit = findFolded(`${first} ${text.slice(start, last)}`)?.unit;
  return unit && { unit, written: text.slice(at, last), end: last };
}
