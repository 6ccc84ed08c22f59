/** Inside a `method`: steps that the house makes, techniques, and what may follow the technique that is there. */
import { CompletionItemKind } from "vscode-languageserver-types";
import type { Technique } from "../../engine/technique.ts";
import { findTechnique, techniques } from "../../engine/techniques.ts";
import { plain } from "../../house/names.ts";
import { settingsOf } from "../../house/settings.ts";
import { namesFor, namesIn } from "./names.ts";
import { type Asked, type Group, inOrder, listEnd, near, type Offer } from "./offer.ts";
import { places, temperaturesAt } from "./temperatures.ts";
import { unitGroup } from "./units.ts";
import { numberAt, wordStart } from "./values.ts";

/** `from`: where the steps start. */
export function inMethod(asked: Asked, from: number): Group[] {
  const { before } = asked;
  const start = wordStart(before, Math.max(from, before.lastIndexOf(";") + 1));
  const step = techniqueIn(before.slice(start));
  return step
    ? inStep(asked, step.technique, start + step.length)
    : [{ start, until: listEnd, offers: stepsFor(asked, before.slice(from, start).trim() === "") }];
}

/** The technique that the step has, once something follows it. */
function techniqueIn(item: string): { technique: Technique; length: number } | undefined {
  const ends = [...item.matchAll(/\s/g)].map(({ index }) => index);
  for (const end of ends.slice(0, 4).reverse()) {
    const technique = findTechnique(item.slice(0, end));
    if (technique) return { technique, length: end };
  }
  return undefined;
}

/**
 * Whole steps as the house writes them, then the techniques: those that a drink, or a prep, is made by.
 * No drink's first step is to strain it.
 */
function stepsFor({ usage, entry }: Asked, isFirst: boolean): Offer[] {
  const isTooEarly = (step: string) => isFirst && entry.kind === "drink" && /^(?:fine |double )?strain\b/i.test(step);
  const written = usage().words(entry.kind, "method");
  const offers = written.slice(0, mostWritten).map(([text, used]): Offer => {
    return {
      label: text,
      kind: CompletionItemKind.Value,
      near: isTooEarly(text) ? near.last : near.usual,
      used,
      about: { what: "written", name: text, of: `${entry.kind} method` },
    };
  });
  const there = new Set(offers.map(({ label }) => plain(label)));
  for (const [index, technique] of techniques.entries()) {
    const { words } = technique;
    if (there.has(words[0]!)) continue;
    const isHere = (technique.process !== undefined) === (entry.kind === "prep");
    offers.push({
      label: words[0]!,
      kind: CompletionItemKind.Function,
      near: isTooEarly(words[0]!) ? near.last : isHere ? near.likely : near.field,
      used: techniques.length - index,
      about: { what: "technique", name: words[0]! },
    });
  }
  return offers;
}
const mostWritten = 12;

function inStep(asked: Asked, technique: Technique, from: number): Group[] {
  const { before } = asked;
  const rest = before.slice(from);
  const named = /\b(?:with|over|on)\s+(?:\d[\d.]*\s*k?g\s+)?([\p{L}][\p{L} '-]*|)$/iu.exec(rest);
  const number = numberAt(before, from);
  if (number) return [unitGroup(asked, number.start, unitsIn(technique, rest))];
  const temperature = temperaturesAt(asked, from);
  if (temperature) return [temperature];
  if (named) return [{ start: before.length - named[1]!.length, until: listEnd, ...namesFor(asked, ["ice"], named[1]!) }];
  const start = before.length - /\S*$/.exec(before)![0].length;
  const offers = followers(asked, technique, rest).map((label): Offer => {
    return { label, kind: CompletionItemKind.Value, near: near.usual, about: { what: "step", name: label, of: technique.words[0]! } };
  });
  return [{ start, until: listEnd, offers: inOrder(offers) }];
}

function unitsIn(technique: Technique, rest: string): string[] {
  const { id, dilutes, brings, chill } = technique;
  if (/\b(?:with|over|on)\s+[^,]*$/i.test(rest)) return ["g"];
  if (dilutes) return ["%"];
  if (id === "carbonate") return ["vol"];
  if (technique.process?.boils) return ["ml", "g", "min"];
  if (brings) return /\bat\b/i.test(rest) ? ["C", "F"] : ["C", "F", "min", "hour", "day"];
  return [...(chill?.roundS ? ["times"] : []), "s", "min", ...(chill ? [] : ["hour", "day", "week"])];
}

/** What may stand behind a technique and does not yet: its usual time, its ice, its degrees. */
function followers(asked: Asked, technique: Technique, rest: string): string[] {
  const { id, chill, iceInGlass, dilutes, brings } = technique;
  const settings = settingsOf(asked.house, asked.scope);
  const ices = namesIn(asked.house, asked.scope, "ice").flatMap(({ name, alias }) => (alias ? [] : [name]));
  const isTimed = /\d\s*(?:s|sec|seconds?|min|minutes?|hours?|times)\b/i.test(rest);
  const isIced = /\b(?:with|over|on|without)\s/i.test(rest);
  const found: string[] = [];
  if (chill && !isTimed) {
    if (chill.roundS) found.push(`${Math.round(chill.usualS / chill.roundS)} times`);
    found.push(`${chill.usualS} s`);
  }
  if (!isIced && chill && !iceInGlass) found.push(...ices.map((ice) => `with ${ice}`));
  if (!isIced && ((chill && iceInGlass) || technique.process?.strains)) found.push(...ices.map((ice) => `over ${ice}`));
  if (dilutes && !/%/.test(rest)) found.push("25 %");
  if (brings && !/\bat\s/i.test(rest)) found.push(...places.map(({ setting }) => `at ${Number(settings[setting].value.toFixed(1))} C`));
  if (id === "carbonate" && !/\bvol/i.test(rest)) found.push("to 3 vol");
  if (technique.process?.boils && !/\b(?:to|by)\s/i.test(rest)) found.push("by half", "to 300 ml");
  return found;
}
