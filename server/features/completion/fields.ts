/** Values by field: the words that a field takes, what is declared, what stands in the same field elsewhere, units behind a number. */
import { CompletionItemKind } from "vscode-languageserver-types";
import { currencyCodes } from "../../../grammar/currencies.ts";
import { type EntryKind, type Field, findField } from "../../../grammar/fields.ts";
import type { FieldLine } from "../../../grammar/tree.ts";
import { findUnit } from "../../../grammar/units.ts";
import { acidKinds, sugarNames } from "../../engine/plan.ts";
import { standardDrinks } from "../../engine/standard-drinks.ts";
import { pathFrom } from "../../house/book/chapter-files.ts";
import { findFieldIn } from "../../house/entry.ts";
import { type Settings, settingsOf, severities } from "../../house/settings.ts";
import { rules } from "../../rules/all.ts";
import { statusOf } from "../../rules/field-values.ts";
import { namedIn } from "../mentions.ts";
import type { About } from "./about.ts";
import { behindNumber } from "./field-units.ts";
import { glassWords } from "./glass-words.ts";
import { namesFor } from "./names.ts";
import { type Asked, type Group, inOrder, lineEnd, listEnd, near, type Offer } from "./offer.ts";
import { countryNames, currencyNames } from "./platform.ts";
import { inMethod } from "./steps.ts";
import { temperaturesAt } from "./temperatures.ts";
import { type ValueAt, valueAt, wordStart } from "./values.ts";

export function inField(asked: Asked, { name }: FieldLine): Group[] {
  const { entry, before } = asked;
  const kind = entry.kind as EntryKind;
  const field = findField(name.text, kind);
  if (!field || field.shape === "prose") return [];
  const from = wordStart(before, before.indexOf(":", name.end) + 1);
  if (field.shape === "steps") return inMethod(asked, from);
  if (field.shape === "name") return [{ start: from, until: lineEnd, ...namesFor(asked, namedIn[field.name] ?? [], before.slice(from)) }];
  const at = field.shape === "text" ? { start: from, part: before.slice(from), first: true, from } : valueAt(before, from);
  return behindNumber(asked, field, at) ?? tailOf(asked, field, at) ?? [headOf(asked, field, at)];
}

// Behind the first word or the amount

/** What may follow, by field: behind a text that fits. One row each. */
const tails: Readonly<Record<string, { readonly behind: RegExp; readonly offers: (asked: Asked) => Offer[] }>> = {
  severity: { behind: /^[a-z0-9-]+\s+(\w*)$/i, offers: () => inOrder(severities.map((name) => word({ what: "severity", name }))) },
  acid: {
    behind: /g\/(?:100 ?(?:ml|g)|l)\s+(\w*(?: \w*)?)$/i,
    offers: () => inOrder(["as citric", ...acidKinds].map((name) => word({ what: "choice", name, of: "stock acid" }))),
  },
  sugar: {
    behind: /g\/(?:100 ?(?:ml|g)|l)\s+(\w*)$/i,
    offers: () => sugarNames.map((name) => word({ what: "choice", name, of: "stock sugar" })),
  },
  keeps: {
    behind: /\d\s*\p{L}+\s+(\w*)$/u,
    offers: () => ["chilled", "frozen"].map((name) => word({ what: "choice", name, of: "stock keeps" })),
  },
  price: { behind: /^(?:[£$€]|[A-Z]{3} )?\d[\d.]*(?: [A-Z]{3})?\s+(\p{L}.*|)$/u, offers: perSoMuch },
};

function tailOf(asked: Asked, { name, shape }: Field, { start, part, first }: ValueAt): Group[] | undefined {
  if (name === "glass" && !first) {
    const at = temperaturesAt(asked, start);
    return [
      at ?? { start, until: listEnd, offers: inOrder(glassWords.map(({ word: name }) => wordOffer(name, { what: "glass word", name }))) },
    ];
  }
  if ((name === "garnish" || name === "rim") && !first) return [{ start, until: listEnd, offers: written(asked, `${name},`) }];
  const tail = shape === "window" ? undefined : tails[name];
  const typed = tail?.behind.exec(part)?.[1];
  if (tail && typed !== undefined) return [{ start: asked.before.length - typed.length, until: listEnd, offers: tail.offers(asked) }];
  return undefined;
}

/** What a price buys: as elsewhere in the house, then the usual sizes. A drink is sold whole. */
function perSoMuch(asked: Asked): Offer[] {
  if (asked.entry.kind === "drink") return [];
  const known = written(asked, "price per");
  const usual = ["per 700 ml", "per 1 l", "per 1 kg", "per 1"].filter((text) => !known.some(({ label }) => label === text));
  return [...known, ...usual.map((name) => word({ what: "choice", name, of: `${asked.entry.kind} price` }))];
}

// The first word

type Values = (asked: Asked, field: Field, at: ValueAt) => Offer[];

/** Fields whose shape alone does not tell. One row each. */
const byName: Readonly<Record<string, Values>> = {
  country: () => standardDrinks.map(({ country }) => named({ what: "country", name: country }, countryNames.of(country))),
  currency: () => [...currencyCodes].map((code) => named({ what: "currency", name: code }, currencyNames.of(code))),
  ounce: (_asked, field) => inOrder(["us", "imperial", field.example].map((name) => word({ what: "choice", name, of: "house ounce" }))),
  severity: () => rules.map(({ code }) => wordOffer(code, { what: "rule", name: code }, `${code} `)),
  chapters: chapterFiles,
  status: ({ entry }) => statusOf(entry.kind as EntryKind).map((name) => word({ what: "choice", name, of: `${entry.kind} status` })),
};

