/** How a recipe is made, in sentences: from its method's steps, and from what its pours say of the glass. */
import type { Entry, Quantity, Words } from "../../../grammar/tree.ts";
import { isHot } from "../chilling.ts";
import { assessDrink } from "../drink.ts";
import { type FieldAt, findFieldIn } from "../entry.ts";
import type { House } from "../house.ts";
import { iceNamedIn, type Step, stepsOf, techniqueWords } from "../method.ts";
import { has } from "../modifiers.ts";
import { paragraphsOf } from "../prose.ts";
import { type FlatDrink, flatten } from "../riff.ts";
import { settingsOf } from "../settings.ts";
import { capital, showList } from "../show.ts";
import { isNone } from "../values.ts";
import { type MethodWords, wordsOf } from "./method-words.ts";
import { glassPhrase, sayQuantity, withAmounts, withArticle } from "./phrases.ts";
import type { BookStyle, Numbers } from "./style.ts";

export interface Making {
  readonly form: "sentences" | "steps";
  /** Paragraphs, or one text for each step. */
  readonly texts: readonly string[];
}

/** The method as the book tells it. What somebody wrote in sentences goes before what is put together here. */
export function makingOf(house: House, entry: Entry, style: BookStyle): Making {
  const form = style.method;
  const written = paragraphsOf(entry, "steps");
  if (written.length > 0) return { form, texts: form === "steps" ? written.flatMap(sentencesIn) : written };
  const sentences = entry.kind === "drink" ? ofDrink(house, entry, style) : stepsIn(house, findFieldIn(entry, "method"), style);
  if (sentences.length === 0) return { form, texts: [] };
  return { form, texts: form === "steps" ? sentences : [sentences.join(" ")] };
}

/** As it was made, to stand in a sentence: `shaken for 12 seconds and fine-strained`. Empty where no method is stated. */
export function madeHow(house: House, entry: Entry, style: BookStyle, numbers: Numbers): string {
  const field = entry.kind === "drink" ? flatten(house, entry).field("method") : findFieldIn(entry, "method");
  if (!field || isNone(field.field)) return "";
  const steps = stepsOf(house, field).map((step) => {
    const { words, rest } = taken(step, style, numbers);
    return words ? words.done + rest : rest;
  });
  return oneLine(showList(steps, steps.length));
}

function sentencesIn(paragraph: string): string[] {
  return paragraph.split(/(?<=[.!?])\s+(?=\p{Lu})/u);
}

function stepsIn(house: House, method: FieldAt | undefined, style: BookStyle): string[] {
  if (!method || isNone(method.field)) return [];
  return stepsOf(house, method).map((step) => {
    const { words, rest } = taken(step, style, style.numbers);
    return sentence(words ? words.tell + rest : rest);
  });
}

function ofDrink(house: House, entry: Entry, style: BookStyle): string[] {
  const flat = flatten(house, entry);
  const method = flat.field("method");
  const steps = method ? stepsOf(house, method) : [];
  const glass = flat.field("glass");
  const noun = glass ? glassPhrase(glass.field, style) : "";
  const at = noun && !namesGlass(steps, noun) ? placeOfGlass(steps) : -1;
  const ice = iceFor(house, entry, flat);
  const muddled = namesOf(flat.pours.filter(({ modifiers }) => has(modifiers, "muddled")));
  const hot = assessDrink(house, entry).plan.pours.some(isHot);
  const told = steps.map((step, index) => {
    const { words, rest } = taken(step, style, style.numbers);
    if (!words) return rest;
    if (step.technique!.id === "muddle" && !rest.trim() && muddled) return `${words.tell} the ${muddled}`;
    const into = index === at ? ` ${poursOut(step) ? "into" : "in"} ${withArticle(noun)}` : "";
    const cold = words.ice && !iceNamedIn(step.item) && !(hot && gentle.has(step.technique!.id)) ? ` ${words.ice} ${ice}` : "";
    return words.tell + (poursOut(step) ? into + rest : behindFirst(rest, cold + into));
  });
  const unplaced =
    noun && at < 0 && steps.length > 0 && !namesGlass(steps, noun) && !steps.some(isServed) ? [`pour into ${withArticle(noun)}`] : [];
  const { before, after } = aroundGlass(flat, steps);
  if (told.length === 0) return [];
  return [...before, ...told, ...unplaced, ...after].map(sentence);
}

/** A step's verb, and what stands behind it with its amounts in the book's words; without a technique all of it is the rest. */
function taken({ item }: Step, style: BookStyle, numbers: Numbers): { words?: MethodWords; rest: string } {
  const found = techniqueWords(item.text);
  const quantities = item.parts.flatMap((part) => part.quantities);
  const say = (quantity: Quantity) => inStep(item, quantity, style, numbers);
  if (!found) return { rest: withIceArticle(withAmounts(item, quantities, say)) };
  const length = lengthOf(item.text, found.words);
  const behind = { text: item.text.slice(length), start: item.start + length, end: item.end };
  const inside = quantities.filter(({ start }) => start >= behind.start);
  return { words: wordsOf(found.words, found.technique.words[0]!), rest: withIceArticle(withAmounts(behind, inside, say)) };
}

/** Of the first words of a text, however many blanks part them there. */
function lengthOf(text: string, words: string): number {
  let length = 0;
  for (const word of words.split(" ")) length = text.indexOf(word, length) + word.length;
  return length;
}

