/**
 * Recipes in schema.org's JSON-LD as drinks. What stands there in words of the language is read as such;
 * everything else is kept in comments and told. Nothing is made up, and no claim on a diet is taken over.
 */
import { type EntryKind, findField } from "../../grammar/fields.ts";
import { fold } from "../house/names.ts";
import { readLarder } from "../larder/larder.ts";
import { columns } from "./columns.ts";
import { uncounted } from "./import-counts.ts";
import { ingredientLines } from "./import-ingredient.ts";
import { fieldLines, headLine, squeezed } from "./import-lines.ts";
import type { Misread } from "./import-schema.ts";
import { shortened } from "./import-table.ts";
import { type Draft, type Imported, keptAsComment, linesIn, notUnderstood, textOfDrafts, type Unimportable } from "./imported.ts";
import { dataIn, isPage, withoutEntities } from "./page-data.ts";
import { instructionsIn, listOf, type Node, recipesIn, textOf } from "./recipe-nodes.ts";
import { prepCategory } from "./recipe-words.ts";

/** Of JSON-LD, or of a saved page that holds some. */
export function importRecipes(text: string): Imported | Unimportable {
  const whole: unknown[] = [];
  const beside: { readonly text: string; readonly why: string }[] = [];
  const signs = new Set<string>();
  // Whoever makes a page writes its signs in HTML's way, even where nothing reads them so.
  const inPage = (_: string, value: unknown) => (typeof value === "string" ? withoutEntities(value, signs) : value);
  for (const one of isPage(text) ? dataIn(text) : [text.replace(/^\uFEFF/, "")]) {
    try {
      whole.push(JSON.parse(one, isPage(text) ? inPage : undefined));
    } catch (cause) {
      beside.push({ text: one, why: `This does not read as JSON: ${cause instanceof Error ? cause.message : String(cause)}.` });
    }
  }
  if (whole.length === 0 && beside[0]) return { problem: beside[0].why, todo: "Put it right where it stands, or save the page again." };
  const { recipes, others } = recipesIn(whole);
  if (recipes.length === 0) return noRecipe(isPage(text));
  beside.push(...others.map((node) => ({ text: JSON.stringify(node), why: "This is no recipe." })));
  const works = recipes.map((node, index) => recipeDraft(node, recipes.length > 1 ? `recipe ${index + 1}` : "the recipe"));
  const left = new Set(works.flatMap((work) => [...work.left]));
  const where = "beside the recipes";
  const last: Draft = { fields: [], lines: beside.flatMap((one) => notUnderstood(where, one.text)) };
  const misread = beside.map(({ text, why }): Misread => ({ where, text, why, done: keptAsComment }));
  const made = textOfDrafts([...works.map(({ draft }) => draft), ...(beside.length > 0 ? [last] : [])]);
  return {
    text: made,
    entries: works.filter(({ draft }) => draft.head).length,
    misread: [...works.flatMap((work) => work.misread), ...misread, ...uncounted(made)],
    remarks: [
      ...(left.size > 0 ? [`Not taken over, since it is the house's own to say: ${[...left].join(", ")}. It stands in comments.`] : []),
      ...(signs.size > 0 ? [`Written as the signs that they stand for: ${[...signs].join(", ")}.`] : []),
    ],
  };
}

function noRecipe(inPage: boolean): Unimportable {
  const where = inPage ? 'In a page it stands in a `<script type="application/ld+json">`, and is' : "It is";
  return {
    problem: "There is no recipe in this file.",
    todo: `${where} an object with \`"@type": "Recipe"\`, alone, in a list or in an \`@graph\`.`,
  };
}

interface Work {
  readonly kind: EntryKind;
  readonly draft: Draft;
  readonly where: string;
  readonly misread: Misread[];
  /** The lines of each field. */
  readonly fields: Map<string, readonly string[]>;
  /** Properties that are the house's own to say. */
  readonly left: Set<string>;
}

function recipeDraft(node: Node, where: string): Work {
  const kind = listOf(node.recipeCategory).some((one) => one === prepCategory) ? "prep" : "drink";
  const name = textOf(node.name);
  const head = headLine(kind, name ?? "", "");
  const named = name && "line" in head;
  const draft: Draft = { kind, ...(named && { head: head.line }), fields: [], lines: [] };
  const work: Work = {
    kind,
    draft,
    where: named ? `${where}, “${shortened(name)}”` : where,
    misread: [],
    fields: new Map(),
    left: new Set(),
  };
  if (!named) {
    keep(work, "all of it", JSON.stringify(node), name ? "Its name does not read." : "It has no name.");
    return work;
  }
  for (const [property, value] of Object.entries(node)) {
    if (value === null || silent.has(property)) continue;
    const reader = readers[property];
    if (reader) reader(work, value, property);
    else if (unread.has(property)) {
      work.left.add(property);
      work.draft.lines.push(...linesIn(plainly(value)).map((line) => `# the recipe says, ${property}: ${line.trim()}`));
    } else keep(work, property, plainly(value), "A spec has no place for it.");
  }
  draft.fields.push(...columns.specs.flatMap(({ name }) => work.fields.get(name) ?? []));
  return work;
}

