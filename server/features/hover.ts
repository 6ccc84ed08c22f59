/** What the cursor is on, computed. Answers `undefined` where there is nothing to say; an unknown name is a rule's business. */
import type { Hover, Position } from "vscode-languageserver-types";
import { type EntryKind, findField } from "../../grammar/fields.ts";
import { type FieldLine, type Item, isOwnKind, type Name, type Pour, type Span } from "../../grammar/tree.ts";
import { amountOf } from "../house/amounts.ts";
import type { SpecDocument } from "../house/document.ts";
import { assessDrink } from "../house/drink.ts";
import type { House } from "../house/house.ts";
import { type Ingredient, ingredientOf } from "../house/ingredient.ts";
import { menuEntryOf } from "../house/menu.ts";
import { stepsOf } from "../house/method.ts";
import type { FlatPour } from "../house/riff.ts";
import type { Scope } from "../house/scope.ts";
import { type Settings, settingsOf } from "../house/settings.ts";
import type { Measure } from "../house/show.ts";
import { showPour } from "../house/show-pour.ts";
import { entryWords } from "./entry-words.ts";
import { describeAmount } from "./hovers/amount.ts";
import { describeDirective } from "./hovers/directive.ts";
import { describeEntry } from "./hovers/entry.ts";
import { describeField } from "./hovers/field.ts";
import { describeModifier } from "./hovers/modifier.ts";
import { describePour } from "./hovers/pour.ts";
import { describePrepStep } from "./hovers/prep.ts";
import { describePrepPour } from "./hovers/prep-pour.ts";
import { describeStep, describeTechnique } from "./hovers/step.ts";
import { describeUnit } from "./hovers/unit.ts";
import { asText, bold, paragraphs } from "./markdown.ts";
import { mentionAt } from "./mentions.ts";
import { type Cursor, cursorAt, holds, rangeOnLine } from "./place.ts";

/** `units` is the editor's own wish for amounts; it changes no file. */
export function hover(house: House, document: SpecDocument, position: Position, units?: Measure["units"]): Hover | undefined {
  const cursor = cursorAt(document, position);
  if (!cursor || (cursor.text.comment && cursor.column > cursor.text.comment.start)) return undefined;
  const scope = house.scopeOf(document);
  const settings = settingsOf(house, scope);
  const said = say({ house, scope, settings, measure: { units: units ?? settings.units, ounceMl: settings.ounceMl }, cursor });
  if (!said?.text) return undefined;
  return { contents: { kind: "markdown", value: said.text }, range: rangeOnLine(position.line, said.span) };
}

interface Asked {
  readonly house: House;
  readonly scope: Scope;
  readonly settings: Settings;
  readonly measure: Measure;
  readonly cursor: Cursor;
}

interface Said {
  readonly text: string | undefined;
  readonly span: Span;
}

function say(asked: Asked): Said | undefined {
  const { content } = asked.cursor;
  switch (content.kind) {
    case "entry":
      return sayHead(asked, content.word, content.entry, content.name);
    case "field":
      return sayField(asked, content);
    case "pour":
      return sayPour(asked, content.pour);
    case "or":
      return content.pour && sayPour(asked, content.pour);
    case "swap":
      return saySwap(asked, content.readings);
    case "without":
      return content.pour?.name && sayParentPour(asked, content.pour.name);
    case "menu":
      return content.whole && sayMenuLine(asked, content.whole);
    case "text": {
      const directive = content.directives.find((one) => holds(one, asked.cursor.column));
      return directive && { text: describeDirective(asked.house, asked.scope, directive, asked.measure), span: directive };
    }
    default:
      return undefined;
  }
}

function sayHead({ cursor, house, measure }: Asked, word: Span, kind: EntryKind | undefined, name: Name | undefined): Said | undefined {
  if (!kind) return undefined;
  if (name && holds(name, cursor.column)) return { text: describeEntry(house, cursor.entry, measure), span: name };
  return holds(word, cursor.column) ? { text: `${bold(kind)} · ${entryWords[kind]}`, span: word } : undefined;
}

// Fields

function sayField(asked: Asked, field: FieldLine): Said | undefined {
  const { column, entry } = asked.cursor;
  if (!isOwnKind(entry.kind)) return undefined;
  const about: Said = { text: describeField(field.name.text, entry.kind), span: field.name };
  if (!field.value || !holds(field.value, column)) return holds(field.name, column) ? about : undefined;
  return sayValue(asked, field, entry.kind) ?? { ...about, span: field.value };
}

function sayValue(asked: Asked, field: FieldLine, kind: EntryKind): Said | undefined {
  const name = field.name.text.toLowerCase();
  const item = field.items.find((one) => holds(one, asked.cursor.column));
  if (findField(name, kind)?.shape === "steps") return item && sayStep(asked, field, item);
  const unit = item && sayUnitIn(asked, item);
  if (unit) return unit;
  const mention = mentionAt(asked.house, asked.cursor);
  return mention && { text: describeEntry(asked.house, mention.found.entry, asked.measure), span: mention.place };
}

