/** What could stand at the cursor, judged by the line up to it and what stands behind it. One file in `completion/` for each kind of place. */
import type { CompletionList, Position } from "vscode-languageserver-types";
import { isAtMargin, readLine } from "../../grammar/line.ts";
import { shapeOf } from "../../grammar/lines/field.ts";
import { type Content, isOwnKind } from "../../grammar/tree.ts";
import type { SpecDocument } from "../house/document.ts";
import type { House } from "../house/house.ts";
import { type Usage, usageOf } from "../house/usage.ts";
import { inComment } from "./completion/allowances.ts";
import { bodyStart, entryWordsAt, headNames } from "./completion/body.ts";
import { inText } from "./completion/directives.ts";
import { inField } from "./completion/fields.ts";
import { menuLines, sectionTitles } from "./completion/menu.ts";
import { type Asked, type CompletionOptions, type Group, toList } from "./completion/offer.ts";
import { inPour } from "./completion/pours.ts";
import { inSwap, inWithout } from "./completion/riffs.ts";
import { unitsAt } from "./completion/units.ts";
import { numberAt, wordStart } from "./completion/values.ts";
import { type Cursor, cursorAt } from "./place.ts";

export { documented as resolveCompletion } from "./completion/documentation.ts";

/** Items carry what they are written as; what there is to say about one is `resolveCompletion`'s. */
export function completion(house: House, document: SpecDocument, position: Position, options: CompletionOptions = {}): CompletionList {
  const cursor = cursorAt(document, position);
  // Behind its end a line is not what the tree knows: words around the blocks of a Markdown file.
  const isThere = cursor && position.character <= cursor.text.text.length;
  if (!isThere || cursor.content.kind === "prose" || isInProse(cursor)) return { isIncomplete: false, items: [] };
  const { entry, line, column, text } = cursor;
  const end = text.comment && text.comment.start >= column ? text.comment.start : text.text.length;
  const scope = house.scopeOf(document);
  let counted: Usage | undefined;
  const usage = () => {
    counted ??= usageOf(house, scope);
    return counted;
  };
  const asked: Asked = {
    house,
    scope,
    usage,
    document,
    entry,
    line,
    options,
    fileLine: position.line,
    before: text.text.slice(0, column),
    behind: text.text.slice(column, end),
  };
  return toList(asked, groupsAt(asked));
}

/** Whether what is typed here goes on with the prose above: on a blank line that is deeper than its field. */
function isInProse({ entry, line, column, content, text }: Cursor): boolean {
  if (content.kind !== "blank" || /\S/.test(text.text)) return false;
  for (let above = line - 1; above >= 0; above--) {
    const { content: there, text: written } = entry.lines[above]!;
    if (there.kind === "blank" || there.kind === "prose") continue;
    return (
      there.kind === "field" && shapeOf(there.name.text.toLowerCase()) === "prose" && column > written.length - written.trimStart().length
    );
  }
  return false;
}

function groupsAt(asked: Asked): Group[] {
  const { before, entry } = asked;
  if (entry.kind === "text") return inText(asked);
  const { content, comment } = readLine(before);
  if (comment) return inComment(asked, comment.start);
  if (before === "" || (isAtMargin(before) && content.kind === "entry")) return inHead(asked, content);
  if (!isOwnKind(entry.kind)) return [];
  const first = wordStart(before, 0);
  // The first word is still being typed, whatever it would be read as.
  if (/^[^\s\d:#"“½¼¾⅓⅔⅛.-][^\s:]*$/u.test(before.slice(first))) return bodyStart(asked, first);
  return inBody(asked, content);
}

function inHead(asked: Asked, content: Content): Group[] {
  const { before } = asked;
  if (content.kind !== "entry" || !/\s/.test(before)) return [entryWordsAt(asked)];
  return content.entry ? [headNames(asked, content.entry, wordStart(before, content.word.end))] : [];
}

function inBody(asked: Asked, content: Content): Group[] {
  const { before, entry } = asked;
  const pours = entry.kind === "drink" || entry.kind === "prep";
  switch (content.kind) {
    case "blank":
      return bodyStart(asked, before.length);
    case "unread":
      return bodyStart(asked, content.start);
    case "field":
      return inField(asked, content);
    case "pour": {
      const { quantity, lead, name, turned } = content.pour;
      if (turned) return [];
      if (quantity || lead || name?.commas.length) return pours ? inPour(asked, content.pour) : [];
      const number = pours ? numberAt(before, wordStart(before, 0)) : undefined;
      return number ? [unitsAt(asked, number.start)] : bodyStart(asked, wordStart(before, 0));
    }
    case "or":
      return pours ? inPour(asked, content.pour) : [];
    case "swap":
      return entry.kind === "drink" ? inSwap(asked, content.readings[0]?.in) : [];
    case "without":
      return entry.kind === "drink"
        ? inWithout(asked, wordStart(before, content.all?.end ?? content.word.end), content.all !== undefined)
        : [];
    case "menu":
      return entry.kind === "menu" ? [menuLines(asked, wordStart(before, content.dash.end))] : [];
    case "section":
      return entry.kind === "menu" ? [sectionTitles(asked, wordStart(before, content.word.end))] : [];
    default:
      return [];
  }
}
