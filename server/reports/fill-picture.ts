/**
 * A small picture of how full a glass is. Nobody knows a glass's shape from its name, so the bowl has
 * straight sides and a height is a share of what it holds; foot and handle only help to find the right one.
 */
import type { Card } from "./card-schema.ts";
import { escapeHtml } from "./html.ts";

/** Of the picture, in mm. */
export const pictureMm = { width: 24, height: 28 };

/** In mm from the upper left; the bowl is measured on its inside. */
interface Outline {
  readonly bowl: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** What is drawn beside the bowl, as an SVG path. */
  readonly beside?: string;
}

const outlines: readonly (readonly [words: RegExp, outline: Outline])[] = [
  [
    /\b(?:coupe|stem(?:med)?|cone|wine|flute|goblet|balloon|saucer|martini|sherry|copita|thimble|sour glass)\b/i,
    { bowl: { x: 3.5, y: 2, width: 17, height: 17 }, beside: "M12 19V27.4M6 27.5H18" },
  ],
  [/\b(?:mug|cup|tankard)\b/i, { bowl: { x: 2, y: 4, width: 16, height: 23 }, beside: "M18 9H21.5Q23 9 23 11V19Q23 21 21.5 21H18" }],
  [/\b(?:highball|collins|tall|long|sling|pint|beer)\b/i, { bowl: { x: 4.5, y: 1.5, width: 15, height: 25.5 } }],
];
const tumbler: Outline = { bowl: { x: 3, y: 6, width: 18, height: 21 } };

/** As SVG, with its words for whoever does not see it. `id` is its own on the page. */
export function fillPicture({ glass, fill }: Pick<Card, "glass" | "fill">, id: string): string {
  const { bowl, beside } = outlines.find(([words]) => words.test(glass ?? ""))?.[1] ?? tumbler;
  const { x, y, width, height } = bowl;
  const middle = x + width / 2;
  const at = (share: number) => round(y + height * (1 - Math.min(1, Math.max(0, share))));
  const sides = (from: number) => `M${x} ${from}V${y + height - 2}q0 2 2 2H${x + width - 2}q2 0 2 -2V${from}`;
  const { value } = fill.share;
  const drawn =
    value === null
      ? `<text class="unknown" x="${middle}" y="${y + height / 2 + 3}">?</text>`
      : [
          `<path class="liquid" d="${sides(Math.min(at(value), y + height - 2))}z"/>`,
          `<path class="level" d="M${x - 1.5} ${at(value)}H${x + width + 1.5}"/>`,
          `<text x="${middle}" y="${round(at(value) + (value > 0.4 ? 4.8 : -1.3))}">${escapeHtml(fill.volume)}</text>`,
        ].join("");
  const wash = fill.washline === null ? "" : `<path class="wash" d="M${x} ${at(fill.washline)}H${x + width}"/>`;
  return `<svg class="picture" viewBox="0 0 ${pictureMm.width} ${pictureMm.height}" role="img" aria-labelledby="${id}"><title id="${id}">${escapeHtml(wordsOf(fill))}</title><path class="glass" d="${sides(y)}${beside ?? ""}"/>${drawn}${wash}</svg>`;
}

function wordsOf({ share, washline, volume, capacity, why }: Card["fill"]): string {
  if (share.value === null) return `How full the glass is, is unknown: ${why.join("; ") || "nobody says"}.`;
  const line = washline === null ? "" : share.value > washline ? ", above its washline" : ", below its washline";
  return `The glass, ${volume} in the ${capacity} that it holds: filled to ${Math.round(share.value * 100)} % with its ice${line}.`;
}

function round(mm: number): number {
  return Math.round(mm * 100) / 100;
}
