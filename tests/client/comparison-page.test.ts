/** The comparison as a page: names of other people's do nothing in it. */
import { Parser } from "htmlparser2";
import { expect, test } from "vitest";
import { type Comparison, comparisonPage, pageCommands, problemPage } from "../../client/comparison-page.ts";
import { spotFrom } from "../../client/spot.ts";

const hostile = `<script>alert("x")</script> ]]> ' onload='1 " command:x ?`;
const place = { uri: `file:///bar/${encodeURIComponent(hostile)}.drink`, line: 3, side: "now" } as const;
const comparison: Comparison = {
  title: hostile,
  summary: hostile,
  broken: [{ text: hostile, kind: "hurt", place }],
  sections: [
    {
      heading: hostile,
      note: hostile,
      groups: [{ title: hostile, place, was: { ...place, side: "then" }, rows: [{ text: hostile, kind: "said" }] }],
    },
  ],
  commit: "0123456789abcdef0123456789abcdef01234567",
};

/** By a reader of HTML that is not the writer. */
function read(html: string) {
  const found = { tags: new Set<string>(), attributes: new Set<string>(), links: [] as string[], policy: "", text: "" };
  const parser = new Parser({
    onopentag(name, attributes) {
      found.tags.add(name);
      for (const attribute of Object.keys(attributes)) found.attributes.add(attribute);
      if (attributes.href !== undefined) found.links.push(attributes.href);
      if (attributes["http-equiv"] === "Content-Security-Policy") found.policy = attributes.content!;
    },
    ontext(text) {
      found.text += text;
    },
  });
  parser.end(html);
  return found;
}

test("a hostile name is a text, wherever it stands", () => {
  const { tags, attributes, text } = read(comparisonPage(comparison, "once", 1, "12:00"));
  const known = ["a", "article", "body", "h1", "h2", "h3", "head", "html", "li", "main", "meta", "p", "section", "style", "title", "ul"];
  expect([...tags].sort()).toEqual(known);
  expect([...attributes].sort()).toEqual(["charset", "class", "content", "href", "http-equiv", "lang", "nonce"]);
  expect(text.split(hostile)).toHaveLength(9);
});

test("nothing runs or is fetched, and links run nothing but the page's own commands, with places that these take", () => {
  const { policy, links } = read(comparisonPage(comparison, "once", 1, "12:00"));
  expect(policy).toBe("default-src 'none'; style-src 'nonce-once';");
  for (const link of links) {
    const [, command, query] = /^command:([\w.]+)\?(.*)$/.exec(link)!;
    expect(pageCommands).toContain(command);
    const parameters = JSON.parse(decodeURIComponent(query!)) as unknown[];
    expect(command === "mutchkin.compareAgain" ? parameters : parameters.map(spotFrom)).toEqual(parameters);
  }
  expect(links).toHaveLength(4);
});

test("a page that says why there is none", () => {
  const { text, tags } = read(problemPage("Compared", hostile, "once", 1));
  expect(text).toContain(hostile);
  expect(tags.has("script")).toBe(false);
});
