/** How a comparison looks on a screen, by day and by night, and on paper. */
export const diffCss = `:root { color-scheme: light dark; --ink: #16212b; --soft: #475660; --line: #c3ced1; --accent: #0d5a66; --paper: #fff; --warn: #8c2a12; --warned: #fbf0ec; }
@media (prefers-color-scheme: dark) { :root { --ink: #e8eeee; --soft: #aab9bd; --line: #3b4a50; --accent: #79c9d1; --paper: #12191d; --warn: #ffb39c; --warned: #2c1d18; } }
* { box-sizing: border-box; }
body { margin: 0; color: var(--ink); background: var(--paper); font: 1rem/1.5 "Helvetica Neue", Arial, "Liberation Sans", sans-serif; overflow-wrap: break-word; }
main { max-width: 60rem; margin: 0 auto; padding: 3rem 1.5rem 4rem; }
header { border-bottom: 3px solid var(--accent); padding-bottom: 1.25rem; margin-bottom: 1.75rem; }
h1, h2, h3, p, ul, dl, dd { margin: 0; }
h1 { font-size: 2rem; line-height: 1.2; letter-spacing: -0.02em; }
h2 { font-size: 1.25rem; line-height: 1.3; letter-spacing: -0.01em; margin: 2.75rem 0 0.5rem; color: var(--accent); }
h3 { font-size: 1.0625rem; line-height: 1.35; }
.kind { color: var(--accent); font-weight: 700; margin-bottom: 0.25rem; }
.lead { color: var(--soft); margin-top: 0.5rem; }
.how, .through, .note { color: var(--soft); font-size: 0.9375rem; }
article { border-top: 1px solid var(--line); padding: 1rem 0 1.25rem; display: grid; grid-template-columns: 15rem minmax(0, 1fr); column-gap: 2rem; break-inside: avoid; }
article > div:last-child > * + * { margin-top: 0.625rem; }
h2 + article { border-top-color: var(--accent); }
ul { padding-left: 1.125rem; }
.warning { border-left: 4px solid var(--warn); background: var(--warned); padding: 0.5rem 0.75rem; }
.warning strong { color: var(--warn); }
.warning ul { list-style: none; padding: 0; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
.scrolls table { font-size: 0.9375rem; min-width: 44rem; }
caption { text-align: left; font-weight: 700; font-size: 1.25rem; letter-spacing: -0.01em; color: var(--accent); padding-bottom: 0.5rem; }
article caption { font-size: 0.9375rem; }
th, td { text-align: left; vertical-align: baseline; font-weight: 400; padding: 0.3125rem 1rem 0.3125rem 0; border-top: 1px solid var(--line); }
th:last-child, td:last-child { padding-right: 0; }
thead th { border-top: 0; border-bottom: 1px solid var(--accent); color: var(--soft); font-size: 0.875rem; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
tbody th { font-weight: 700; }
article tbody th { font-weight: 400; color: var(--soft); width: 8.5rem; }
article thead th { border-bottom-color: var(--line); }
.figure { white-space: nowrap; }
.grave { color: var(--warn); font-weight: 700; }
.scrolls { overflow-x: auto; }
a { color: inherit; text-decoration-color: var(--accent); text-underline-offset: 0.15em; }
a:focus-visible, .scrolls:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
h2, h3, caption, thead { break-after: avoid; }
@media (max-width: 44rem) { main { padding: 1.5rem 1rem 3rem; } h1 { font-size: 1.625rem; } article { display: block; } article > div + div { margin-top: 0.625rem; } }
@media print {
  @page { margin: 18mm 16mm 20mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt Arial, sans-serif; color: #475660; } }
  :root { color-scheme: light; --ink: #000; --soft: #3b474f; --line: #b9c4c7; --accent: #0d5a66; --paper: #fff; --warn: #8c2a12; --warned: #fff; }
  html { font-size: 9.5pt; }
  body { line-height: 1.4; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  main { max-width: none; padding: 0; }
  article { grid-template-columns: 44mm minmax(0, 1fr); column-gap: 6mm; padding: 3mm 0 4mm; }
  article tbody th { width: 30mm; }
  h2 { margin-top: 8mm; }
  a { text-decoration: none; }
  .scrolls { overflow: visible; }
  .scrolls table { min-width: 0; }
}`;
