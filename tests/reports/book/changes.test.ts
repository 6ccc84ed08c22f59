/** What follows from a change, in every form: what depends on it, and nothing else. */
import { expect, test } from "vitest";
import { bookChanges } from "../../../server/reports/book/changes.ts";
import { chapterHtml } from "../../../server/reports/book/html.ts";
import { chapterMarkdown } from "../../../server/reports/book/markdown.ts";
import { whatPrints } from "../../../server/reports/book/what-prints.ts";
import { bookFrom, bookOf, filesOf, houseFrom, root } from "./books.ts";

const book = `=== book.drink
book Small Hours

prep honey syrup
  200 g honey
  100 g water

prep plain syrup
  100 g white sugar
  100 g water

drink Lamp Sour
  method: shake 12 s
  50 ml dry gin
  25 ml lemon juice
  20 ml honey syrup

drink Plain Sour
  method: shake 12 s
  50 ml dry gin
  25 ml lemon juice
  20 ml plain syrup
=== 01-honey.md
# Honey

Its ratio is :ratio[Lamp Sour], at :strength[Lamp Sour].

::spec[Lamp Sour]

::spec[honey syrup]
=== 02-plain.md
# Plain

Its ratio is :ratio[Plain Sour].

::spec[Plain Sour]

::spec[plain syrup]
`;
const changed = book.replace("200 g honey", "300 g honey");

test("another ratio of a syrup changes every value and figure that depends on it, and nothing else", () => {
  const [before, after] = [bookOf(book), bookOf(changed)];
  const values = ({ chapters }: typeof before) => chapters.flatMap(({ said }) => said.map(({ source, text }) => [source, text] as const));
  const differing = values(after).filter(([, text], index) => text !== values(before)[index]![1]);
  expect(differing.map(([source]) => source)).toContain(":ratio[Lamp Sour]");
  expect(differing.map(([source]) => source)).not.toContain(":ratio[Plain Sour]");
  for (const print of [chapterMarkdown, chapterHtml, whatPrints]) {
    const [honey, plain] = [0, 1].map((index) => [print(before, before.chapters[index]!), print(after, after.chapters[index]!)]);
    expect(honey![0]).not.toBe(honey![1]);
    expect(plain![0]).toBe(plain![1]);
  }
});

test("a house that took in the change says what one read afresh says", () => {
  const files = filesOf(book);
  const house = houseFrom(files);
  bookFrom(files, house);
  const fresh = filesOf(changed);
  const again = houseFrom(fresh).document(`${root}/book.drink`)!;
  house.setDocument(again);
  const [one, other] = [bookFrom(fresh, house), bookOf(changed)];
  expect(one.chapters.map((chapter) => chapterMarkdown(one, chapter))).toEqual(
    other.chapters.map((chapter) => chapterMarkdown(other, chapter)),
  );
});

test("its editor is told which recipes and values print differently, in which chapter, and what does not is left out", () => {
  const report = bookChanges({
    before: bookOf(book),
    after: bookOf(changed),
    since: "proofs",
    pathOf: (uri) => uri.slice(root.length + 1),
  });
  expect(report).toContain("# Small Hours: what changed since proofs");
  expect(report).toContain("## Honey (01-honey.md)");
  expect(report).toMatch(/- \*\*Lamp Sour\*\* \(no\. 1\), other figures: .*through prep honey syrup/);
  expect(report).toMatch(/- \*\*honey syrup\*\* \(no\. 2\), changed/);
  expect(report).toMatch(/- Line 3 says “.*” now, and said “.*”: `:ratio\[Lamp Sour\]`/);
  expect(report).not.toContain("Plain Sour");
  expect(report).not.toContain("edited");
});

test("a chapter that came, one that went and one that was edited are told of", () => {
  const files = filesOf(book);
  const fresh = new Map([...files].filter(([name]) => name !== "02-plain.md"));
  fresh.set("01-honey.md", files.get("01-honey.md")!.replace("Its ratio is", "The ratio is"));
  fresh.set("03-new.md", "# New\n");
  const report = bookChanges({ before: bookFrom(files), after: bookFrom(fresh), since: "v1", pathOf: (uri) => uri.slice(root.length + 1) });
  expect(report).toContain("## Honey (01-honey.md)\n\n- The author's text was edited.");
  expect(report).toContain("## New (03-new.md)\n\n- The chapter is new.");
  expect(report).toContain("## Plain (02-plain.md)\n\n- The chapter is no longer in the book.");
});
