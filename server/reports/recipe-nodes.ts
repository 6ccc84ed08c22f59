/** Finding one's way in JSON-LD: recipes, texts, steps. Knows schema.org's words and nothing of drinks. */
import { linesIn } from "./imported.ts";
import { methodSection, served } from "./recipe-words.ts";

export type Node = Readonly<Record<string, unknown>>;

/** The recipes in a bare object, a list, an `@graph`, or as what a page is about; and what else stands beside them. */
export function recipesIn(value: unknown): { readonly recipes: readonly Node[]; readonly others: readonly unknown[] } {
  const recipes: Node[] = [];
  const others: unknown[] = [];
  const waiting: unknown[] = [value];
  while (waiting.length > 0) {
    const one = waiting.shift();
    if (Array.isArray(one)) waiting.unshift(...one);
    else if (isNode(one) && isA(one, "Recipe")) recipes.push(one);
    else if (isNode(one) && holders.some((holder) => one[holder] !== undefined)) {
      const holder = holders.find((name) => one[name] !== undefined)!;
      const { [holder]: held, "@context": _, ...rest } = one;
      waiting.unshift(held);
      if (Object.keys(rest).length > 0) others.push(rest);
    } else if (one !== null && one !== undefined) others.push(one);
  }
  return { recipes, others };
}

const holders = ["@graph", "mainEntity"];

/** A value as a list: nothing is none, anything but a list is one. */
export function listOf(value: unknown): readonly unknown[] {
  if (value === undefined || value === null || value === "") return [];
  return Array.isArray(value) ? value : [value];
}

/** A text, a number, or what an object with nothing but a name or a text says. */
export function textOf(value: unknown): string | undefined {
  if (typeof value === "number") return String(value);
  if (typeof value === "string") return value.trim() || undefined;
  if (!isNode(value)) return undefined;
  const { "@type": _, ...said } = value;
  const [only, ...more] = Object.entries(said);
  return only && more.length === 0 && ["name", "text", "@value"].includes(only[0]) ? textOf(only[1]) : undefined;
}

export interface Instructions {
  /** The steps of the section in closed words. */
  readonly method: readonly string[];
  readonly glass?: string;
  readonly steps: readonly string[];
  /** What is no step in words. */
  readonly strange: readonly unknown[];
}

export function instructionsIn(value: unknown): Instructions {
  const all = [...stepsIn(value, 0)];
  const sections = all.flatMap(({ section }) => (section ? [section] : []));
  const closed = sections.length === 1 ? closedSteps(sections[0]!) : undefined;
  return {
    method: closed?.method ?? [],
    ...(closed?.glass && { glass: closed.glass }),
    steps: all
      .flatMap(({ text, section }) => (text !== undefined ? [text] : section && !closed ? [methodSection, ...section] : []))
      .flatMap(linesIn),
    strange: all.flatMap(({ rest }) => (rest === undefined ? [] : [rest])),
  };
}

/** A step, the section in closed words, or what is neither: of a step also what it says besides its text. */
interface Found {
  readonly text?: string;
  readonly section?: readonly string[];
  readonly rest?: unknown;
}

function* stepsIn(value: unknown, depth: number): Generator<Found> {
  for (const one of listOf(value)) {
    const text = textOf(one);
    if (text !== undefined) yield { text };
    else if (!isNode(one) || depth > deepest) yield { rest: one };
    else {
      const { "@type": _, name, text: said, itemListElement: inside, position: __, ...rest } = one;
      const steps = listOf(inside).map(textOf);
      const isMethod = name === methodSection && said === undefined && steps.length > 0 && !steps.includes(undefined);
      if (isMethod) yield { section: steps as string[] };
      else {
        const own = [textOf(name), textOf(said)].filter((part) => part !== undefined);
        const whole = own.length > 1 && own[1]!.startsWith(own[0]!.replace(/[….]+$/u, "")) ? own[1]! : own.join(": ");
        if (whole) yield { text: whole };
        const unread = [name, said].filter((part) => part !== undefined && textOf(part) === undefined);
        yield* stepsIn(inside, depth + 1);
        if (Object.keys(rest).length + unread.length > 0) yield { rest: unread.length > 0 ? one : rest };
      }
    }
  }
}

const deepest = 5;

/** The steps of a `method`, and the glass that the last one names; absent where they are not in closed words after all. */
function closedSteps(texts: readonly string[]): { readonly method: readonly string[]; readonly glass?: string } | undefined {
  const last = served.exec(texts.at(-1) ?? "");
  const steps = last ? texts.slice(0, -1) : texts;
  if (steps.some((text) => /[;\r\n]/.test(text))) return undefined;
  const method = steps.map((text) => text.replace(/\.$/, "").replace(/^./u, (letter) => letter.toLowerCase()));
  return { method, ...(last && { glass: last[1]! }) };
}

function isA(node: Node, type: string): boolean {
  return listOf(node["@type"]).some((one) => typeof one === "string" && one.replace(/^(?:https?:\/\/schema\.org\/|schema:)/, "") === type);
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
