/** What a single UTF-16 unit is. Line breaks and all of Unicode's spaces count as white space. */

const tab = 9;
const carriageReturn = 13;
const space = 32;
const zero = 48;
const nine = 57;

export function isSpace(code: number): boolean {
  if (code <= space) return code === space || (code >= tab && code <= carriageReturn);
  return code >= 0xa0 && isWideSpace(code);
}

export function isDigit(code: number): boolean {
  return code >= zero && code <= nine;
}

/** A letter of any script in the basic plane, or an accent standing alone. An emoji is none. */
export function isLetter(code: number): boolean {
  if (code < 128) return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
  return letterOrMark.test(String.fromCharCode(code));
}

/** A straight or curly double quotation mark; any of them closes any other. */
export function isQuote(code: number): boolean {
  return code === 34 || (code >= 0x201c && code <= 0x201f);
}

/** A comma between digits never parts a list. */
export function isBetweenDigits(text: string, at: number, end: number): boolean {
  return at > 0 && at + 1 < end && isDigit(text.charCodeAt(at - 1)) && isDigit(text.charCodeAt(at + 1));
}

export function isCurrencySign(code: number): boolean {
  return code === 36 || (code >= 0xa2 && code <= 0xa5) || (code >= 0x20a0 && code <= 0x20cf);
}

/** Hyphen, no-break hyphen, figure, en and em dash, minus. */
export function isDash(code: number): boolean {
  return code === 45 || (code >= 0x2010 && code <= 0x2014) || code === 0x2212;
}

/** Where the white space that starts at `at` ends. */
export function skipSpace(text: string, at: number, end: number): number {
  while (at < end && isSpace(text.charCodeAt(at))) at++;
  return at;
}

/** Where the text before `end` ends, white space left off; never before `start`. */
export function trimEnd(text: string, start: number, end: number): number {
  while (end > start && isSpace(text.charCodeAt(end - 1))) end--;
  return end;
}

/** A byte order mark is white space, but indents nothing. */
export const byteOrderMark = 0xfeff;

/** How deep a line stands; only ever compared with another line's. A tab goes to the next multiple of four. */
export function indentWidth(text: string): number {
  let width = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === tab) width += 4 - (width % 4);
    else if (code === byteOrderMark) continue;
    else if (isSpace(code)) width++;
    else break;
  }
  return width;
}

const letterOrMark = /[\p{L}\p{M}]/u;

function isWideSpace(code: number): boolean {
  return (
    code === 0xa0 ||
    code === 0x1680 ||
    (code >= 0x2000 && code <= 0x200a) ||
    code === 0x2028 ||
    code === 0x2029 ||
    code === 0x202f ||
    code === 0x205f ||
    code === 0x3000 ||
    code === byteOrderMark
  );
}
