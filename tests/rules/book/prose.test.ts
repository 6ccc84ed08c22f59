/** What the text of a chapter says, against the recipes that it is about. */
import { describe, expect, test } from "vitest";
import { documentOf, houseOf, root, textOf } from "../../house/make.ts";
import { apply, checkFindings, findIn, findOne } from "../check.ts";

const drink = (name: string, ...pours: string[]) =>
  `\`\`\`drink\ndrink ${name}\n  glass: coupe\n  method: shake 12 s; fine strain\n  garnish: none\n${pours.map((pour) => `  ${pour}\n`).join("")}\`\`\`\n`;
const sour = drink("Slip Sour", "50 ml gin", "22.5 ml lemon juice", "15 ml sugar syrup", "2 dashes saline");
const book = (chapter: string, ...fields: string[]) =>
  `=== book.drink\nbook Slack Water\n${fields.map((field) => `  ${field}\n`).join("")}=== one.md\n${chapter}`;
const found = (text: string, code: string) =>
  findIn(houseOf(text)).flatMap(({ uri, line, finding }) =>
    finding.code === code ? [`${uri.slice(root.length + 1)}:${line + 1} ${finding.what}`] : [],
  );
const disagree = (prose: string, spec = sour, ...fields: string[]) =>
  found(book(`## Slip Sour\n\n${prose}\n\n${spec}`, ...fields), "prose-disagrees").length;

test("a place right behind a block that nobody closed is that of the text", () => {
  const text = book("- ```drink\n  drink Slip Sour\n    50 ml gin\nA :strenght[Slip Sour].\n");
  const { house, located } = findOne(text, "unknown-directive");
  apply(house, located.finding.fixes!()[0]!);
  expect(textOf(house.document(`${root}/one.md`)!)).toContain("\nA :strength[Slip Sour].\n");
});

