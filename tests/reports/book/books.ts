/** Small books from one text: `=== file` starts a file, and a `book.drink` declares the book. */

import { type Book, readBook } from "../../../server/house/book/book.ts";
import { House } from "../../../server/house/house.ts";
import { readHouseFile } from "../../../server/house/house-files.ts";
import { readLarder } from "../../../server/larder/larder.ts";

export const root = "file:///book";

export function filesOf(text: string): Map<string, string> {
  const files = text.split(/^=== /m).slice(1);
  return new Map(
    files.map((file) => {
      const end = file.indexOf("\n");
      return [file.slice(0, end), file.slice(end + 1)];
    }),
  );
}

/** The day that a zip file of the tests notes. */
export const noDay = new Date(Date.UTC(1980, 0, 1));

/** A PNG of one dot: the smallest there is. */
export const dot = Uint8Array.from(
  atob("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="),
  (sign) => sign.charCodeAt(0),
);

/** The book that a text declares; `files` in another order must be the same book. */
export function bookFrom(files: ReadonlyMap<string, string>, house = houseFrom(files)): Book {
  const entry = [...house.documents()].flatMap(({ tree }) => tree.entries).find(({ kind }) => kind === "book")!;
  const texts = [...files].flatMap(([file, text]) => (file.endsWith(".md") ? [{ file, uri: `${root}/${file}`, text }] : []));
  return readBook(house, entry, { texts, picture: (file) => (file === "pictures/dot.png" ? dot : undefined) });
}

export function houseFrom(files: ReadonlyMap<string, string>): House {
  const house = new House({ larder: readLarder(), roots: [root] });
  for (const [file, text] of files) {
    const given = readHouseFile(file, text);
    if (given) house.setDocument({ uri: `${root}/${file}`, version: null, ...given });
  }
  return house;
}

export function bookOf(text: string): Book {
  return bookFrom(filesOf(text));
}

/** Two chapters, a drink that stands in one, a prep that no chapter prints, everything that Markdown can hold. */
export const ferryBook = `=== book.drink
house Slipway
  country: GB
  ounce: 30 ml

book Small Hours
  subtitle: Drinks for the <last> boat
  author: A. Purser
  rights: © A. Purser
  glassware: coupe; mug
  tools: shaker; fine strainer

stock aged rum
  kind: spirit
  abv: 42 %

prep honey syrup
  200 g honey
  100 g water
  keeps: 7 days chilled
  steps: Stir until even.

drink Lamp Sour
  family: sour
  glass: coupe, chilled
  method: shake 12 s; fine strain
  garnish: lemon zest, expressed
  headnote: For whoever trims the *lamp*.
  50 ml aged rum
  25 ml lemon juice
  20 ml honey syrup
=== 01-dusk.md
# Dusk & after

It is :strength[Lamp Sour] strong, holds :pour[honey syrup]{in="Lamp Sour"} of syrup;
see :see[Night Mug]{as="the *mug*"} and [the night](02-night.md#by-hand) or [home](https://example.org/a_b).

![A dot](pictures/dot.png)

> ::spec[Lamp Sour]

- one
- two **strong** *words* \`code\`

  of two paragraphs

3. three

| a | b |
| --- | ---: |
| 1 | :strength[Lamp Sour] |

    as it is

***
=== 02-night.md
# Night

## By hand

Nothing here.

### Night Mug

A long one.

\`\`\`drink
drink Night Mug
  family: hot
  glass: mug
  method: build
  garnish: none
  45 ml aged rum
  15 ml honey syrup
  120 ml water, hot
\`\`\`

\`\`\`text
drink no spec
\`\`\`
`;
