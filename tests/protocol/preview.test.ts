/** A chapter as it will print, over the protocol: what is typed counts, whatever is on disk. */
import { expect, test } from "vitest";
import { layOut, start } from "./start.ts";

interface Answer {
  readonly title?: string;
  readonly body?: string;
  readonly problems?: readonly { readonly text: string; readonly line: number }[];
  readonly problem?: string;
}

const specs = `house Slack Water
  units: ml
  ounce: 30 ml

book Slack Water
  chapters: fog.md; rain.md

drink Fog Bank
  50 ml dry gin
  25 ml lemon juice
  method: shake 12 s with cubed ice
`;

async function book() {
  const { folder, uriOf: uri } = layOut({
    "house.drink": specs,
    "fog.md": '# Fog\n\nPour :pour[lemon juice]{in="Fog Bank"} and no more.\n\n::spec[Fog Bank]\n',
    "rain.md": "# Rain\n\nAfter :see[Fog Bank].\n",
    "notes.md": "# Notes\n",
  });
  const client = await start({ folders: [folder()] });
  const preview = (name: string) => client.request<Answer>("mutchkin/preview", { textDocument: { uri: uri(name) } });
  return { client, uri, preview };
}

test("a chapter is shown as it prints, and what another file says of its recipes is in it as it is typed", async () => {
  const { client, uri, preview } = await book();
  expect(await preview("fog.md")).toMatchObject({ title: "Fog", problems: [] });
  expect((await preview("fog.md")).body).toContain("Pour 25\u00a0ml and no more.");
  // Its blocks tell their lines, so that a page can show what is at the cursor.
  expect([...(await preview("fog.md")).body!.matchAll(/data-line="(\d+)"/g)].map(([, line]) => line)).toEqual(["0", "2", "4"]);
  await client.open(uri("house.drink"), specs.replace("25 ml lemon", "20 ml lemon"));
  expect((await preview("fog.md")).body).toContain("Pour 20\u00a0ml and no more.");
});

test("what is typed and not saved counts, in this chapter and in others", async () => {
  const { client, uri, preview } = await book();
  await client.open(uri("rain.md"), "# Drizzle\n\nNot :see[Fog Bnak].\n", 1, "markdown");
  const typed = await preview("rain.md");
  expect(typed.title).toBe("Drizzle");
  expect(typed.problems).toMatchObject([{ line: 2 }]);
  expect(typed.body).toContain("Not <mark>:see[Fog Bnak]</mark>.");
});

test("a text of no book, and one that is no chapter, are told so in words", async () => {
  const { client, uri, preview } = await book();
  await client.open(uri("notes.md"), "# Notes\n", 1, "markdown");
  expect((await preview("notes.md")).problem).toBe("“notes.md” is no chapter of Slack Water: name it in the book's `chapters:`.");
  await client.open("file:///nowhere/else.md", "# Else\n", 1, "markdown");
  expect((await client.request<Answer>("mutchkin/preview", { textDocument: { uri: "file:///nowhere/else.md" } })).problem).toMatch(
    /belongs to no book/,
  );
});
