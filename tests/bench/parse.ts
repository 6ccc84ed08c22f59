/** How fast text becomes a tree: ours to the lossless tree, the JSON service's parser to its syntax tree. */
import { createRequire } from "node:module";
import { resolve } from "node:path";
import { read } from "../../grammar/read.ts";
import { type Entry, makeOneFile, withDistinctLines } from "./house.ts";
import { printJson, printSpecs } from "./print.ts";

export interface ParseSpeed {
  readonly text: "lines repeat, as in a house" | "hardly two lines alike";
  /** MB of its own text in a second, median of the runs. */
  readonly ours: number;
  readonly json: number;
  /** Milliseconds for the same 1,000 entries. */
  readonly oursMs: number;
  readonly jsonMs: number;
}

const runs = 15;

/** Every run reads a text that was not read before, so that nothing kept from an earlier run answers for it. */
export function parseSpeeds(): ParseSpeed[] {
  const parseJson = jsonParser();
  return [speed("lines repeat, as in a house", (entries) => entries), speed("hardly two lines alike", withDistinctLines)];

  function speed(text: ParseSpeed["text"], prepare: (entries: readonly Entry[], lot: number) => readonly Entry[]): ParseSpeed {
    const houses = Array.from({ length: runs + 5 }, (_, run) => prepare(makeOneFile(1000, 100 + run).entries, run * 10_000));
    const ours = timeAll(houses.map(printSpecs), read);
    const json = timeAll(houses.map(printJson), parseJson);
    return { text, ours: ours.mbPerS, json: json.mbPerS, oursMs: ours.ms, jsonMs: json.ms };
  }
}

/** The first five runs warm the code up and do not count. */
function timeAll(texts: readonly string[], parse: (text: string) => unknown): { mbPerS: number; ms: number } {
  const times = texts.map((text) => {
    const start = performance.now();
    parse(text);
    return { ms: performance.now() - start, mb: Buffer.byteLength(text) / 1e6 };
  });
  const sorted = times.slice(5).sort((a, b) => a.ms / a.mb - b.ms / b.mb);
  const { ms, mb } = sorted[Math.floor(sorted.length / 2)]!;
  return { mbPerS: (mb / ms) * 1000, ms };
}

function jsonParser(): (text: string) => unknown {
  const fromBench = createRequire(resolve(".bench/package.json"));
  const service = fromBench("vscode-json-languageservice").getLanguageService({});
  const { TextDocument } = fromBench("vscode-languageserver-textdocument");
  return (text) => service.parseJSONDocument(TextDocument.create("bench:///house.json", "json", 1, text));
}
