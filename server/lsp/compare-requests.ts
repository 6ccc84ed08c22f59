/** What is answered about how the house once was. It takes long: it goes on in turns, says how far it is, and stops when it is told to. */
import type { Position, ProgressToken, Range, TextDocumentIdentifier } from "vscode-languageserver";
import { URI, Utils } from "vscode-uri";
import type { Entry } from "../../grammar/tree.ts";
import { changeHints } from "../features/change-hints.ts";
import { inward } from "../features/margins.ts";
import type { Houses } from "../house/compare/pair.ts";
import { compareAhead, movedAhead } from "../house/compare/touched.ts";
import { entryAt, folderOf } from "../house/document.ts";
import { diff } from "../reports/diff.ts";
import { diffRows } from "../reports/diff-rows.ts";
import type { NoRevision, RevisionKind } from "./environment.ts";
import { type Asked, longRequest } from "./long-request.ts";
import { pastHouse } from "./past.ts";
import { type RequestRow, told } from "./request.ts";
import { canonical, type Workspace } from "./workspace.ts";

interface RevisionsParams {
  readonly textDocument: TextDocumentIdentifier;
  readonly of: RevisionKind;
}

/** What is of the menu at the position comes first, or of that of a name in the same text; else the whole house is asked about. */
interface CompareParams {
  readonly textDocument: TextDocumentIdentifier;
  readonly position?: Position;
  readonly menu?: string;
  readonly revision: string;
  readonly workDoneToken?: ProgressToken;
}

interface PastTextParams {
  readonly uri: string;
  readonly commit: string;
}

/** `before` is the text beside which this one is shown; absent when it is no longer. */
interface ChangeHintsParams {
  readonly textDocument: TextDocumentIdentifier;
  readonly range: Range;
  readonly before?: string;
}

const noGit: NoRevision = {
  problem: "Comparing with a revision needs the git program, which cannot be run in a browser. Open the folder in a desktop editor for it.",
};

export const compareRequests: readonly RequestRow[] = [
  longRequest<RevisionsParams>("mutchkin/revisions", {
    does: "our own: the `branches`, `tags` or last `commits` of a text's repository, each a `name` with its `date` and `subject`; else a `problem`",
    empty: { problem: "The revisions could not be listed; the output says why." },
    async answer({ textDocument, of }, { workspace, revisions, stop }) {
      const found = revisions ? await revisions.list(folderFor(workspace, textDocument.uri), of, stop) : noGit;
      return "problem" in found ? found : { revisions: found };
    },
  }),
  longRequest<CompareParams>("mutchkin/compare", {
    does: "our own: the house as it is, unsaved texts and all, beside a `revision`, as `sections` of rows with their places, what is of the `menu` of a name or at a `position` first; else a `problem`",
    empty: { problem: "The comparison failed; the output says why." },
    answer: comparison,
  }),
  longRequest<PastTextParams>("mutchkin/pastText", {
    does: "our own: the `text` of a file in a commit, by its `uri` and the `commit` that a comparison names; else a `problem`",
    empty: { problem: "The text could not be read; the output says why." },
    answer: ({ uri, commit }, { revisions, stop }) => Promise.resolve(revisions ? revisions.textAt(uri, commit, stop) : noGit),
  }),
  longRequest<ChangeHintsParams>("mutchkin/changeHints", {
    does: "our own: inlay hints that say what each change does, for a text that is shown beside an earlier one, `before`",
    empty: [],
    answer: hintsBeside,
  }),
];

async function comparison(params: CompareParams, asked: Asked): Promise<object> {
  const { workspace, revisions, stop, say, turns, spelling } = asked;
  const { textDocument, revision } = params;
  if (!revisions) return noGit;
  say(`Reading ${revision}`);
  const past = await revisions.textsAt(folderFor(workspace, textDocument.uri), revision, stop);
  if ("problem" in past) return past;
  const turn = turns();
  const goOn = async () => {
    await turn();
    return !stop.aborted;
  };
  const before = await pastHouse(workspace, past, goOn);
  if (!before) return stopped;
  const houses = { before, after: workspace.house };
  if (!(await ahead(houses, asked))) return stopped;
  const report = diff(houses, { before: revision, after: "now", pathOf: (one) => one, wanted: () => true });
  const menu = menuOf(workspace, params);
  const rows = diffRows(houses, report, (one) => Utils.basename(URI.parse(one)), menu);
  return { ...asSpelt(rows, spelling), commit: past.commit, ...(menu?.name && { menu: menu.name.text }) };
}

function menuOf(workspace: Workspace, { textDocument: { uri }, position, menu }: CompareParams): Entry | undefined {
  const document = workspace.document(uri);
  const entry = position && document ? entryAt(document, position.line)?.entry : undefined;
  return entry?.kind === "menu"
    ? entry
    : document?.tree.entries.find(({ kind, name }) => kind === "menu" && menu !== undefined && name?.text === menu);
}

/** A text that was never saved is asked about as one of the folder that is open. */
function folderFor({ roots }: Workspace, uri: string): string {
  return uri.startsWith("untitled:") ? (roots[0] ?? uri) : folderOf(uri);
}

const stopped: NoRevision = { problem: "The comparison was stopped." };

/** Computes what a comparison needs; answers whether it came to the end. */
async function ahead(houses: Houses, { turns, stop, say }: Asked): Promise<boolean> {
  const turn = turns();
  for (const { done, all } of compareAhead(houses)) {
    if (await turn()) say(`Comparing ${done} of ${all} drinks`);
    if (stop.aborted) return false;
  }
  return true;
}

/** The places of rows as the client names the texts. */
function asSpelt<T>(value: T, spelling: (uri: string) => string): T {
  return JSON.parse(JSON.stringify(value), (key, one) => (key === "uri" && typeof one === "string" ? spelling(one) : one));
}

async function hintsBeside({ textDocument: { uri }, range, before: text }: ChangeHintsParams, asked: Asked): Promise<unknown> {
  const { workspace, earlier, settingsFor } = asked;
  if (!settingsFor(canonical(uri)).inlayHints.changes) return [];
  const house = () => {
    const document = workspace.document(uri);
    return document && text !== undefined ? { document, before: earlier.of(workspace, document, text) } : undefined;
  };
  const first = house();
  if (!first) earlier.forget(canonical(uri));
  const moved = first && (await movedIn({ before: first.before, after: workspace.house }, asked));
  // The texts may have changed in the meantime.
  const last = house();
  const inside = last?.document.margins ? inward({ range }, last.document.margins) : { range };
  if (!moved || !last || !inside) return [];
  const houses = { before: last.before, after: workspace.house };
  const still = moved.filter((entry) => workspace.house.findDocumentOf(entry));
  return told(changeHints(houses, last.document, inside.range, still), last.document, asked);
}

/** The drinks that moved, found in turns; absent where nobody waits for it any more. */
async function movedIn(houses: Houses, asked: Asked): Promise<Entry[] | undefined> {
  if (!(await ahead(houses, asked))) return undefined;
  const turn = asked.turns();
  const moved: Entry[] = [];
  for (const entry of movedAhead(houses)) {
    if (entry) moved.push(entry);
    await turn();
    if (asked.stop.aborted) return undefined;
  }
  return moved;
}