const byShape: Partial<Record<Field["shape"], Values>> = {
  yesno: ({ entry }, field) => ["yes", "no"].map((name) => word({ what: "choice", name, of: `${entry.kind} ${field.name}` })),
  date: ({ options }) => (options.today ? [word({ what: "written", name: options.today, of: "today" })] : []),
  window: familyWindow,
  quantity: settingNow,
  temperature: settingNow,
};

/** Where a field may say that there is none. */
const orNone: ReadonlySet<string> = new Set(["garnish", "rim", "allergens", "ratio", "serve limit"]);

function headOf(asked: Asked, field: Field, at: ValueAt): Group {
  const { entry } = asked;
  const of = `${entry.kind} ${field.name}`;
  const start = at.start + amountLength(field, at.part);
  const isWhole = at.start === at.from;
  const offers = byName[field.name]?.(asked, field, at) ?? byShape[field.shape]?.(asked, field, at) ?? [];
  let isLong = false;
  if (offers.length === 0 && field.choices) offers.push(...inOrder(field.choices.map((name) => word({ what: "choice", name, of }))));
  else if (offers.length === 0) {
    const classes = at.first ? namedIn[field.name] : undefined;
    const names = classes && namesFor(asked, classes, asked.before.slice(start));
    isLong = names?.isLong ?? false;
    const whole = written(asked, field.name);
    const there = new Set(whole.map(({ label }) => label.toLowerCase()));
    offers.push(...whole, ...(names?.offers ?? []).filter(({ label }) => !there.has(label.toLowerCase())));
  }
  if (isWhole && orNone.has(field.name) && start === at.start)
    offers.push({ ...word({ what: "choice", name: "none", of }), near: near.own });
  return { start, until: field.shape === "text" ? lineEnd : listEnd, offers: notYetThere(asked, at, offers), isLong };
}

/** A list says nothing twice. */
function notYetThere({ before, behind }: Asked, { from, start }: ValueAt, offers: readonly Offer[]): Offer[] {
  const others = `${before.slice(from, start)};${behind.replace(/^[^,;]*/, "")}`.split(/[,;]/).map((text) => text.trim().toLowerCase());
  const there = new Set(others.filter(Boolean));
  return there.size > 0 ? offers.filter(({ label }) => !there.has(label.toLowerCase())) : [...offers];
}

/** A garnish may be counted: what is named stands behind its amount. */
function amountLength({ name }: Field, part: string): number {
  if (name !== "garnish" && name !== "rim") return 0;
  const [lead = "", unit] = /^[\d./½¼¾⅓⅔]+\s+(?:(\p{L}+)\s+)?/u.exec(part) ?? [];
  return unit && !findUnit(unit) ? lead.length - unit.length - 1 : lead.length;
}

/** What stands in the same field elsewhere, the most frequent first. */
function written(asked: Asked, field: string): Offer[] {
  const { entry } = asked;
  const words = asked.usage().words(entry.kind, field);
  return words.map(([name, used]) => ({ ...word({ what: "written", name, of: `${entry.kind} ${field}` }), used }));
}

/** The Markdown texts below the book's folder in which anything is said, by name. */
function chapterFiles({ house, document }: Asked): Offer[] {
  const files = [...house.documents()].flatMap(({ uri, margins }) => (margins && pathFrom(document.uri, uri)) || []).sort();
  return inOrder(files.map((name) => word({ what: "choice", name, of: "book chapters" })));
}

/** The window of the drink's family, to start from. */
function familyWindow({ house, scope, entry }: Asked, { name }: Field): Offer[] {
  const family = findFieldIn(entry, "family")?.field.value?.text;
  const declared = family && entry.kind === "drink" ? house.lookup(scope, "family", family)[0]?.entry : undefined;
  const text = declared && findFieldIn(declared, name)?.field.value?.text;
  return text ? [word({ what: "written", name: text, of: "family" })] : [];
}

/** What holds while a house says nothing else. */
const settingsNow: Readonly<Record<string, (settings: Settings) => string>> = {
  jigger: ({ jiggerMl }) => `${jiggerMl} ml`,
  scale: ({ scaleG }) => `${scaleG} g`,
  dash: ({ bar }) => `${bar.dash!.value} ml`,
  barspoon: ({ bar }) => `${bar.barspoon!.value} ml`,
  drop: ({ bar }) => `${bar.drop!.value} ml`,
  splash: ({ bar }) => `${bar.splash!.value} ml`,
  pinch: ({ bar }) => `${bar.pinch!.value} g`,
  ambient: ({ ambientC }) => `${ambientC.value} C`,
  freezer: ({ freezerC }) => `${freezerC.value} C`,
  fridge: ({ fridgeC }) => `${fridgeC.value} C`,
  hot: ({ hotC }) => `${hotC.value} C`,
  "serve limit": ({ serveLimitG }) => (serveLimitG === undefined ? "" : `${serveLimitG} g`),
};

function settingNow({ house, scope, entry }: Asked, { name }: Field): Offer[] {
  const text = entry.kind === "house" ? settingsNow[name]?.(settingsOf(house, scope)) : undefined;
  return text ? [word({ what: "written", name: text, of: "now" })] : [];
}

function word(about: About): Offer {
  return wordOffer(about.name, about);
}

function wordOffer(label: string, about: About, text?: string): Offer {
  return { label, ...(text && { text }), kind: CompletionItemKind.EnumMember, near: near.usual, about };
}

/** Found by its code and by its name. */
function named(about: About, name: string | undefined): Offer {
  return { ...word(about), ...(name && { filter: `${about.name} ${name}` }) };
}
