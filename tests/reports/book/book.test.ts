/** A book as data: what is in it, in which order, and what keeps it from being printed. */
import { expect, test } from "vitest";
import { bookFrom, bookOf, ferryBook, filesOf } from "./books.ts";

/** A book of one chapter with a drink that has what a value needs. */
function chapter(text: string, book = "book Small Hours"): string {
  return `=== book.drink
${book}
drink Lamp Sour
  method: shake 12 s
  50 ml dry gin
  25 ml lemon juice
prep unmeasured
  some dry gin
=== 01-first.md
${text}`;
}

function problemsOf(text: string): string[] {
  return bookOf(text).problems.map(({ file, line, column, what }) => `${file}:${line}:${column} ${what}`);
}

test("chapters stand in the order of their names, recipes in that of print, and preps that no chapter prints come last", () => {
  const book = bookOf(ferryBook);
  expect(book.problems).toEqual([]);
  expect(book.chapters.map(({ title, id, file }) => [title, id, file])).toEqual([
    ["Dusk & after", "dusk--after", "01-dusk.md"],
    ["Night", "night", "02-night.md"],
  ]);
  expect(book.recipes.map(({ recipe, id, number, chapter, line, isNamed }) => [recipe.name, id, number, chapter, line, isNamed])).toEqual([
    ["Lamp Sour", "lamp-sour", 1, "01-dusk.md", 8, false],
    ["Night Mug", "night-mug", 2, "02-night.md", 12, true],
    ["honey syrup", "honey-syrup", 3, undefined, 16, false],
  ]);
});

test("`chapters:` says which files and in which order", () => {
  const text = ferryBook.replace("  subtitle", "  chapters: 02-night.md; 01-dusk.md\n  subtitle");
  expect(bookOf(text).chapters.map(({ file }) => file)).toEqual(["02-night.md", "01-dusk.md"]);
});

test("the same files in another order are the same book", () => {
  const files = [...filesOf(ferryBook)];
  const [one, other] = [files, [...files].reverse()].map((entries) => bookFrom(new Map(entries)));
  expect(other!.recipes.map(({ id }) => id)).toEqual(one!.recipes.map(({ id }) => id));
  expect(other!.chapters.map(({ said, id }) => [id, said])).toEqual(one!.chapters.map(({ said, id }) => [id, said]));
});

test.each([
  ["a directive that there is none of", "a :strenght[Lamp Sour]\n", ["01-first.md:1:4 Nothing that a book can say is called “strenght”"]],
  ["a label that names nothing", "é½🍋 :strength[Lamp Sou]\n", ["01-first.md:1:16 No drink and no prep is called “Lamp Sou”."]],
  ["a value that is not known", "\n\n:strength[unmeasured]\n", ["01-first.md:3:11 The book cannot say this: "]],
  ["a reference to what is never printed", ":see[Lamp Sour]\n", ["01-first.md:1:6 No chapter prints “Lamp Sour”, so this leads nowhere."]],
  ["a spec of nothing", "\n::spec[Lamp Bitter]\n", ["01-first.md:2:8 No drink and no prep is called “Lamp Bitter”."]],
  [
    "a recipe printed twice",
    "::spec[Lamp Sour]\n\n::spec[Lamp Sour]\n",
    ["01-first.md:3:1 “Lamp Sour” is printed already, at 01-first.md:1."],
  ],
  [
    "an attribute that there is none of",
    "::spec[Lamp Sour]\n\n:strength[Lamp Sour]{colour=red}\n",
    ["01-first.md:3:22 “strength” takes no “colour”"],
  ],
  ["an index of nothing", "::index[]\n", ["01-first.md:1:3 It does not say “by”"]],
  ["an index by something else", "::index[]{by=mood}\n", ["01-first.md:1:14 “by” is one of spirit, family, ingredient and strength"]],
  ["a block within a paragraph", "a\nb ::spec[Lamp Sour]\n", ["01-first.md:2:3 “::spec…” stands in a paragraph"]],
  ["a value's block", "a ::strength[Lamp Sour]\n", ["01-first.md:1:3 “strength” is said within a sentence"]],
  ["attributes over two lines", 'A :pour[lemon juice]{in="Lamp Sour"\nwords}\n', ["01-first.md:1:21 A directive stands on one line"]],
  ["a label over two lines", "> é🍋 :see[Lamp\n> Sour] and\n", ["01-first.md:1:7 A directive stands on one line"]],
  ["a block over two lines", "::index[]{by=\nspirit}\n", ["01-first.md:1:10 A directive stands on one line"]],
  ["a spec's label over two lines", "::spec[Lamp\nSour]\n", ["01-first.md:1:1 A directive stands on one line"]],
  [
    "braces that hold no attributes",
    "A :strength[Lamp Sour]{words, figures}\n",
    ["01-first.md:1:23 What stands in these braces does not read"],
  ],
  ["a picture that is not there", "a\nb ![x](no.png)\n", ["01-first.md:2:8 There is no picture “no.png”."]],
  ["a picture from elsewhere", "![x](https://example.org/a.png)\n", ["01-first.md:1:6 There is no picture “https://example.org/a.png”."]],
  ["a link to no chapter", "[x](02-second.md)\n", ["01-first.md:1:5 The link to “02-second.md” leads nowhere in this book."]],
  ["a link to no heading", "# A\n\n[x](#b)\n", ["01-first.md:3:5 The link to “#b” leads nowhere in this book."]],
  ["HTML", "a <b>c</b>\n", ["01-first.md:1:3 “<b>” is HTML", "01-first.md:1:7 “</b>” is HTML"]],
  [
    "a line of a spec that does not read",
    "```drink\ndrink A\n  50 ml dry gin\n  ??\n```\n",
    ["01-first.md:4:3 This line of the spec does not read"],
  ],
])("%s fails with its place", (_what, text, expected) => {
  const found = problemsOf(chapter(text));
  expect(found.length).toBe(expected.length);
  for (const [index, one] of expected.entries()) expect(found[index]).toContain(one);
});