/** `12 s` is `for 12 seconds`, `130 g cubed ice` is `130 g of cubed ice`, `25 %` of a dilution is water. */
function inStep({ text, start }: Words, quantity: Quantity, style: BookStyle, numbers: Numbers): string | undefined {
  const said = sayQuantity(quantity, style, numbers);
  const unit = quantity.unit?.unit;
  if (said === undefined || !unit) return said;
  const before = text.slice(0, quantity.start - start).trimEnd();
  const behind = text.slice(quantity.end - start).trimStart();
  if (unit.dimension === "time") return prepositions.test(before) ? said : `for ${said}`;
  if (unit.id === "%" && /^pre-dilute$/i.test(before)) return `with ${said} of its volume in water`;
  const names = /^[a-z]/i.test(behind) && !/^(?:of|or|and|in|at|for)\b/i.test(behind);
  return (unit.dimension === "mass" || unit.dimension === "volume") && names ? `${said} of` : said;
}
const prepositions = /\b(?:for|after|every|within|of|in|another|at least|up to|to|over|a further)$/i;

/** `over large cube` is `over a large cube`. */
function withIceArticle(text: string): string {
  return text.replace(/\b(over|on|with) ((?:[a-z-]+ )*(?:cube|block|sphere|spear))\b/gi, (whole, word: string, noun: string) =>
    /^(?:an?|one|the|each|another)\b/i.test(noun) ? whole : `${word} ${withArticle(noun)}`,
  );
}

/** The step that brings the drink into its glass: the last that strains or tips it there, else the first that is made in it. */
function placeOfGlass(steps: readonly Step[]): number {
  const last = steps.findLastIndex(poursOut);
  return last >= 0 ? last : steps.findIndex(({ technique }) => technique?.iceInGlass);
}

function poursOut({ technique }: Step): boolean {
  return technique !== undefined && (technique.process?.strains === true || technique.id === "dump");
}

/** A step in somebody's own words that pours the drink already. */
function isServed({ technique, item }: Step): boolean {
  return !technique && /^(?:pour|serve)\b/i.test(item.text);
}

/** Whether a step names the glass itself. */
function namesGlass(steps: readonly Step[], noun: string): boolean {
  const last = noun.split(" ").at(-1)!.toLowerCase();
  return steps.some(({ item }) => item.text.toLowerCase().includes(last));
}

/** The ice that is meant where a step names none. */
function iceFor(house: House, entry: Entry, flat: FlatDrink): string {
  const named = flat.field("ice")?.field.value?.text ?? settingsOf(house, house.scopeOf(entry)).ice;
  return /(?:ice|s)$/i.test(named) ? named : withArticle(named);
}

/** What is hot and only built or stirred meets no ice but that which is named. */
const gentle: ReadonlySet<string> = new Set(["build", "stir"]);

/** What is done to the glass before, and on top of the drink after, where no step says so. */
function aroundGlass(flat: FlatDrink, steps: readonly Step[]): { before: string[]; after: string[] } {
  const does = (...ids: string[]) => steps.some(({ technique }) => technique && ids.includes(technique.id));
  const says = (name: string) => steps.some(({ item }) => item.text.toLowerCase().includes(name.toLowerCase()));
  const unsaid = flat.pours.filter(({ ingredient, modifiers }) => !says(ingredient.resolution.text) && !has(modifiers, "optional"));
  const rinsing = does("rinse") ? [] : unsaid.filter(({ lead }) => lead?.lead === "rinse");
  const rims = rimsOf(flat, unsaid);
  const muddled = does("muddle") ? [] : unsaid.filter(({ modifiers }) => has(modifiers, "muddled"));
  const floated = does("float", "layer") ? [] : unsaid.filter(({ modifiers }) => has(modifiers, "floated"));
  const late = ({ stage, lead, modifiers }: (typeof unsaid)[number]) =>
    stage === "after" && lead?.lead !== "rinse" && !["floated", "to rim", "discarded"].some((word) => has(modifiers, word));
  const topping = does("top", "layer") ? [] : unsaid.filter(late);
  const emptied = rinsing.some(({ modifiers }) => has(modifiers, "discarded")) ? " and pour it away" : "";
  return {
    before: [
      ...rims,
      ...(rinsing.length > 0 ? [`rinse the glass with ${namesOf(rinsing)}${emptied}`] : []),
      ...(muddled.length > 0 ? [`muddle the ${namesOf(muddled)}`] : []),
    ],
    after: [
      ...(topping.length > 0 ? [`top with ${namesOf(topping)}`] : []),
      ...(floated.length > 0 ? [`float the ${namesOf(floated)} on top`] : []),
    ],
  };
}

function namesOf(pours: FlatDrink["pours"]): string {
  const names = pours.map(({ ingredient }) => ingredient.resolution.text);
  return showList(names, names.length);
}

function rimsOf(flat: FlatDrink, unsaid: FlatDrink["pours"]): string[] {
  const items = flat.field("rim")?.field.items ?? [];
  const poured = unsaid.filter(({ modifiers }) => has(modifiers, "to rim"));
  const names = [
    ...items.map(({ parts }) => parts[0]?.text ?? ""),
    ...(items.length > 0 ? [] : poured.map((one) => one.ingredient.resolution.text)),
  ];
  if (names.length === 0) return [];
  const part = items.some(({ parts }) => parts.some(({ text }) => /^half\b/i.test(text))) ? "half of the rim" : "the rim";
  return [`coat ${part} with ${showList(names, names.length)}`];
}

/** Before what a comma adds: `shake with cubed ice, hard`. */
function behindFirst(rest: string, more: string): string {
  const comma = rest.indexOf(",");
  return comma < 0 ? rest + more : rest.slice(0, comma) + more + rest.slice(comma);
}

function oneLine(text: string): string {
  return text.trim().replace(/\s+/g, " ");
}

function sentence(text: string): string {
  const whole = capital(oneLine(text));
  return /[.!?]$/.test(whole) ? whole : `${whole}.`;
}
