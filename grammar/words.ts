/** Where words end. */
import { isBetweenDigits, isQuote, isSpace } from "./characters.ts";

/** Where the word that starts at `at` ends: at white space, a list's comma, a semicolon or a quotation mark. */
export function wordEnd(text: string, at: number, end: number): number {
  while (at < end && !endsWord(text, at, end)) at++;
  return at;
}

const comma = 44;
const semicolon = 59;

function endsWord(text: string, at: number, end: number): boolean {
  const code = text.charCodeAt(at);
  if (code > semicolon) return code > 127 && (isSpace(code) || isQuote(code));
  if (code === comma) return !isBetweenDigits(text, at, end);
  return code === semicolon || isSpace(code) || isQuote(code);
}
