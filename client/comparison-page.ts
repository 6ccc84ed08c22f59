/** A comparison as a page: the server's words, with links to their places. There is no script in it, and nothing is fetched. */
import { openBesideCommand, openPlaceCommand, type Spot } from "./spot.ts";

export const againCommand = "mutchkin.compareAgain";
/** What links may run. */
export const pageCommands = [openPlaceCommand, openBesideCommand, againCommand];

interface Place {
  readonly uri: string;
  readonly line: number;
  readonly side: "now" | "then";
}

interface Row {
  readonly text: string;
  readonly kind: "hurt" | "said" | "through";
  readonly place?: Place;
}

interface Group {
  readonly title: string;
  readonly place?: Place;
  readonly was?: Place;
  readonly rows: readonly Row[];
}

export interface Comparison {
  readonly title: string;
  readonly summary: string;
  readonly broken: readonly Row[];
  readonly sections: readonly { readonly heading: string; readonly groups: readonly Group[]; readonly note?: string }[];
  readonly commit: string;
}

/** `nonce`: chance, which lets this page's own style through and no other. `id` comes back with a wish to compare again. */
export function comparisonPage(comparison: Comparison, nonce: string, id: number, compared: string): string {
  const { title, summary, broken, sections, commit } = comparison;
  const about = `Commit ${commit.slice(0, 7)} beside the texts as they stood in the editor at ${compared}, unsaved ones and all.`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-${nonce}';">
<title>${escaped(title)}</title>
<style nonce="${nonce}">${style}</style>
</head>
<body>
<main>
<h1>${escaped(title)}</h1>
<p class="summary">${escaped(summary)}</p>
<p class="about">${escaped(about)} ${link("Compare again", againCommand, id)}</p>
${broken.length > 0 ? list(broken, commit) : ""}
${sections.map(({ heading, groups, note }) => section(heading, groups, note, commit)).join("\n")}
</main>
</body>
</html>
`;
}

/** A page that says why there is no comparison. */
export function problemPage(title: string, problem: string, nonce: string, id: number): string {
  const nothing = { title, summary: problem, broken: [], sections: [], commit: "" };
  return comparisonPage(nothing, nonce, id, "").replace(
    /<p class="about">.*<\/p>/,
    `<p class="about">${link("Compare again", againCommand, id)}</p>`,
  );
}

function section(heading: string, groups: readonly Group[], note: string | undefined, commit: string): string {
  return `<section>
<h2>${escaped(heading)}</h2>
${groups.map((group) => article(group, commit)).join("\n")}
${note ? `<p>${escaped(note)}</p>` : ""}
</section>`;
}

function article({ title, place, was, rows }: Group, commit: string): string {
  const beside = place && was ? ` ${link("Lines then and now", openBesideCommand, spot(was, commit), spot(place, commit))}` : "";
  return `<article>
<h3>${place ? placeLink(title, place, commit) : escaped(title)}</h3>
${rows.length > 0 ? list(rows, commit) : ""}
${beside ? `<p class="beside">${beside}</p>` : ""}
</article>`;
}

function list(rows: readonly Row[], commit: string): string {
  const items = rows.map(({ text, kind, place }) => `<li class="${kind}">${place ? placeLink(text, place, commit) : escaped(text)}</li>`);
  return `<ul>\n${items.join("\n")}\n</ul>`;
}

function placeLink(text: string, place: Place, commit: string): string {
  return link(text, openPlaceCommand, spot(place, commit));
}

function spot({ uri, line, side }: Place, commit: string): Spot {
  return { uri, line, ...(side === "then" && { commit }) };
}

function link(text: string, command: string, ...parameters: readonly unknown[]): string {
  return `<a href="command:${command}?${encodeURIComponent(JSON.stringify(parameters))}">${escaped(text)}</a>`;
}

/** Names and fields are other people's texts. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

const style = `
body { padding: 0 1.5rem 2rem; line-height: 1.5; color: var(--vscode-editor-foreground); background: var(--vscode-editor-background); }
main { max-width: 46rem; }
h1 { font-size: 1.4em; font-weight: 600; margin: 1.2rem 0 0.25rem; line-height: 1.3; }
h2 { font-size: 1.1em; font-weight: 600; margin: 2rem 0 0.5rem; padding-bottom: 0.25rem; border-bottom: 1px solid var(--vscode-contrastBorder, var(--vscode-panel-border)); }
h3 { font-size: 1em; font-weight: 600; margin: 0 0 0.25rem; }
p { margin: 0.25rem 0; }
.about, .through, .beside { color: var(--vscode-descriptionForeground); }
article { margin: 1rem 0 1.25rem; }
ul { margin: 0; padding-left: 1.25rem; }
li { margin: 0.1rem 0; }
li.hurt { list-style: none; margin: 0.25rem 0 0.25rem -1.25rem; padding: 0.15rem 0.6rem; font-weight: 600; border: 1px solid var(--vscode-contrastBorder, transparent); border-left: 4px solid var(--vscode-editorWarning-foreground); background: var(--vscode-inputValidation-warningBackground, transparent); color: var(--vscode-inputValidation-warningForeground, inherit); }
li.hurt::before { content: "\\26A0\\FE0E" / "Warning:"; margin-right: 0.5em; }
a { color: inherit; text-decoration: underline; text-decoration-thickness: 1px; text-underline-offset: 0.2em; text-decoration-color: color-mix(in srgb, currentColor 40%, transparent); }
.vscode-high-contrast a { text-decoration-color: currentColor; }
.vscode-high-contrast :is(.about, .through) { color: inherit; }
h3 a, .about a, .beside a { color: var(--vscode-textLink-foreground); text-decoration-color: currentColor; }
a:hover { color: var(--vscode-textLink-activeForeground); text-decoration-color: currentColor; }
a:focus-visible { outline: 1px solid var(--vscode-focusBorder); outline-offset: 2px; }
.beside { font-size: 0.9em; }
`;
