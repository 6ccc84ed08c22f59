/**
 * Directives in a Markdown text, in the form of the CommonMark proposal for generic directives:
 * `:strength[Lantern Sour]{words}` in running text, `::spec[Lantern Sour]` on a line of its own.
 * One stands on one line. In a sentence it has a label or attributes: a colon alone is none.
 */
import type { Attribute, Directive, Words } from "./tree.ts";

const colon = 0x3a;

/** Whether a text may hold a directive, or one that is being typed: quick, and never wrong when it says no. */
export function mayHoldDirectives(text: string): boolean {
  return /:[a-z][\w-]*[[{]|(?:^|[\s(*_"'|]):{1,2}(?=[a-z]|\s*$)/im.test(text);
}

/** The directive that starts with its colon at `start`, for a `block` with two; absent where none does. Positions are the text's. */
export function directiveAt(text: string, start: number, block: boolean): Directive | undefined {
  const colons = block ? 2 : 1;
  if (text.charCodeAt(start - 1) === colon || text.charCodeAt(start + colons) === colon) return undefined;
  for (let at = start; at < start + colons; at++) if (text.charCodeAt(at) !== colon) return undefined;
  const name = matchAt(/[a-z][\w-]*/iy, text, start + colons);
  if (!name) return undefined;
  const label = labelAt(text, name.end);
  const attributes = attributesAt(text, label ? label.end + 1 : name.end);
  if (!label && !attributes && !block) return undefined;
  const end = attributes?.end ?? (label ? label.end + 1 : name.end);
  return { start, end, name, ...(label && { label }), attributes: attributes?.list ?? [], block };
}

/** The same directive, so many characters further to the right. */
export function moved(directive: Directive, by: number): Directive {
  const words = <W extends Words>(one: W): W => ({ ...one, start: one.start + by, end: one.end + by });
  return {
    ...directive,
    start: directive.start + by,
    end: directive.end + by,
    name: words(directive.name),
    ...(directive.label && { label: words(directive.label) }),
    attributes: directive.attributes.map(({ name, value }) => ({ name: words(name), ...(value && { value: words(value) }) })),
  };
}

/** What stands in square brackets, which may hold paired ones and escaped characters. */
function labelAt(text: string, start: number): Words | undefined {
  if (text[start] !== "[") return undefined;
  let depth = 0;
  for (let at = start; at < text.length && text[at] !== "\n"; at++) {
    if (text[at] === "\\") at++;
    else if (text[at] === "[") depth++;
    else if (text[at] === "]" && --depth === 0) return { text: text.slice(start + 1, at), start: start + 1, end: at };
  }
  return undefined;
}

/** The name that a label means: without the blanks around it, a bracket that stands alone without its backslash. */
export function labelOf({ label }: Pick<Directive, "label">): string {
  return label?.text.trim().replace(/\\([[\]\\])/g, "$1") ?? "";
}

/** A name as a label says it. */
export function asLabel(name: string): string {
  return labelAt(`[${name}]`, 0)?.text === name && !name.includes("\\") ? name : name.replace(/[[\]\\]/g, "\\$&");
}

const attribute = /[ \t]*([a-z][\w-]*)(?:=(?:"([^"\n]*)"|'([^'\n]*)'|([^\s"'`<>=}]+)))?/iy;

function attributesAt(text: string, start: number): { list: Attribute[]; end: number } | undefined {
  if (text[start] !== "{") return undefined;
  const list: Attribute[] = [];
  let at = start + 1;
  for (let found = execAt(attribute, text, at); found; found = execAt(attribute, text, at)) {
    const [whole, name = "", double, single, bare] = found;
    const nameStart = at + whole.length - whole.trimStart().length;
    const value = double ?? single ?? bare;
    at += whole.length;
    const valueEnd = at - (bare === undefined ? 1 : 0);
    list.push({
      name: { text: name, start: nameStart, end: nameStart + name.length },
      ...(value !== undefined && { value: { text: value, start: valueEnd - value.length, end: valueEnd } }),
    });
  }
  const closing = matchAt(/[ \t]*\}/y, text, at);
  return closing && { list, end: closing.end };
}

function matchAt(pattern: RegExp, text: string, at: number): Words | undefined {
  const found = execAt(pattern, text, at);
  return found ? { text: found[0], start: at, end: at + found[0].length } : undefined;
}

function execAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}
