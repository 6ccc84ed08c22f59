/** `mutchkin check --fix`: what can be put right without asking, put right in the files. */
import { fileURLToPath } from "node:url";
import { toTextEdits } from "../features/edits.ts";
import { fixAll } from "../features/fix-all.ts";
import type { SpecDocument } from "../house/document.ts";
import type { Finding } from "../house/finding.ts";
import { readHouseFile } from "../house/house-files.ts";
import { showList } from "../house/show.ts";
import { findingsOf } from "../rules/run.ts";
import type { Session } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { edited, writeText } from "./write-text.ts";

/** A fix may bring out what another one is for; two that undo each other must come to an end. */
const mostGoes = 10;

export interface Fixed {
  /** The session's documents as they are now. */
  readonly documents: readonly SpecDocument[];
  /** What was put right, a sentence for each file. */
  readonly notes: readonly string[];
}

/** Writes each file once, when nothing is left to be fixed in any. Throws a `UsageError` for a file that cannot be written. */
export function fixFiles(session: Session, { files }: Terminal): Fixed {
  const { house, pathOf } = session;
  const before = new Map<string, string[]>();
  const texts = new Map<string, string>();
  let documents = session.documents;
  for (let go = 0; go < mostGoes; go++) {
    let changed = false;
    documents = documents.map((document, index) => {
      if (go === 0) session.progress(index, documents.length);
      const findings = findingsIn(session, document);
      const fix = fixAll(house, document, findings);
      if (!fix) return document;
      const { uri } = document;
      const path = fileURLToPath(uri);
      const text = edited(texts.get(uri) ?? files.read(path), session, document, toTextEdits(house, document, fix));
      const after = readHouseFile(path, text, document.margins !== undefined);
      if (!after) return document;
      if (!before.has(uri)) before.set(uri, codesOf(findings));
      texts.set(uri, text);
      changed = true;
      house.setDocument({ uri, version: null, ...after });
      // The house keeps the entries that did not change: its own text is the one to ask about.
      return house.document(uri) ?? document;
    });
    if (!changed) break;
  }
  for (const [uri, text] of texts) writeText(files, fileURLToPath(uri), pathOf(uri), text);
  const notes = documents
    .filter(({ uri }) => texts.has(uri))
    .map((document) => noteOf(pathOf(document.uri), before.get(document.uri) ?? [], codesOf(findingsIn(session, document))));
  return { documents, notes };
}

function findingsIn({ house, rules, report }: Session, { tree }: SpecDocument): Finding[] {
  return tree.entries.flatMap((entry) => [...findingsOf(house, entry, rules, report)]);
}

function codesOf(findings: readonly Finding[]): string[] {
  return findings.map(({ code }) => code);
}

function noteOf(file: string, before: readonly string[], after: readonly string[]): string {
  const countIn = (codes: readonly string[], code: string) => codes.filter((one) => one === code).length;
  const fixed = [...new Set(before)].flatMap((code) => {
    const count = countIn(before, code) - countIn(after, code);
    return count > 1 ? [`${code} (${count})`] : count > 0 ? [code] : [];
  });
  return `Put right in ${file}${fixed.length > 0 ? `: ${showList(fixed, fixed.length)}` : ""}.`;
}
