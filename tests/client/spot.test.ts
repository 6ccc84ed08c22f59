/** What a command that opens a place takes from whoever runs it. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { spotFrom } from "../../client/spot.ts";

const commit = "0123456789abcdef0123456789abcdef01234567";

test.each([
  { uri: "file:///bar/sours.drink", line: 0 },
  { uri: "file:///c%3A/bar/low%20tide.md", line: 41 },
  { uri: "file://server/share/bar/sours.drink", line: 1 },
  { uri: "vscode-remote://ssh-remote%2Bhost/bar/sours.drink", line: 1, commit },
  { uri: "untitled:Untitled-1", line: 3 },
  { uri: "file:///bar/a..b.drink", line: 3 },
])("a place is taken: %j", (spot) => {
  expect(spotFrom(spot)).toEqual(spot);
  expect(spotFrom({ ...spot, more: "of it" })).toEqual(spot);
});

const sound = { uri: "file:///bar/sours.drink", line: 0 };
test.each([
  undefined,
  null,
  "file:///bar/sours.drink",
  [],
  { line: 0 },
  { ...sound, uri: "file:///etc/passwd" },
  { ...sound, uri: "/bar/sours.drink" },
  { ...sound, uri: "command:workbench.action.terminal.new" },
  { ...sound, uri: "https://elsewhere.invalid/?x=.drink" },
  { ...sound, uri: "file:///etc/passwd#.drink" },
  { ...sound, uri: "file:///bar/../etc/notes.md" },
  { ...sound, uri: "file:///bar/%2E%2e/etc/notes.md" },
  { ...sound, uri: "file:///bar/..%5Cetc%5Cnotes.md" },
  { ...sound, uri: "file:///bar/%E0%A4%A.md" },
  { ...sound, line: -1 },
  { ...sound, line: 0.5 },
  { ...sound, line: "0" },
  { ...sound, line: Number.POSITIVE_INFINITY },
  { ...sound, commit: "HEAD" },
  { ...sound, commit: `${commit}\n` },
  { ...sound, commit: "--output=x" },
  { ...sound, commit: null },
])("anything else is not: %j", (value) => expect(spotFrom(value)).toBeUndefined());

test("nothing that is handed over throws", () => {
  fc.assert(fc.property(fc.anything(), (value) => spotFrom(value) === undefined));
  const some = fc.record({ uri: fc.oneof(fc.string(), fc.webUrl()), line: fc.anything(), commit: fc.anything() });
  fc.assert(fc.property(some, (value) => spotFrom(value) === undefined || value.uri.includes(":")));
});
