/** Every amount of an entry times a factor, wherever it is written. */
import type { Content, Entry, FieldLine, Quantity } from "../../../grammar/tree.ts";
import { type FieldAt, findFieldIn } from "../../house/entry.ts";
import type { Edit, Fix } from "../../house/finding.ts";
import { garnishIn } from "../../house/garnish.ts";
import type { House } from "../../house/house.ts";
import { ingredientOf } from "../../house/ingredient.ts";
import { stepsOf } from "../../house/method.ts";
import { isNone, isWrong, onlyPart, readPrice, readQuantity } from "../../house/values.ts";
import { addField } from "../conversions/parts.ts";
import { writtenExactly } from "../conversions/units.ts";
import type { Refusal } from "../rename.ts";
import { type Times, timesAmount, timesNoun } from "./amounts.ts";

/** All amounts of the entries, a drink and its riffs; a riff that counts its serves by itself is left to a person. */
export function scaled(
  house: House,
  entries: readonly [Entry, ...Entry[]],
  times: Times,
  serves: number | undefined,
): Fix["edits"] | Refusal {
  const [entry, ...riffs] = entries;
  const own = riffs.find((riff) => findFieldIn(riff, "serves"));
  if (own) return { because: `“${own.name?.text}” is a riff of it and says \`serves:\` itself. Flatten it into a drink of its own first.` };
  const edits = entries.flatMap((one) => one.lines.flatMap(({ content }, line) => timesLine(house, one, line, content, times)));
  return [...edits, ...servesEdit(entry, serves)];
}

function timesLine(house: House, entry: Entry, line: number, content: Content, times: Times): Edit[] {
  const scope = house.scopeOf(entry);
  switch (content.kind) {
    case "pour":
    case "or": {
      const { quantity, name } = content.pour ?? {};
      if (!quantity) return [];
      const { start, end } = name ? ingredientOf(house, scope, name).resolution : quantity;
      const noun = name && !name.quoted && timesNoun(house, scope, { entry, line, name: { start, end } }, quantity, times);
      return [...timesOne(entry, line, quantity, times), ...(noun ? [noun] : [])];
    }
    case "swap": {
      const [reading] = content.readings;
      return reading ? [reading.out, reading.in].flatMap(({ quantity }) => timesOne(entry, line, quantity, times)) : [];
    }
    case "without":
      return timesOne(entry, line, content.pour?.quantity, times);
    case "field":
      return timesField(house, { entry, line, field: content }, times);
    default:
      return [];
  }
}

/** What is stated for all serves together: the size of parts, ice in the vessel, garnish, what the guest pays, what a batch makes. */
function timesField(house: House, { entry, line, field }: FieldAt, times: Times): Edit[] {
  if (isNone(field)) return [];
  const name = field.name.text.toLowerCase();
  const quantity = onlyPart(field)?.quantity;
  if (name === "total" || name === "part") return timesOne(entry, line, quantity, times);
  if (name === "yield") return field.items.slice(0, 1).flatMap(({ parts }) => timesOne(entry, line, parts[0]?.quantities[0], times));
  if (name === "price") return timesPrice(entry, line, field, times);
  if (name === "method" && entry.kind === "drink") return timesIce(house, { entry, line, field }, times);
  if (name !== "garnish" && name !== "rim") return [];
  const scope = house.scopeOf(entry);
  return field.items.flatMap((item) => {
    const { quantity: amount, name: text } = garnishIn(house, scope, item);
    const end = item.parts[0]?.end ?? 0;
    const noun = amount && timesNoun(house, scope, { entry, line, name: { start: end - text.length, end } }, amount, times);
    return [...timesOne(entry, line, amount, times), ...(noun ? [noun] : [])];
  });
}

/** Parts stay: how large one is, a field says. */
function timesOne(entry: Entry, line: number, quantity: Quantity | undefined, times: Times): Edit[] {
  const edit = quantity?.unit?.unit.dimension === "part" ? undefined : quantity && timesAmount(entry, line, quantity, times);
  return edit ? [edit] : [];
}

/** Ice in the vessel is for all serves, that in a glass is each one's. */
function timesIce(house: House, at: FieldAt, times: Times): Edit[] {
  const shared = stepsOf(house, at).filter(({ technique, ice }) => technique?.chill && !technique.iceInGlass && ice?.plan.massG);
  const amounts = shared.flatMap(({ item }) => item.parts.flatMap(({ quantities }) => quantities));
  const ofIce = amounts.filter(({ unit }) => !unit || iceMeasures.has(unit.unit.dimension));
  return ofIce.flatMap((quantity) => timesOne(at.entry, at.line, quantity, times));
}
const iceMeasures: ReadonlySet<string> = new Set(["mass", "volume", "piece"]);

function timesPrice(entry: Entry, line: number, field: FieldLine, { factor }: Times): Edit[] {
  const read = readPrice(field, "12.50");
  const number = /\d+(?:\.(\d+))?/.exec(field.value?.text ?? "");
  if (isWrong(read) || !number) return [];
  const start = field.value!.start + number.index;
  const amount = read.value.amount * factor;
  const decimals = number[1]?.length ?? (Number.isInteger(amount) ? 0 : 2);
  return [{ entry, line, start, end: start + number[0].length, text: amount.toFixed(decimals) }];
}

/** How many the pours of a drink are for. */
export function servesIn(entry: Entry): number {
  const at = findFieldIn(entry, "serves");
  const read = at && readQuantity(at.field, "1");
  return read && !isWrong(read) && read.value.value! > 0 ? read.value.value! : 1;
}

function servesEdit(entry: Entry, serves: number | undefined): Edit[] {
  if (serves === undefined) return [];
  const text = writtenExactly(serves, "ml");
  const at = findFieldIn(entry, "serves");
  if (!at) return [addField(entry, `serves: ${text}`)];
  const { start, end } = at.field.value ?? { start: at.field.name.end + 1, end: at.field.name.end + 1 };
  return [{ entry, line: at.line, start, end, text: at.field.value ? text : ` ${text}` }];
}
