/** Inside a comment: `# allow CODE: `, what is found on that line first. */
import { CompletionItemKind } from "vscode-languageserver-types";
import { rules } from "../../rules/all.ts";
import { findingsOf } from "../../rules/run.ts";
import { type Asked, type Group, near, type Offer } from "./offer.ts";

/** `start`: where the comment starts. Empty in any other comment. */
export function inComment(asked: Asked, start: number): Group[] {
  const { before } = asked;
  const [, word, code] = /^#\s*(?:([a-z]*)|allow\s+([a-z0-9-]*))$/i.exec(before.slice(start)) ?? [];
  if (code !== undefined) return [{ start: before.length - code.length, until: codeEnd, offers: codesFor(asked, "") }];
  if (word === undefined || !"allow".startsWith(word.toLowerCase())) return [];
  const found = codesFor(asked, "allow ").filter((offer) => offer.near === near.first);
  const allow: Offer = {
    label: "allow",
    text: "allow ",
    kind: CompletionItemKind.Keyword,
    near: near.usual,
    about: { what: "word", name: "allow" },
  };
  return [{ start: before.length - word.length, until: codeEnd, offers: [...found, allow] }];
}
const codeEnd = /[^a-z0-9-]|$/i;

function codesFor(asked: Asked, lead: string): Offer[] {
  const found = foundOn(asked);
  return rules.map(({ code, entries }) => {
    const nearness = found.has(code) ? near.first : entries.includes(asked.entry.kind) ? near.likely : near.last;
    return {
      label: lead + code,
      text: `${lead}${code}: `,
      kind: CompletionItemKind.Value,
      near: nearness,
      about: { what: "rule", name: code },
    };
  });
}

/** The codes of what is found on the line that an allowance here would be for. */
function foundOn({ house, document, entry, line }: Asked): ReadonlySet<string> {
  let [at, number] = [entry, line];
  while (at.lines[number]?.content.kind === "comment") number++;
  if (number >= at.lines.length) [at, number] = [document.tree.entries[house.getIndexOf(entry) + 1] ?? entry, 0];
  // A rule that fails is told of where the findings are published.
  const findings = findingsOf(house, at, rules, () => {});
  return new Set(findings.filter(({ place }) => place.line === number).map(({ code }) => code));
}
