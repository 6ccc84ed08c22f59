/** Data as an XML text. */
import XMLBuilder from "fast-xml-builder";

/** A key that starts with `@` is an attribute, `#text` the text; a list is the element several times. */
export type XmlElement = { readonly [key: string]: string | number | XmlElement | readonly XmlElement[] };

const builder = new XMLBuilder({
  ignoreAttributes: false,
  attributeNamePrefix: "@",
  format: true,
  suppressEmptyNode: true,
  suppressBooleanAttributes: false,
  attributeValueProcessor: (_, value) => allowed(String(value)),
  tagValueProcessor: (_, value) => allowed(String(value)),
});

/** The whole document, with its declaration. */
export function xml(root: string, content: XmlElement): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${builder.build({ [root]: content })}`;
}

/** Without the characters that XML cannot hold, escaped or not, and with each line break as a blank, which an attribute makes of it anyway. */
function allowed(text: string): string {
  return text.replace(/\p{Cc}/gu, " ").replace(/[\uFFFE\uFFFF]|\p{Cs}/gu, "\uFFFD");
}
