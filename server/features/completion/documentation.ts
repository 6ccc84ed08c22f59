/** The documentation of an item, in a line or two: worked out only for the item that the cursor rests on. */
import type { CompletionItem } from "vscode-languageserver-types";
import { type EntryKind, findField } from "../../../grammar/fields.ts";
import { findUnit } from "../../../grammar/units.ts";
import { standardDrinks } from "../../engine/standard-drinks.ts";
import { findTechnique } from "../../engine/techniques.ts";
import { sizeOf } from "../../house/amounts.ts";
import { directiveRows } from "../../house/book/directives.ts";
import { namesOf } from "../../house/declarations.ts";
import type { House } from "../../house/house.ts";
import { modifiers } from "../../house/modifiers.ts";
import { fold, type NameClass } from "../../house/names.ts";
import type { Scope } from "../../house/scope.ts";
import { type Settings, settingsOf } from "../../house/settings.ts";
import { capital, showNumber, showTemperature, showVolume, showWeight } from "../../house/show.ts";
import { usageOf } from "../../house/usage.ts";
import { rules } from "../../rules/all.ts";
import { entryWords } from "../entry-words.ts";
import { asText } from "../markdown.ts";
import { type Data, readData, type What } from "./about.ts";
import { inBrief } from "./entries-in-brief.ts";
import { glassWords } from "./glass-words.ts";
import { countryNames, currencyNames } from "./platform.ts";
import { places } from "./temperatures.ts";
import { lineWords, wordsIn } from "./words.ts";

/** The item with what there is to say about it; as it came where it is none of ours, or out of date. */
export function documented(house: House, item: CompletionItem): CompletionItem {
  const data = readData(item.data);
  const document = data && house.document(data.uri);
  const say = data && says[data.what];
  if (!data || !document || !say) return item;
  const scope = house.scopeOf(document);
  const { detail, text } = say({ ...data, house, scope, settings: settingsOf(house, scope) });
  return { ...item, ...(detail && { detail }), ...(text && { documentation: { kind: "markdown", value: text } }) };
}

interface Told extends Data {
  readonly house: House;
  readonly scope: Scope;
  readonly settings: Settings;
}

/** `detail` is plain and short, `text` is Markdown. */
interface Said {
  readonly detail?: string | undefined;
  readonly text?: string | undefined;
}

const says: Readonly<Record<What, (told: Told) => Said>> = {
  "entry word": ({ name }) => ({ text: entryWords[name as EntryKind] }),
  field: ({ name, of }) => {
    const field = findField(name, of as EntryKind);
    return field ? { detail: `${name}: ${field.example}`, text: field.doc } : {};
  },
  word: ({ name }) => ({ text: lineWords[name] }),
  unit: sayUnit,
  modifier: ({ name, settings }) => ({
    ...hereIs(settings, name),
    text: name === "at" ? "At the degrees that follow: `at -18 C`." : modifiers.find(({ word }) => word === name)?.doc,
  }),
  "glass word": ({ name, settings }) => ({
    ...(name === "warm" ? {} : hereIs(settings, name)),
    text: glassWords.find(({ word }) => word === name)?.doc,
  }),
  technique: ({ name }) => ({ text: findTechnique(name)?.doc }),
  step: ({ name, of = "" }) => ({ detail: `${of} ${name}`, text: findTechnique(of)?.doc }),
  country: sayCountry,
  currency: ({ name }) => ({ text: currencyNames.of(name) }),
  choice: sayChoice,
  rule: ({ name }) => {
    const rule = rules.find(({ code }) => code === name);
    return rule ? { detail: `${rule.severity}: ${rule.docs.title}`, text: firstSentence(rule.docs.why) } : {};
  },
  severity: ({ name }) => ({ text: wordsIn("house severity", name) }),
  temperature: ({ name }) => {
    const place = places.find(({ setting }) => setting === name);
    return { text: place && `As warm as it is here: ${place.place === "hot" ? "what is poured hot" : `the ${place.place}`}.` };
  },
  written: sayWritten,
  ingredient: (told) => sayEntry(told, "ingredient"),
  drink: (told) => sayEntry(told, "drink"),
  family: (told) => sayEntry(told, "family"),
  glass: (told) => sayEntry(told, "glass"),
  ice: (told) => sayEntry(told, "ice"),
  menu: (told) => sayEntry(told, "menu"),
  book: (told) => sayEntry(told, "book"),
  directive: ({ name }) => {
    const row = directiveRows.find((one) => one.name === name);
    return row ? { detail: row.example, text: row.doc } : {};
  },
};