/** Who it is by, and what else is said of them. */
function nameAndRest(one: unknown): { readonly name: unknown; readonly rest?: unknown } {
  if (textOf(one) !== undefined || typeof one !== "object" || one === null || !("name" in one)) return { name: one };
  const { name, "@type": _, ...rest } = one as Node;
  return { name, rest };
}

const silent: ReadonlySet<string> = new Set(["@context", "@type", "name"]);

/** What a house computes, or states of every ingredient, and so never takes over from anybody. */
const unread: ReadonlySet<string> = new Set(["suitableForDiet", "nutrition"]);

type Reader = (work: Work, value: unknown, property: string) => void;

const ingredients: Reader = (work, value, property) => {
  for (const [index, one] of listOf(value).entries()) {
    const what = `${property} ${index + 1}`;
    const text = textOf(one);
    const made = text === undefined ? undefined : ingredientLines(text);
    if (!made) keep(work, what, plainly(one), "This does not read as an amount and what it is of.");
    else if ("field" in made) addItem(work, what, made.field, made.item);
    else work.draft.lines.push(...made.lines);
  }
};

const readers: Readonly<Record<string, Reader>> = {
  description: (work, value, property) => write(work, property, work.kind === "drink" ? "guest" : "headnote", value),
  creditText: (work, value, property) => write(work, property, "credit", value),
  author(work, value, property) {
    const parts = listOf(value).map(nameAndRest);
    write(
      work,
      property,
      "credit",
      parts.map(({ name }) => name),
    );
    for (const { rest } of parts) if (rest) keep(work, property, plainly(rest), "A credit is a name.");
  },
  keywords: (work, value, property) => write(work, property, "tags", value),
  recipeIngredient: ingredients,
  ingredients,
  recipeInstructions(work, value, property) {
    const { method, glass, steps, strange } = instructionsIn(value);
    if (method.length > 0) write(work, property, "method", method.join("; "));
    if (glass) write(work, property, "glass", glass);
    if (steps.length > 0) write(work, property, "steps", steps.join("\n"));
    for (const one of strange) keep(work, property, plainly(one), "This is no step in words.");
  },
  recipeCategory(work, value, property) {
    for (const one of listOf(value)) {
      const text = textOf(one);
      if (text === prepCategory) continue;
      if (text && work.kind === "drink" && families().has(fold(text))) write(work, property, "family", text);
      else keep(work, property, plainly(one), "This is no family that is known here.");
    }
  },
  recipeYield(work, value, property) {
    if (work.kind === "prep") {
      write(work, property, "yield", value);
      return;
    }
    const counts = new Set<string>();
    for (const one of listOf(value)) {
      const text = textOf(one) ?? plainly(one);
      const count = /^(\d+)(?: ?(?:servings?|serves|portions?|drinks?|persons?|people))?$/i.exec(squeezed(text))?.[1];
      if (count === undefined || (counts.size > 0 && !counts.has(count)))
        keep(work, property, text, "This does not say how many it serves.");
      else counts.add(count);
    }
    const [count] = counts;
    // Pours are for one unless it is said.
    if (count !== undefined && count !== "1") write(work, property, "serves", count);
  },
};

/** A value as a field; what does not read, or comes a second time, is kept. */
function write(work: Work, property: string, name: string, value: unknown): void {
  const texts = listOf(value).map(textOf);
  if (texts.length === 0) return;
  const field = findField(name, work.kind);
  const text = texts.join(field?.shape === "prose" ? "\n" : ", ");
  const why = texts.includes(undefined) ? "This is not told in words." : work.fields.has(name) ? `There is a \`${name}:\` already.` : "";
  const made = field && !why ? fieldLines(field, work.kind, text) : { why: why || `A ${work.kind} has no \`${name}\`.` };
  if ("why" in made) keep(work, property, why ? plainly(value) : text, made.why);
  else work.fields.set(name, made.lines);
}

/** One more item of a field. */
function addItem(work: Work, what: string, name: "garnish" | "rim", item: string): void {
  const before = (work.fields.get(name) ?? []).map((line) => `${line.slice(name.length + 2)}; `).join("");
  const field = findField(name, work.kind);
  const made = field ? fieldLines(field, work.kind, before + item) : { why: `A ${work.kind} has no \`${name}\`.` };
  if ("why" in made) keep(work, what, item, made.why);
  else work.fields.set(name, made.lines);
}

function keep(work: Work, property: string, text: string, why: string): void {
  work.draft.lines.push(...notUnderstood(property, text));
  work.misread.push({ where: `${work.where}, ${property}`, text: squeezed(text), why, done: keptAsComment });
}

/** A value in one line, texts without their marks. */
function plainly(value: unknown): string {
  return typeof value === "string" ? value : JSON.stringify(value);
}

let known: ReadonlySet<string> | undefined;

/** The families that everybody has. */
function families(): ReadonlySet<string> {
  known ??= new Set(
    readLarder().flatMap(({ tree }) => tree.entries.flatMap(({ kind, name }) => (kind === "family" && name ? [fold(name.text)] : []))),
  );
  return known;
}
