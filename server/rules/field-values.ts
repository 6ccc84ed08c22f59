/** What is wrong with a field's value, by the shape that the table of fields gives it. */
import { isCurrencyCode } from "../../grammar/currencies.ts";
import { allergenWords, type EntryKind, type Field, type Shape, stockKinds } from "../../grammar/fields.ts";
import type { FieldLine, Words } from "../../grammar/tree.ts";
import { allergensNamedIn } from "../house/allergen-words.ts";
import { nearestOf } from "../house/nearest.ts";
import { severities } from "../house/settings.ts";
import { showList } from "../house/show.ts";
import {
  isNone,
  isWrong,
  onlyPart,
  type Read,
  readContent,
  readDate,
  readPercent,
  readPrice,
  readQuantity,
  readTemperature,
  readWindow,
  type Wrong,
  wrongValue,
} from "../house/values.ts";

/** The first thing wrong with the value; absent where it reads, is empty, or is `none`. */
export function findWrong(field: Field, line: FieldLine, kind: EntryKind): Wrong | undefined {
  if (!line.value || isNone(line)) return undefined;
  return byName[field.name]?.(field, line, kind) ?? byShape[field.shape]?.(field, line, kind);
}

type Check = (field: Field, line: FieldLine, kind: EntryKind) => Wrong | undefined;

const byShape: Partial<Record<Shape, Check>> = {
  percent: ({ example }, line) => share(line, example),
  temperature: ({ example }, line) => wrongIn(readTemperature(line, example, "")),
  content: ({ example }, line) => wrongIn(readContent(line, example, "")),
  window: ({ example }, line) => wrongIn(readWindow(line, example)),
  price: ({ example }, line, kind) => price(line, example, kind),
  date: (_field, line) => wrongIn(readDate(line)),
  yesno: (_field, line) => oneOf(line.value!, ["yes", "no", "true", "false"]),
  choice: ({ name, choices = [] }, line, kind) => oneOf(line.value!, name === "status" ? statusOf(kind) : choices),
  words: ({ choices }, line) =>
    choices &&
    firstWrong(
      line.items.flatMap((item) => item.parts),
      (part) => (choices === allergenWords ? allergen(part) : oneOf(part, choices)),
    ),
  quantity: ({ name, example }, line) => quantity(line, example, unitsOf[name]),
  severity: ({ example }, line) => severity(line, example),
};

/** Fields whose shape alone does not tell. */
const byName: Readonly<Record<string, Check>> = {
  country: (_field, line) => pattern(line, /^[a-z]{2}$/i, "A country stands here by its two letters, such as `GB`."),
  currency: (_field, line) =>
    isCurrencyCode(line.value!.text.toUpperCase())
      ? undefined
      : wrongValue(line, `“${line.value!.text}” is no currency in use.`, "Write its three letters, such as `GBP`."),
  ounce: ({ example }, line) => (/^(?:us|imperial)$/i.test(line.value!.text) ? undefined : quantity(line, example, unitsOf.ounce)),
  keeps: ({ example }, line) =>
    firstWrong(line.items, (item) =>
      item.parts.some(({ quantities }) => quantities.some(({ unit }) => unit?.unit.dimension === "time"))
        ? undefined
        : { ...item, wrong: "This says no time.", todo: `Write it as \`${example}\`.` },
    ),
  each: ({ example }, line) => firstWrong(line.items, (item) => sized(item, example)),
  order: (_field, line) =>
    firstWrong(
      line.items.flatMap((item) => item.parts),
      (part) => oneOf(part, stockKinds),
    ),
  yield: ({ example }, line) => firstWrong(line.items, (item) => sized(item, example)),
};

