/** What the pages that a browser shows have in common. */
import MarkdownIt from "markdown-it";

/** A text as it may stand between tags and in a quoted attribute. */
export const { escapeHtml } = new MarkdownIt().utils;

/** Takes a text out of sight and leaves it to whoever listens to the page. */
export const hiddenCss =
  ".hidden { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }";
