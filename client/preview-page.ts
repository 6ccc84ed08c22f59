/** The page of a preview: a sheet of paper whatever the editor's theme, with a script that takes in what changed. */

/** `nonce`: chance, which lets this page's own style and script through and no other. */
export function previewPage(css: string, body: string, nonce: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'; img-src data:;">
<title>Preview</title>
<style nonce="${nonce}">${css}
${sheet}</style>
</head>
<body>
<main id="sheet">${body}</main>
<script nonce="${nonce}">
addEventListener("message", ({ data }) => {
  if (typeof data.body === "string") document.getElementById("sheet").innerHTML = data.body;
  if (typeof data.line !== "number") return;
  let found;
  for (const block of document.querySelectorAll("[data-line]")) if (Number(block.dataset.line) <= data.line) found = block;
  if (found) found.scrollIntoView({ block: "center" });
});
</script>
</body>
</html>
`;
}

// What prints is white whether the editor is light or dark.
const sheet = `
:root { color-scheme: light; --paper: #fdfcf9; --ink: #1c2126; --soft: #565c61; --rule: #cfcbc1; --accent: #7a2e1f; --tint: #f4f1ea; }
html { background: var(--vscode-editor-background); padding: 0; }
body { max-width: none; margin: 0; padding: 1.25rem; color: var(--ink); font-family: var(--face); font-size: 1rem; }
#sheet { max-width: 36rem; margin: 0 auto; padding: 2.5rem 3rem 4rem; background: var(--paper); color: var(--ink); border: 1px solid var(--vscode-contrastBorder, var(--rule)); }
#sheet > .chapter { margin-top: 0; padding-top: 0; }
.problems { margin: 0 0 2rem; padding: 0.75rem 1rem; border: 2px solid var(--accent); font: 0.9rem/1.4 var(--vscode-font-family); }
.problems p { margin: 0; font-weight: 600; text-indent: 0; }
.problems ul { margin: 0.25rem 0 0; padding-left: 1.25rem; }
@media (max-width: 34rem) { #sheet { padding: 1.5rem 1.25rem 3rem; } body { padding: 0; } }
`;