describe("prose that disagrees", () => {
  test.each([
    "Give it 25 ml of lemon juice.",
    "Give it 25 ml lemon juice, no more.",
    "Give it twenty-five millilitres of *lemon juice*.",
    "Give it 2 cl of fresh lemon juice.",
    "Give it 1 oz of lemon juice.",
    "Give it an even two ounces, no: half an ounce of lemon juice.",
    "Give it three dashes of saline.",
    "Give it 25 ml of\nlemon juice.",
    "> Give it 25 ml of\n> lemon juice.",
    "| lemon | much |\n| - | - |\n| 25 ml lemon juice | it is |",
  ])("found: %s", (prose) => expect(disagree(prose)).toBe(1));

  test.each([
    "Give it 22.5 ml of lemon juice.",
    "Give it 2.25 cl of lemon juice.",
    "Give it ¾ oz of lemon juice.",
    "Give it three quarters of an ounce of lemon juice.",
    "Give it twenty-two and a half millilitres of lemon juice.",
    "Give it two dashes of saline.",
    // Vaguer, or of something else.
    "Give it 20 to 25 ml of lemon juice.",
    "Give it about 25 ml of lemon juice.",
    "Give it 25 ml of lemon juice cordial.",
    "Give it 25 ml of lime juice.",
    "Give it 25 ml, of lemon juice if you like.",
    "Give it 25 g of lemon juice.",
    "Give it 5 barspoons of lemon juice.",
    "Give it `25 ml of lemon juice`.",
    'Give it :pour[lemon juice]{in="Slip Sour"} of lemon juice.',
  ])("not found: %s", (prose) => expect(disagree(prose)).toBe(0));

  const said = "Give it 25 ml of lemon juice.";
  test("only under the heading of one drink", () => {
    const other = drink("Pier Sour", "50 ml gin", "25 ml lemon juice", "15 ml sugar syrup");
    const prep = "```drink\nprep low sour mix\n  25 ml lemon juice\n  25 ml water\n```\n";
    const under = (chapter: string) => found(book(chapter), "prose-disagrees").length;
    expect(under(`${said}\n\n${sour}`)).toBe(0);
    expect(under(`## Sours\n\n${said}\n\n${sour}\n${other}`)).toBe(0);
    expect(under(`## Slip Sour\n\n${said}\n\n## Sours\n\n${sour}`)).toBe(1);
    expect(under(`## Slip Sour\n\n${said}\n\n${sour}\n${prep}`)).toBe(0);
    expect(under(`## A sour\n\n${sour}\nBehind it: ${said}\n`)).toBe(1);
    expect(under(`## A sour\n\n### How\n\n${said}\n\n## Spec\n\n${sour}`)).toBe(0);
    expect(under(`A sour\n------\n\n${said}\n\n::spec[Slip Sour]\n\n# End\n\n${sour}`)).toBe(1);
  });

  test("what is poured twice, or with an alternative, is disagreed with only where nothing agrees", () => {
    const twice = drink("Slip Sour", "50 ml gin", "20 ml lemon juice", "5 ml lemon juice");
    const either = drink("Slip Sour", "50 ml gin", "20 ml lime juice", "  or 25 ml lemon juice");
    expect(["25 ml", "20 ml", "5 ml", "30 ml"].map((amount) => disagree(`It has ${amount} of lemon juice.`, twice))).toEqual([0, 0, 0, 0]);
    expect(["25 ml", "20 ml"].map((amount) => disagree(`It has ${amount} of lemon juice.`, either))).toEqual([0, 1]);
  });

  test.each([
    ["25 ml", "22.5 ml", ':pour[lemon juice]{in="Slip Sour"}'],
    ["twenty-five millilitres", "twenty-two and a half millilitres", ':pour[lemon juice]{in="Slip Sour" words}'],
    ["1 oz", "¾ oz", ':pour[lemon juice]{in="Slip Sour" units=US}'],
    ["an even one ounce", "three quarters of an ounce", ':pour[lemon juice]{in="Slip Sour" words units=US}'],
  ])("%s is put right in its own form, or said by a directive", (wrong, right, directive) => {
    const chapter = (amount: string) => `## Slip Sour\n\n> 🍋 é give it ${amount} of lemon juice.\n\n${sour}`;
    const text = book(chapter(wrong));
    const texts = [0, 1].map((way) => {
      const { house, located } = findOne(text, "prose-disagrees");
      apply(house, located.finding.fixes!()[way]!);
      expect(findIn(house)).toEqual([]);
      return textOf(house.document(`${root}/one.md`)!);
    });
    const lead = wrong.startsWith("an even") ? "an even " : "";
    expect(texts).toEqual([chapter(lead + directive), chapter(lead + right)]);
  });

  test("a pour that is changed in another file is seen at once, and so is a heading above it", () => {
    const house = houseOf(
      `${book(`## Slip Sour\n\n${said}\n\n::spec[Slip Sour]\n`)}=== sour.drink\n${sour.replaceAll(/```(?:drink)?\n/g, "")}`,
    );
    const count = () => findIn(house).filter(({ finding }) => finding.code === "prose-disagrees").length;
    expect(count()).toBe(1);
    const spec = textOf(house.document(`${root}/sour.drink`)!);
    house.setDocument(documentOf(`${root}/sour.drink`, spec.replace("22.5 ml", "25 ml")));
    expect(count()).toBe(0);
    house.setDocument(documentOf(`${root}/sour.drink`, spec));
    expect(count()).toBe(1);
    const chapter = textOf(house.document(`${root}/one.md`)!);
    house.setDocument(documentOf(`${root}/one.md`, chapter.replace("\n::spec", "\n# Specs\n::spec").replace("## Slip Sour", "## Sours")));
    expect(count()).toBe(0);
    house.setDocument(documentOf(`${root}/one.md`, chapter));
    expect(count()).toBe(1);
  });

  test("what else is printed around it is seen at once, though the paragraph stays as it is", () => {
    const uri = `${root}/one.md`;
    const text = `## A sour\n\nFirst.\n\n${sour}\nBehind it: ${said}\n`;
    const house = houseOf(book(text));
    const count = () => findIn(house).filter(({ finding }) => finding.code === "prose-disagrees").length;
    expect(count()).toBe(1);
    house.setDocument(documentOf(uri, text.replace("First.", `First.\n\n${sour.replace("Slip", "Pier")}\nSecond.`)));
    expect(count()).toBe(0);
    house.setDocument(documentOf(uri, text));
    expect(count()).toBe(1);
  });
});