/** The units that a field's amount may have; an empty string stands for none. */
export const unitsOf: Readonly<Record<string, readonly string[]>> = {
  ounce: ["ml", "cl"],
  jigger: ["ml", "cl", "oz"],
  bottle: ["ml", "cl", "dl", "l", "oz"],
  dash: ["ml", "cl", "oz"],
  barspoon: ["ml", "cl", "oz", "tsp"],
  drop: ["ml", "cl"],
  splash: ["ml", "cl", "oz"],
  pinch: ["g", "mg"],
  "serve limit": ["g"],
  holds: ["ml", "cl", "dl", "l", "oz", "pint"],
  weight: ["g", "kg", "oz wt"],
  density: ["", "g/ml"],
  brix: ["", "brix"],
  ph: [""],
  serves: [""],
  total: ["ml", "cl", "dl", "l", "oz", "g", "kg"],
  part: ["ml", "cl", "oz", "g"],
};

function quantity(line: FieldLine, example: string, allowed: readonly string[] | undefined): Wrong | undefined {
  const read = readQuantity(line, example);
  if (isWrong(read)) return read;
  const { unit, numeral } = read.value;
  if (!allowed || allowed.includes(unit?.unit.id ?? "")) return undefined;
  const at = unit ?? numeral;
  const wrong = unit ? `“${unit.text}” does not measure this.` : "This amount has no unit.";
  return { start: at.start, end: at.end, wrong, todo: `Write it as \`${example}\`.` };
}

/** What is bought has a price for so much of it; a drink is sold whole. */
function price(line: FieldLine, example: string, kind: EntryKind): Wrong | undefined {
  const read = readPrice(line, example);
  if (isWrong(read)) return read;
  if (kind === "drink" || read.value.per) return undefined;
  return wrongValue(line, "This does not say how much it buys.", `Write it as \`${example}\`.`);
}

function share(line: FieldLine, example: string): Wrong | undefined {
  const read = readPercent(line, example, "");
  if (isWrong(read)) return read;
  return read.value.value <= 100 ? undefined : wrongValue(line, "A share is never more than 100 %.", `Write it as \`${example}\`.`);
}

/** Drinks are drafted and retired, stock runs out. */
export function statusOf(kind: EntryKind): readonly string[] {
  return kind === "drink" ? ["draft", "live", "retired"] : ["in", "out"];
}

/** A word that names one all the same is never lost, and is no whole answer. */
function allergen(words: Words): Wrong | undefined {
  const wrong = oneOf(words, allergenWords);
  const named = wrong ? allergensNamedIn(words.text) : [];
  if (!wrong || named.length === 0) return wrong;
  return { ...wrong, counts: `It counts as ${showList(named)}, and the rest as not stated.`, instead: [named.join(", ")] };
}

function oneOf(words: Words, known: readonly string[]): Wrong | undefined {
  if (known.some((one) => one.toLowerCase() === words.text.toLowerCase())) return undefined;
  const { start, end, text } = words;
  const near = nearestOf(text, known);
  return { start, end, wrong: `“${text}” is none of the words that stand here.`, todo: `Known: ${known.join(", ")}.`, instead: near };
}

function severity(line: FieldLine, example: string): Wrong | undefined {
  const words = onlyPart(line)?.text.split(/\s+/) ?? [];
  const level = words[1];
  if (words.length !== 2 || !level) return wrongValue(line, "A rule's code and how loud it is stand here.", `Write it as \`${example}\`.`);
  const end = line.value!.end;
  return oneOf({ start: end - level.length, end, text: level }, severities);
}

function pattern(line: FieldLine, wanted: RegExp, wrong: string): Wrong | undefined {
  return wanted.test(line.value!.text) ? undefined : wrongValue(line, wrong, "Write it so.");
}

function sized(item: FieldLine["items"][number], example: string): Wrong | undefined {
  const size = item.parts[0]?.quantities[0]?.unit?.unit;
  if (size?.ml || size?.g) return undefined;
  return { start: item.start, end: item.end, wrong: "This says neither a weight nor a volume.", todo: `Write it as \`${example}\`.` };
}

function wrongIn(read: Read<unknown>): Wrong | undefined {
  return isWrong(read) ? read : undefined;
}

function firstWrong<T>(all: readonly T[], check: (one: T) => Wrong | undefined): Wrong | undefined {
  for (const one of all) {
    const wrong = check(one);
    if (wrong) return wrong;
  }
  return undefined;
}