function sayStep({ house, measure, cursor }: Asked, field: FieldLine, item: Item): Said {
  const { entry, line } = cursor;
  if (entry.kind === "drink") {
    const computed = describeStep(assessDrink(house, entry), item, measure);
    if (computed) return { text: computed, span: item };
  }
  const step = stepsOf(house, { entry, line, field }).find((one) => one.item === item);
  const text = step?.technique
    ? paragraphs(describeTechnique(step), entry.kind === "prep" && describePrepStep(house, entry, step))
    : `${bold(item.text)} · No technique that is known here: it is kept and printed, and changes no number.`;
  return { text, span: item };
}

function sayUnitIn({ cursor, settings, measure }: Asked, item: Item): Said | undefined {
  for (const quantity of item.parts.flatMap((part) => part.quantities)) {
    if (quantity.unit && holds(quantity.unit, cursor.column)) {
      return { text: describeUnit(quantity.unit.unit, settings, measure, quantity), span: quantity.unit };
    }
  }
  return undefined;
}

// Pours

function sayPour(asked: Asked, pour: Pour): Said | undefined {
  const { house, scope, settings, measure, cursor } = asked;
  const { name, quantity } = pour;
  const ingredient = name && ingredientOf(house, scope, name);
  if (quantity?.unit && holds(quantity.unit, cursor.column)) {
    return { text: describeUnit(quantity.unit.unit, settings, measure, quantity, ingredient?.facts), span: quantity.unit };
  }
  const modifier = ingredient?.resolution.modifiers.find((one) => holds(one, cursor.column));
  const flat = cursor.entry.kind === "drink" ? assessDrink(house, cursor.entry) : undefined;
  const mine = flat?.flat.pours.find((one) => one.entry === cursor.entry && one.line === cursor.line);
  const whole = mine && flat ? describePour(house, flat, mine, settings, measure) : undefined;
  const note = modifier && describeModifier(modifier.text, whole ? undefined : settings);
  if (note) return { text: paragraphs(note, whole), span: modifier };
  if (whole) return { text: whole, span: pour };
  if (!ingredient?.resolution.found) return undefined;
  if (cursor.entry.kind === "prep" && cursor.content.kind === "pour") {
    return { text: describePrepPour(house, cursor.entry, cursor.line, pour, ingredient, settings), span: pour };
  }
  return { text: describeLoosePour(asked, pour, ingredient), span: pour };
}

/** An `or`, or a pour that a later line takes out again: what so much of it would bring. */
function describeLoosePour({ cursor, settings }: Asked, { quantity, lead }: Pour, ingredient: Ingredient): string {
  const amount =
    quantity && amountOf(quantity, ingredient, { settings, jigger: true, part: { because: "how large a part is stands with the drink" } });
  const title = [
    bold(showPour({ ...(lead && { lead }), ...(quantity && { quantity }) }, ingredient)),
    cursor.content.kind === "or" && "instead of the pour above",
  ];
  return paragraphs(title.filter(Boolean).join(" · "), amount && describeAmount(ingredient, amount, settings, quantity));
}

function saySwap(asked: Asked, readings: readonly { readonly out: Pour; readonly in: Pour }[]): Said | undefined {
  const reading = readings.find((one) => holds(one.out, asked.cursor.column) || holds(one.in, asked.cursor.column));
  if (!reading) return undefined;
  return holds(reading.in, asked.cursor.column) ? sayPour(asked, reading.in) : reading.out.name && sayParentPour(asked, reading.out.name);
}

/** What a `swap` or a `without` takes out, as the parent pours it. */
function sayParentPour({ house, scope, settings, measure, cursor }: Asked, name: Name): Said | undefined {
  if (cursor.entry.kind !== "drink") return undefined;
  const parent = assessDrink(house, cursor.entry).flat.parent;
  const found = house.resolve(scope, ["ingredient", "drink"], name).found?.entry;
  const pour = parent?.pours.find((one: FlatPour) => found !== undefined && one.ingredient.resolution.found?.entry === found);
  if (!parent || !pour) return undefined;
  const before = describePour(house, assessDrink(house, parent.entry), pour, settings, measure);
  return { text: paragraphs(`In ${asText(parent.entry.name?.text ?? "its parent")}, until this takes it out:`, before), span: name };
}

function sayMenuLine({ house, scope, measure, cursor }: Asked, whole: Name): Said | undefined {
  if (cursor.content.kind !== "menu") return undefined;
  const found = menuEntryOf(house, scope, cursor.content);
  return found && { text: describeEntry(house, found.entry, measure), span: holds(found.name, cursor.column) ? found.name : whole };
}