test("a chapter that is not there fails where it is named", () => {
  const found = problemsOf(chapter("# A\n", "book Small Hours\n  chapters: 01-first.md; 02-secnd.md; 01-first.md"));
  expect(found).toEqual([
    "book.drink:2:26 There is no chapter “02-secnd.md” beside the book.",
    "book.drink:2:39 “01-first.md” is a chapter already.",
  ]);
});

test.each([
  ["a remark", "<!-- to do -->\n\na <!-- b --> c\n"],
  ["a line break", "a<br>b\n"],
  [
    "what only looks like a directive",
    "\\:see[a\nb] `:see[a` 12:30:see[a sea:see[x :sea[a :strength[Lamp Sour]{words}{x} At 12:30, and other:[x], and `:see[A]`.\n",
  ],
  [
    "links within, and to whole addresses",
    "# A b\n\n[x](#a-b) [y](01-first.md) [z](01-first.md#a-b) [u](https://example.org) <mailto:a@example.org>\n",
  ],
])("%s is no fault", (_what, text) => expect(problemsOf(chapter(text))).toEqual([]));

const lampSours = "drink Odd ] Name\n  method: shake 12 s\n  50 ml dry gin\ndrink Lamp [2]\n  method: stir 20 s\n  50 ml dry gin\n";
test.each([
  ["in any case", ":strength[lamp sour] :pour[Lemon Juice]{in='LAMP SOUR'} ", "::spec[LAMP sour]", "Lamp Sour"],
  ["between blanks, on no break", ":strength[ Lamp  Sour\u00a0] ", "::spec[\tLamp\u00a0Sour ]  ", "Lamp Sour"],
  ["by another name", ":strength[The Lamp] ", "::spec[the lamp]", "Lamp Sour"],
  ["with a bracket that stands alone", ":strength[Odd \\] Name] ", "::spec[Odd \\] Name]", "Odd ] Name"],
  ["with paired brackets", ":strength[Lamp [2]] ", "::spec[Lamp [2]]", "Lamp [2]"],
  ["right behind a byte order mark", "", "\uFEFF::spec[Lamp Sour]", "Lamp Sour"],
])("a recipe is named %s", (_what, sentence, spec, name) => {
  const text = spec.startsWith("\uFEFF") ? `${spec}\n` : `# A\n\n${sentence}:see${spec.trim().slice(6)}\r\n\r\n${spec}\r\n`;
  const book = bookOf(
    chapter(text)
      .replace("drink Lamp Sour\n", "drink Lamp Sour\n  aka: The Lamp\n")
      .replace("prep unmeasured", `${lampSours}prep unmeasured`),
  );
  expect(book.problems).toEqual([]);
  expect(book.recipes.map(({ recipe }) => recipe.name)).toEqual([name]);
  expect(book.chapters[0]!.said.every(({ text: said }) => said !== "")).toBe(true);
  const { title, id, tokens } = book.chapters[0]!;
  expect([title, id, ...tokens.map(({ content }) => content)].join()).not.toContain("\uFEFF");
});

test("a spec right behind a byte order mark is printed", () => {
  const book = bookOf(chapter("\uFEFF```drink\ndrink Slip\n  method: shake 12 s\n  50 ml dry gin\n```\n"));
  expect(book.recipes.map(({ recipe }) => recipe.name)).toEqual(["Slip"]);
});

test("an id is the same whatever stands above it, and no two are", () => {
  const book = bookOf(chapter("# Lamp Sour\n\n## Salt\n\n## Salt\n\n::spec[Lamp Sour]\n"));
  const ids = book.chapters.flatMap(({ tokens }) => tokens.flatMap(({ type, meta }) => (type === "heading_open" ? [meta.id] : [])));
  expect([...ids, ...book.recipes.map(({ id }) => id)]).toEqual(["lamp-sour-1", "salt", "salt-1", "lamp-sour"]);
});
