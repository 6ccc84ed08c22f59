/** Comments: `#` first on a line, or with white space on both sides; and `# allow CODE: reason`. */
import { isSpace, skipSpace, trimEnd } from "./characters.ts";
import type { Allowance, Comment } from "./tree.ts";

/** Where a comment starts at `from` or after; `text.length` where there is none. `first` is where the line's text starts. */
export function findComment(text: string, first: number, from: number): number {
  for (let at = text.indexOf("#", from); at >= 0; at = text.indexOf("#", at + 1)) {
    if (at === first) return at;
    const after = at + 1;
    if (at > 0 && isSpace(text.charCodeAt(at - 1)) && (after === text.length || isSpace(text.charCodeAt(after)))) return at;
  }
  return text.length;
}

/** The comment that starts at `start` and goes on to the end of the line. */
export function readComment(text: string, start: number): Comment {
  const end = trimEnd(text, start, text.length);
  return { start, end, text: text.slice(start, end), allow: readAllowance(text, start + 1, end) };
}

/** `allow CODE: reason`. Without a colon it is one only where a rule's code is plainly meant: alone, or hyphened. */
function readAllowance(text: string, from: number, end: number): Allowance | undefined {
  const start = skipSpace(text, from, end);
  if (!text.startsWith("allow", start) || !isSpace(text.charCodeAt(start + 5))) return undefined;
  const codeStart = skipSpace(text, start + 5, end);
  let codeEnd = codeStart;
  while (codeEnd < end && isCodeLetter(text.charCodeAt(codeEnd))) codeEnd++;
  if (codeEnd === codeStart) return undefined;
  const code = { start: codeStart, end: codeEnd, text: text.slice(codeStart, codeEnd) };
  const colon = skipSpace(text, codeEnd, end);
  if (text[colon] === ":" && colon < end) {
    const reasonStart = skipSpace(text, colon + 1, end);
    const reason = reasonStart < end ? { start: reasonStart, end, text: text.slice(reasonStart, end) } : undefined;
    return { start, end, code, reason };
  }
  if (colon < end && (colon === codeEnd || !code.text.includes("-"))) return undefined;
  return { start, end: codeEnd, code, reason: undefined };
}

function isCodeLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || code === 45 || (code >= 48 && code <= 57);
}
