/** Names and amounts as they are written into a spec. */

/** A name as a head or a pour takes it: in quotation marks where it would not read without them. */
export function writtenName(name: string): string {
  const plain = !/^[\d"“.½¼¾⅓⅔]/u.test(name) && !/(?:^|\s)#(?:\s|$)/.test(name) && !/ for /i.test(name) && !leads.test(name);
  return plain ? name : `"${name}"`;
}

/** Words that mean something at the start of a pour. */
const leads = /^(?:top|to|rinse|some|about|of|or|swap|without|section)\s/i;
