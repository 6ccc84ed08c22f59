/** The JSON-LD in a saved web page: what its `<script type="application/ld+json">` hold. */
import { DomUtils, Parser, parseDocument } from "htmlparser2";

/** Whether a text is a page, and no JSON. */
export function isPage(text: string): boolean {
  return /^\uFEFF?\s*</.test(text);
}

/** The texts of the page's data, in their order. Nothing else of the page is looked at, and none of it is run. */
export function dataIn(page: string): string[] {
  const scripts = DomUtils.getElementsByTagName("script", parseDocument(page));
  return scripts.filter(({ attribs }) => isData(attribs.type ?? "")).map((script) => DomUtils.textContent(script));
}

function isData(type: string): boolean {
  return type.split(";")[0]!.trim().toLowerCase() === "application/ld+json";
}

/** `&amp;` as the sign that it stands for; noted in `found`. Nothing else of a text is taken for HTML. */
export function withoutEntities(text: string, found: Set<string>): string {
  return text.replace(/&(?:#\d{1,7}|#x[\da-f]{1,6}|[a-z][a-z\d]{1,31});/gi, (entity) => {
    let sign = "";
    new Parser({
      ontext(part) {
        sign += part;
      },
    }).end(entity);
    if (sign !== entity) found.add(entity);
    return sign;
  });
}
