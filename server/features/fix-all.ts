/** Every safe fix of a text in one: those after which a drink is the same drink. What two fixes would both change, the first has. */
import type { SpecDocument } from "../house/document.ts";
import type { Edit, Finding, Fix } from "../house/finding.ts";
import type { House } from "../house/house.ts";

/** Absent where nothing can be put right without asking. What a fix leaves to be found is for the next time. */
export function fixAll(house: House, document: SpecDocument, findings: readonly Finding[]): Fix | undefined {
  const edits: Edit[] = [];
  for (const finding of findings) {
    const fix = finding.fixes?.().find(({ safe }) => safe);
    const own = fix?.edits.filter((edit): edit is Edit => "entry" in edit && house.findDocumentOf(edit.entry) === document) ?? [];
    const isWhole = fix !== undefined && own.length > 0 && own.length === fix.edits.length;
    if (isWhole && !own.some((edit) => edits.some((other) => touches(edit, other)))) edits.push(...own);
  }
  return edits.length > 0 ? { title: "Put right all that is safe", safe: true, edits } : undefined;
}

/** Two insertions at one place touch, too: their order would be chance. An end behind a line takes its line break. */
function touches(one: Edit, other: Edit): boolean {
  return one.entry === other.entry && one.line === other.line && one.start <= other.end && other.start <= one.end;
}
