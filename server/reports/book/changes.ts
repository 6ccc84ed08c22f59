/** What became of a book since a revision, for its editor: chapter by chapter, in Markdown. */
import type { Book, Chapter, PrintedRecipe, SaidInText } from "../../house/book/book.ts";
import { capital, showCount } from "../../house/show.ts";
import { diff } from "../diff.ts";
import { drinkLines, thingLines } from "../diff-lines.ts";
import type { DiffDrink, DiffThing } from "../diff-schema.ts";
import { plain } from "./markdown-recipe.ts";

export interface Changing {
  readonly before: Book;
  readonly after: Book;
  /** How the revision is called. */
  readonly since: string;
  /** How a text is named, on both sides alike. */
  pathOf(uri: string): string;
  progress?(done: number, all: number): void;
}

export function bookChanges({ before, after, since, pathOf, progress }: Changing): string {
  const houses = { before: before.house, after: after.house };
  const report = diff(houses, { before: since, after: "now", pathOf, wanted: () => true, ...(progress && { progress }) });
  const placeOf = ({ house, recipes }: Book) =>
    new Map(
      recipes.map((one) => [
        keyOf({ file: pathOf(house.getDocumentOf(one.recipe.entry).uri), line: house.getLineOf(one.recipe.entry) + 1 }),
        one,
      ]),
    );
  const places = { before: placeOf(before), after: placeOf(after) };
  const printed = (one: Pick<DiffDrink, "before" | "after">) =>
    (one.after && places.after.get(keyOf(one.after))) || (one.before && places.before.get(keyOf(one.before)));
  const changes = [
    ...report.drinks.filter(({ how }) => how !== "rewritten").map((one) => ({ one, ...drinkLines(one) })),
    ...report.things.filter(({ kind }) => kind === "prep").map((one) => ({ one, hurt: [], ...thingLines(one) })),
  ].flatMap((change): Change[] => {
    const place = printed(change.one);
    return place ? [{ ...change, place }] : [];
  });
  const others = report.things.filter((one) => !printed(one));
  const files = [...new Set([...after.chapters, ...before.chapters].map(({ file }) => file))];
  const chapters = files.flatMap((file) => chapterPart(file, before, after, changes));
  const atEnd = changes.filter(({ place }) => place.chapter === undefined);
  const parts = [
    `# ${plain(after.title)}: what changed since ${plain(since)}`,
    summaryOf(before, after, changes),
    ...chapters,
    ...(atEnd.length > 0 ? ["## Made in house", listOf(atEnd.map(changeLine))] : []),
    ...(others.length > 0 ? ["## Behind the recipes", listOf(others.map(thingLine))] : []),
  ];
  return `${parts.join("\n\n")}\n`;
}

interface Change {
  readonly one: DiffDrink | DiffThing;
  readonly hurt: readonly string[];
  readonly said: readonly string[];
  readonly through: readonly string[];
  readonly place: PrintedRecipe;
}

function keyOf({ file, line }: { readonly file: string; readonly line: number }): string {
  return `${file}:${line}`;
}

function summaryOf(before: Book, after: Book, changes: readonly Change[]): string {
  const values = after.chapters.reduce((sum, chapter) => sum + valuesChanged(chapterOf(before, chapter.file), chapter).length, 0);
  if (changes.length + values === 0) return "No recipe and no value in the text prints differently.";
  const isOrAre = changes.length === 1 ? "prints" : "print";
  return `${showCount(changes.length, "recipe")} ${isOrAre} differently, and ${showCount(values, "value")} in the text.`;
}

function chapterOf({ chapters }: Book, file: string): Chapter | undefined {
  return chapters.find((one) => one.file === file);
}

/** Nothing for a chapter that is as it was. */
function chapterPart(file: string, before: Book, after: Book, changes: readonly Change[]): string[] {
  const [old, now] = [chapterOf(before, file), chapterOf(after, file)];
  const values = valuesChanged(old, now);
  const lines = [
    ...(now ? [] : ["The chapter is no longer in the book."]),
    ...(old ? [] : ["The chapter is new."]),
    ...changes.filter(({ place }) => place.chapter === file).map(changeLine),
    ...values.map(({ was, is }) => `Line ${is.line + 1} says “${plain(is.text)}” now, and said “${plain(was)}”: \`${is.source}\``),
    ...(old && now && old.text !== now.text ? ["The author's text was edited."] : []),
  ];
  return lines.length > 0 ? [`## ${plain((now ?? old)!.title)} (${plain(file)})`, listOf(lines)] : [];
}

/** What the same directive, counted from the top among its equals, says otherwise than before. */
function valuesChanged(before: Chapter | undefined, after: Chapter | undefined): { was: string; is: SaidInText }[] {
  const numbered = (chapter: Chapter | undefined) => {
    const counts = new Map<string, number>();
    return (chapter?.said ?? []).map((said) => {
      const count = (counts.get(said.source) ?? 0) + 1;
      counts.set(said.source, count);
      return [`${said.source} ${count}`, said] as const;
    });
  };
  const old = new Map(numbered(before));
  return numbered(after).flatMap(([key, is]) => {
    const was = old.get(key)?.text;
    return was !== undefined && was !== is.text ? [{ was, is }] : [];
  });
}

function changeLine({ one, hurt, said, through, place }: Change): string {
  const oldName = "oldName" in one && one.oldName ? `, renamed from ${plain(one.oldName)}` : "";
  const how = one.how === "moved" ? "other figures" : one.how;
  const lines = [...hurt.map((line) => `**${plain(capital(line))}**`), ...[...said, ...through].map(plain)];
  const what = lines.length > 0 ? `: ${lines.join("; ")}` : "";
  return `**${plain(one.name)}** (no. ${place.number})${oldName || `, ${plain(how)}`}${what}`;
}

function thingLine(thing: DiffThing): string {
  const { said, through } = thingLines(thing);
  const lines = [...said, ...through].map(plain).join("; ");
  return `${plain(`${capital(thing.kind)} ${thing.name}, ${thing.how}`)}${lines ? `: ${lines}` : ""}`;
}

function listOf(lines: readonly string[]): string {
  return lines.map((line) => `- ${line}`).join("\n");
}