function sayUnit({ name, settings }: Told): Said {
  const unit = findUnit(name);
  if (!unit) return {};
  const { value } = sizeOf(unit, undefined, settings);
  if (!unit.bar) return { detail: name === "oz" ? `${showNumber(settings.ounceMl)} ml here` : undefined, text: unit.doc };
  const size = unit.dimension === "mass" ? showWeight(value) : showVolume(value, { units: "ml", ounceMl: 1 });
  return { detail: `${size} here`, text: unit.doc };
}

/** What a word of warmth comes to in this house. */
function hereIs(settings: Settings, word: string): Said {
  const place = places.find((one) => one.word === word);
  return place ? { detail: `${showTemperature(settings[place.setting].value)} here` } : {};
}

function sayCountry({ name }: Told): Said {
  const drink = standardDrinks.find(({ country }) => country === name);
  return { detail: countryNames.of(name), text: drink && `Counts in ${drink.word}s of ${showWeight(drink.grams)} of alcohol.` };
}

/** A closed word: what it means here, else what its field is for. */
function sayChoice({ name, of = "", house, scope, settings }: Told): Said {
  const [kind = "", ...field] = of.split(" ");
  const place = of.endsWith(" stored") ? places.find((one) => one.place === name) : undefined;
  const kindly = of === "stock kind" ? house.lookup(scope, "ingredient", name).find(({ entry }) => house.isLarder(entry)) : undefined;
  if (kindly) return { text: `Where nobody says otherwise: ${asText(inBrief(house, kindly.entry))}.` };
  const text = wordsIn(of, name) ?? findField(field.join(" "), kind as EntryKind)?.doc;
  return { ...(place && { detail: `${showTemperature(settings[place.setting].value)} here` }), text };
}

function sayWritten({ name, of = "", house, scope }: Told): Said {
  const fixed = wordsIn("written", of);
  if (fixed) return { text: fixed };
  const [kind = "drink", ...field] = of.split(" ");
  const count = usageOf(house, scope)
    .words(kind as EntryKind, field.join(" "))
    .find(([text]) => text === name)?.[1];
  return count ? { text: `Written ${count === 1 ? "once" : times(count, "time")} in this house.` } : {};
}

/** What it is, then how often it is poured. The nearest of the name, as the line will mean it. */
function sayEntry({ house, scope, name }: Told, nameClass: NameClass): Said {
  const found = house.find(scope, nameClass, name);
  if (!found) return {};
  const { entry } = found;
  const calls = found.alias ? entry.name && `Another name of ${asText(entry.name.text)}.` : undefined;
  const origin = house.isLarder(entry) ? "From the larder." : undefined;
  const brief = asText(capital(inBrief(house, entry)));
  const texts = [
    calls,
    brief && `${brief}.`,
    nameClass === "ingredient" ? pouredHow(house, scope, namesOf(entry).map(fold)) : undefined,
    origin,
  ];
  return { detail: house.isLarder(entry) ? "larder" : entry.kind, text: texts.filter(Boolean).join(" ") };
}

/** `Poured in 14 drinks and 2 preps, most often 22.5 ml.` */
function pouredHow(house: House, scope: Scope, calls: readonly string[]): string | undefined {
  const usage = usageOf(house, scope);
  const [drinks, preps] = [usage.poured("drink", calls), usage.poured("prep", calls)];
  const where = [drinks.count > 0 && times(drinks.count, "drink"), preps.count > 0 && times(preps.count, "prep")]
    .filter(Boolean)
    .join(" and ");
  const amount = drinks.count > 0 ? drinks.amount : preps.amount;
  return where
    ? `Poured in ${where}${amount ? `, ${drinks.count + preps.count > 1 ? "most often " : ""}${asText(amount)}` : ""}.`
    : undefined;
}

function firstSentence(text: string): string {
  return /^.*?[.:](?=\s|$)/.exec(text)?.[0] ?? text;
}

function times(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}
