/** How a book looks: on a screen, light or dark, and on its pages when a browser prints it. */
import type { BookStyle } from "../../house/book/style.ts";
import { hiddenCss } from "../html.ts";

const faces: Readonly<Record<BookStyle["typeface"], string>> = {
  serif:
    '"Iowan Old Style", "Palatino Nova", "Palatino Linotype", Palatino, "TeX Gyre Pagella", "Book Antiqua", "Liberation Serif", Georgia, serif',
  sans: '"Gill Sans Nova", "Gill Sans", Optima, Candara, "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, sans-serif',
};

/** Royal octavo, and the trim of American trade books. */
const trims: Readonly<Record<BookStyle["spelling"], string>> = { British: "156mm 234mm", American: "6in 9in" };

export function bookCss({ typeface, spelling }: BookStyle): string {
  return `:root {
  color-scheme: light dark;
  --paper: #fdfcf9; --ink: #1c2126; --soft: #565c61; --rule: #cfcbc1; --accent: #7a2e1f; --tint: #f4f1ea;
  --face: ${faces[typeface]};
}
@media (prefers-color-scheme: dark) {
  :root { --paper: #16191c; --ink: #e6e2d9; --soft: #a9aaa6; --rule: #3d4246; --accent: #e39b83; --tint: #1f2428; }
}
@media (prefers-contrast: more) {
  :root { --soft: var(--ink); --rule: currentColor; }
}
* { box-sizing: border-box; }
html { font: 112.5%/1.55 var(--face); background: var(--paper); color: var(--ink); -webkit-text-size-adjust: 100%; }
body { max-width: 34rem; margin: 0 auto; padding: 0 1.25rem 6rem; overflow-wrap: break-word; }
.skip { position: absolute; left: 0; top: -4rem; padding: 0.5rem 1rem; background: var(--paper); }
.skip:focus { top: 0; }
:focus-visible { outline: 2px solid var(--accent); outline-offset: 3px; }
${hiddenCss}
a { color: inherit; text-decoration: underline; text-decoration-color: var(--accent); text-decoration-thickness: 1px; text-underline-offset: 0.18em; }
a:hover { color: var(--accent); }
img { display: block; max-width: 100%; height: auto; margin: 1.5rem auto; }

.title-page p { text-indent: 0; }
.title-page { min-height: 92vh; min-height: 92svh; display: flex; flex-direction: column; align-items: center; text-align: center; }
.title-page h1 { font-size: clamp(2.6rem, 9vw, 4.2rem); font-weight: 400; line-height: 1.05; letter-spacing: 0.01em; margin: 26vh 0 0; text-wrap: balance; }
.title-page h1::after { content: ""; display: block; width: 3.5rem; margin: 1.6rem auto 0; border-top: 1px solid var(--accent); }
.subtitle { font-style: italic; font-size: 1.3rem; margin: 1.4rem 0 0; text-wrap: balance; }
.author { font-variant-caps: all-small-caps; letter-spacing: 0.12em; font-size: 1.2rem; margin: 2.4rem 0 0; }
.rights { margin: auto 0 1rem; padding-top: 2rem; font-size: 0.8rem; color: var(--soft); }

h2, h3, h4, h5, h6 { font-weight: 400; line-height: 1.2; text-wrap: balance; }
h2 { font-size: 2.2rem; margin: 7rem 0 2.6rem; text-align: center; }
h2::after { content: ""; display: block; width: 2.2rem; margin: 1.1rem auto 0; border-top: 1px solid var(--accent); }
h3 { font-size: 1.3rem; font-style: italic; margin: 2.6rem 0 0.8rem; }
h4, h5, h6 { font-size: 1.05rem; font-style: italic; margin: 1.8rem 0 0.5rem; }
p { margin: 0; text-wrap: pretty; }
p + p { text-indent: 1.4em; }
.chapter > p, .chapter > blockquote { hyphens: auto; hanging-punctuation: first last; }
ul, ol, blockquote, pre { margin: 1rem 0; }
blockquote { padding-left: 1.4em; color: var(--soft); }
pre { overflow-x: auto; font-size: 0.85em; }
hr { width: 3rem; margin: 2rem auto; border: 0; border-top: 1px solid var(--rule); }

.recipe { margin: 3.2rem 0; padding-top: 1.5rem; border-top: 1px solid var(--rule); }
.recipe + .recipe { margin-top: 0; }
.recipe h3, .recipe h4, .recipe h5, .recipe h6 { font-size: 1.65rem; font-style: normal; margin: 0; }
.kind { font-variant-caps: all-small-caps; letter-spacing: 0.09em; color: var(--accent); margin: 0.15rem 0 0.9rem; text-indent: 0; }
.headnote { font-style: italic; hyphens: auto; }
.kind + .headnote { text-indent: 0; }
.ingredients { border-collapse: collapse; margin: 1.1rem 0; }
.ingredients th, .ingredients td { padding: 0.16rem 0; font-weight: 400; text-align: left; vertical-align: baseline; }
.ingredients thead th { font-variant-caps: all-small-caps; letter-spacing: 0.08em; color: var(--soft); padding-bottom: 0.25rem; line-height: 1; }
.ingredients .figure { text-align: right; white-space: nowrap; padding-right: 1.3rem; font-variant-numeric: lining-nums tabular-nums; }
.ingredients td + td { color: var(--soft); }
.ingredients .note { color: var(--soft); }
.or th, .or td { color: var(--soft); font-style: italic; }
.method p + p { text-indent: 0; margin-top: 0.4rem; }
.method ol { padding-left: 1.4em; margin: 0; }
.facts { margin: 1rem 0 0; }
.facts div, .aside { padding-left: 1.4em; text-indent: -1.4em; }
.facts dt, .facts dd { display: inline; margin: 0; }
.facts dt, .label { font-variant-caps: all-small-caps; letter-spacing: 0.07em; color: var(--soft); margin-right: 0.25em; }
.figures { margin-top: 1rem; font-size: 0.88rem; color: var(--soft); font-variant-numeric: lining-nums; text-indent: 0; }
.aside { font-size: 0.88rem; }
.figures + .aside, .facts + .aside { margin-top: 0.2rem; }

.contents ol { list-style: none; padding: 0; margin: 0; }
.contents > ol > li { margin: 0 0 1.1rem; font-size: 1.12rem; }
.contents ol ol { font-size: 0.9rem; margin: 0.1rem 0 0; padding-left: 1.4em; color: var(--soft); }
.contents a { text-decoration-color: transparent; }
.contents a:hover { text-decoration-color: var(--accent); }
.list ul { list-style: none; padding: 0; columns: 14rem auto; column-gap: 2rem; }
.index { columns: 14rem auto; column-gap: 2rem; font-size: 0.9rem; line-height: 1.45; margin: 1.4rem 0; }
.index div { break-inside: avoid; margin-bottom: 0.45rem; padding-left: 1.4em; text-indent: -1.4em; }
.index dt { display: inline; font-style: italic; margin-right: 0.5em; }
.index dd { display: inline; margin: 0; font-variant-numeric: lining-nums; }
.index dd + dd::before { content: ", "; }
.index a { text-decoration-color: transparent; }
.index a:hover { text-decoration-color: var(--accent); }
.wide { overflow-x: auto; margin: 1.6rem 0; }
.wide table { border-collapse: collapse; width: 100%; font-size: 0.84rem; line-height: 1.35; }
.wide caption { text-align: left; font-style: italic; font-size: 1.05rem; padding-bottom: 0.6rem; }
.wide th, .wide td { text-align: left; vertical-align: baseline; font-weight: 400; padding: 0.32rem 0.9rem 0.32rem 0; border-bottom: 1px solid var(--rule); }
.wide thead th { font-variant-caps: all-small-caps; letter-spacing: 0.06em; color: var(--soft); vertical-align: bottom; border-bottom-color: currentColor; }
.wide .figure { text-align: right; white-space: nowrap; font-variant-numeric: lining-nums tabular-nums; }
.wide thead .figure { white-space: normal; width: 1%; text-wrap: balance; }
.wide .centred { text-align: center; }
.wide tr > :last-child { padding-right: 0; }

@page { size: ${trims[spelling]}; margin: 17mm 19mm 20mm; }
@page :first { margin: 24mm 19mm 19mm; }
@media print {
  :root { color-scheme: light; --paper: #fff; --ink: #000; --soft: #4a4a4a; --rule: #b9b5ab; --accent: #6f2a1c; }
  html { font-size: 10.2pt; line-height: 1.42; background: none; }
  body { max-width: none; padding: 0; }
  .skip { display: none; }
  a, .index a, .contents a { text-decoration: none; }
  .title-page { min-height: 0; height: 185mm; break-after: page; }
  .title-page h1 { font-size: 34pt; margin-top: 42mm; }
  .chapter { break-before: page; }
  h2 { font-size: 21pt; margin: 24mm 0 12mm; }
  .part h2 { margin: 6mm 0 8mm; }
  .at-the-back + .at-the-back { break-before: auto; }
  .at-the-back + .at-the-back h2 { margin-top: 16mm; }
  h2, h3, h4, h5, h6, caption { break-inside: avoid; break-after: avoid; }
  .chapter > p { text-align: justify; orphans: 2; widows: 2; }
  .recipe { break-inside: avoid; margin: 4.5mm 0 0; padding-top: 3mm; font-size: 9.7pt; line-height: 1.38; }
  .recipe + .recipe { margin-top: 4.5mm; }
  .recipe h3, .recipe h4, .recipe h5, .recipe h6 { font-size: 15pt; }
  .ingredients { margin: 0.7rem 0; }
  .ingredients th, .ingredients td { padding: 0.05rem 0; }
  .kind { margin-bottom: 0.5rem; }
  .facts { margin-top: 0.7rem; }
  .facts div { display: inline; padding: 0; }
  .facts div + div::before { content: "· "; color: var(--soft); }
  .figures { margin-top: 0.4rem; }
  .index { columns: 2; }
  .list ul { columns: 2; }
  .contents > ol > li { break-inside: avoid; margin-bottom: 0.8rem; }
  .contents ol ol { columns: 2; column-gap: 1.6rem; }
  .contents ol ol li { break-inside: avoid; }
  .wide { overflow: visible; }
  .wide tr { break-inside: avoid; }
  .wide tbody tr:first-child { break-before: avoid; }
}`;
}

/** What stands below the pages of a part: the book on the left one, the part on the right. */
export function footCss(page: string, title: string, part: string): string {
  const style = `font: italic 8.5pt var(--face); color: #4a4a4a;`;
  return `.${page} { page: ${page}; }
@page ${page}:left { @bottom-left { content: counter(page) "\\2003 ${quoted(title)}"; ${style} } }
@page ${page}:right { @bottom-right { content: "${quoted(part)}\\2003 " counter(page); ${style} } }`;
}

/** Inside a string of CSS that stands in an element of HTML. */
function quoted(text: string): string {
  return text.replace(/[\\"<>&\n]/g, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `);
}