describe("directives", () => {
  test("are nobody's business outside the chapters of a book", () => {
    const chapter = ":strenght[Nobody] and :see[Nobody]\n";
    expect(findIn(houseOf(`=== README.md\n${chapter}`))).toEqual([]);
    expect(found(book(chapter, "chapters: two.md"), "unknown-directive")).toEqual([]);
    expect(found(book(chapter, "chapters: two.md; ./one.md"), "unknown-directive")).toHaveLength(1);
    expect(found(`${book("")}=== low/notes.md\n${chapter}`, "missing-recipe")).toEqual([]);
  });

  test("each fault stands on its word", () =>
    checkFindings(
      book(`# One

::strength[Slip Sour]
  ^^^^^^^^ unknown-directive
é 🍋 :spec[Slip Sour] and :volum[Slip Sour]
      ^^^^ unknown-directive
                           ^^^^^ unknown-directive
Of :strength[ Slop Sour ] and :glass[gin], :pour[gin], :pour[gin]{in=nobody}.
              ^^^^^^^^^ missing-recipe
                                     ^^^ missing-recipe
                                                 ^^^ missing-recipe
                                                                     ^^^^^^ missing-recipe
Of :strength[Slip Sour]{word units=both unit=US units=metres}, :strength[].
                        ^^^^ unsayable-value
                                        ^^^^ unsayable-value
                                                      ^^^^^^ unsayable-value
                                                                ^^^^^^^^ missing-recipe
Of :keeps[Slip Sour].
          ^^^^^^^^^ unsayable-value

::index[]
  ^^^^^ unsayable-value

${sour}`),
    ));

  test("one that goes on over the end of its line is found", () =>
    checkFindings(
      book(`> Of :pour[gin]{in="Slip Sour"
               ^^^^^^^^^^^^^^^ unknown-directive
> words} and :see[Slip
             ^^^^^^^^^ unknown-directive
> Sour], and ::spec[Slip Sour] and ::glass[Slip Sour].
             ^^^^^^^^^^^^^^^^^ unknown-directive
                                   ^^^^^^^^^^^^^^^^^^ unknown-directive

${sour}`),
    ));

  test("a link leads to what is printed: in a chapter, or by its name or another", () => {
    const aside = "=== bar.drink\ndrink Bar Sour\n  aka: Old Sour\n  glass: coupe\n  method: shake 12 s\n  garnish: none\n  50 ml gin\n";
    expect(found(book(`A :see[Bar Sour].\n${aside}`), "unprinted-recipe")).toHaveLength(1);
    expect(found(book(`A :see[Bar Sour].\n\n::spec[Old Sour]\n${aside}`), "unprinted-recipe")).toEqual([]);
    expect(
      found(`${book("A :see[Bar Sour].\n", "chapters: one.md")}=== two.md\n::spec[Bar Sour]\n${aside}`, "unprinted-recipe"),
    ).toHaveLength(1);
  });

  test("a recipe that another chapter stops printing is missed at once", () => {
    const aside = "=== bar.drink\ndrink Bar Sour\n  glass: coupe\n  method: shake 12 s\n  garnish: none\n  50 ml gin\n";
    const house = houseOf(`${book("A :see[Bar Sour].\n")}=== two.md\n::spec[Bar Sour]\n${aside}`);
    const codes = () => findIn(house).map(({ finding }) => finding.code);
    expect(codes()).toEqual([]);
    house.setDocument(documentOf(`${root}/two.md`, "::contents\n"));
    expect(codes()).toEqual(["unprinted-recipe"]);
    house.setDocument(documentOf(`${root}/two.md`, "::spec[Bar Sour]\n"));
    expect(codes()).toEqual([]);
  });
});
