/** What is answered beyond the protocol: for commands that ask a person something in between. One row each. */
import { type Range, RequestType, type TextDocumentIdentifier, type TextDocumentPositionParams } from "vscode-languageserver";
import { URI, Utils } from "vscode-uri";
import { targetsAt, type WayChoice, waysAt } from "../features/adjust.ts";
import { batchAt } from "../features/batch.ts";
import { toWorkspaceEdit } from "../features/edits.ts";
import { countryChoices, type NewHouse, newHouse, whyNoHouse } from "../features/new-house.ts";
import { conversionsOf } from "../features/quick-fixes.ts";
import { refactoringNamed } from "../features/refactorings/all.ts";
import { scaleAt } from "../features/refactorings/scale.ts";
import { showServes } from "../house/show-batch.ts";
import { batchReport } from "../reports/batch.ts";
import { batchText } from "../reports/batch-text.ts";
import { plainLook } from "../reports/sheet.ts";
import { createsFiles, editOf } from "./code-actions.ts";
import { ofHouse, ofText, type RequestRow } from "./request.ts";
import { canonical } from "./workspace.ts";

/** A target by its `id`, as typed, and the pour that it is to be met by where one was named. */
interface AdjustParams extends TextDocumentPositionParams {
  readonly target: string;
  readonly value: string;
  readonly pour?: string;
}

/** A number of serves or a volume, as typed. */
interface ScaleParams extends TextDocumentPositionParams {
  readonly to: string;
}

/** How much is to be mixed, as typed, and the day that it is where the person sits. */
interface BatchParams extends TextDocumentPositionParams {
  readonly to: string;
  readonly made: string;
}

interface ConvertParams {
  readonly textDocument: TextDocumentIdentifier;
  readonly range: Range;
}

interface RefactorParams extends ConvertParams {
  readonly name: string;
}

export const ownRequests: readonly RequestRow[] = [
  ofText(new RequestType<RefactorParams, unknown, void>("mutchkin/refactor"), {
    does: "our own: what a refactoring of a `name` can do at a `range` or for the whole entry there, as `choices` with a `title` and an `edit`; else a `problem`",
    empty: null,
    answer: ({ house, document, params: { range, name }, spelling, client }) => {
      const offers = refactoringNamed(house, document, range, name, createsFiles(client()));
      if ("because" in offers) return { choices: [], problem: offers.because };
      const choices = offers.map((offer) => ({ title: offer.title, made: editOf(house, offer, spelling) }));
      const refused = choices.flatMap(({ made }) => ("because" in made ? [made.because] : []));
      const done = choices.flatMap(({ title, made }) => ("because" in made ? [] : [{ title, edit: made }]));
      return { choices: done, ...(done.length === 0 && { problem: refused[0] }) };
    },
  }),
  ofText(new RequestType<ConvertParams, unknown, void>("mutchkin/convert"), {
    does: "our own: the conversions of a drink, a prep or a file at a `range`, as `choices` with a `title` and an `edit`; else a `problem`",
    empty: null,
    answer: ({ house, document, params: { range }, spelling }) => {
      const choices = conversionsOf(house, document, range).flatMap((fix) => {
        const edit = toWorkspaceEdit(house, fix, spelling);
        return edit ? [{ title: fix.title, edit }] : [];
      });
      return {
        choices,
        ...(choices.length === 0 && { problem: "Put the cursor in a drink or a prep with amounts that can be written otherwise." }),
      };
    },
  }),
  ofText(new RequestType<ScaleParams, unknown, void>("mutchkin/scale"), {
    does: "our own: the edit that scales the drink or the prep at a `position` to what is typed (`8`, `700 ml`), with its `title`; else a `problem`",
    empty: null,
    answer: ({ house, document, params: { position, to }, spelling }) => {
      const scaled = scaleAt(house, document, position.line, to);
      return "problem" in scaled ? scaled : { title: scaled.title, edit: toWorkspaceEdit(house, scaled, spelling) };
    },
  }),
  ofText(new RequestType<BatchParams, unknown, void>("mutchkin/batch"), {
    does: "our own: the drink at a `position` mixed ahead for what is typed (`40`, `5 l`, `700 ml bottle`) on the day `made`, as a `text` to show with its `title`; else a `problem`",
    empty: null,
    answer: ({ house, document, params: { position, to, made } }) => {
      const batch = batchAt(house, document, position.line, to, { made });
      if ("problem" in batch) return batch;
      const report = batchReport(house, batch, (uri) => Utils.basename(URI.parse(uri)));
      return { title: `${report.name}, ${showServes(report.serves)}`, text: batchText(report, batch.settings, plainLook) };
    },
  }),
  ofText(new RequestType<TextDocumentPositionParams, unknown, void>("mutchkin/adjustTargets"), {
    does: "our own: what the drink or the prep at a `position` can be brought to, as choices to show",
    empty: null,
    answer: ({ house, document, params }) => targetsAt(house, document, params.position) ?? null,
  }),
  ofText(new RequestType<AdjustParams, unknown, void>("mutchkin/adjustWays"), {
    does: "our own: the ways to a `target`, a choice's `id`, by the `value` typed and the `pour` named, if any: each in words with its edit",
    empty: null,
    answer: ({ house, document, params: { position, target, value, pour }, spelling }) => {
      const { ways, problem } = waysAt(house, document, position, target, value, pour);
      const edit = ({ fix, ...way }: WayChoice) => ({ ...way, ...(fix && { edit: toWorkspaceEdit(house, fix, spelling) }) });
      return { ways: ways.map(edit), ...(problem && { problem }) };
    },
  }),
  ofHouse(new RequestType<{ folder: string }, unknown, void>("mutchkin/newHouseChoices"), {
    does: "our own: the `countries` that a new house in a `folder` can be in; a `problem` where it cannot have one",
    empty: null,
    answer: ({ house, params }) => {
      const refusal = whyNoHouse(house, folderIn(params));
      return { countries: countryChoices(), ...(refusal && { problem: refusal.because }) };
    },
  }),
  ofHouse(new RequestType<NewHouse, unknown, void>("mutchkin/newHouse"), {
    does: "our own: the `edit` that writes a small working house of a `name` in a `country` into a `folder`, and the place to `open`; else a `problem`",
    empty: null,
    answer: ({ house, params }) => {
      const written = newHouse(house, { ...params, folder: folderIn(params) });
      return "because" in written ? { problem: written.because } : written;
    },
  }),
];

function folderIn({ folder }: { folder: string }): string {
  return canonical(folder).replace(/\/$/, "");
}
