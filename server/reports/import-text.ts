/** What of an imported file was not understood, for people and for programs. */
import { showCount } from "../house/show.ts";
import { shortened } from "./import-table.ts";
import type { Imported } from "./imported.ts";
import { type Look, wrap } from "./sheet.ts";

/** Empty where everything was understood and nothing was changed. */
export function importText({ misread, remarks }: Imported, look: Look): string {
  const told = misread.map(({ where, text, why, done }) => wrap(`${where}: “${shortened(text)}” – ${why} ${done}`, look.width, "  ", ""));
  const sum = misread.length > 0 ? [`${showCount(misread.length, "thing")} not understood; nothing is left out.`] : [];
  return [...told, ...remarks, ...sum].map((line) => `${line}\n`).join("");
}

/** In the shape of `importSchema`. */
export function importJson({ entries, misread, remarks }: Imported): string {
  return `${JSON.stringify({ entries, misread, remarks }, null, 2)}\n`;
}
