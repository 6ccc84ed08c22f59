/** How fast text becomes a tree: ours to the lossless tree, the JSON service's parser to its syntax tree. */
import { createRequire } from "node:module";
import { resolve } from "node:path";
import { read } from "../../grammar/read.ts";
import { type Entry, makeOneFile, withDistinctLines } from "./house.ts";
import { percentile } from "./percentile.ts";
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

const warmUps = 30;
const runs = 15;

/** Every run reads a text that was not read before, so that nothing kept from an earlier run answers for it. */
export function parseSpeeds(): ParseSpeed[] {
  const parseJson = jsonParser();
  return [speed("lines repeat, as in a house", (entries) => entries), speed("hardly two lines alike", withDistinctLines)];

  function speed(text: ParseSpeed["text"], prepare: (entries: readonly Entry[], first: number) => readonly Entry[]): ParseSpeed {
    const times = Array.from({ length: warmUps + runs }, (_, run) => {
      const entries = prepare(makeOneFile(1000, 100 + run).entries, run * 10_000);
      return { ours: time(printSpecs(entries), read), json: time(printJson(entries), parseJson) };
    }).slice(warmUps);
    const median = (of: (run: (typeof times)[number]) => number) => percentile(times.map(of), 0.5);
    return {
      text,
      ours: median((run) => run.ours.mbPerS),
      json: median((run) => run.json.mbPerS),
      oursMs: median((run) => run.ours.ms),
      jsonMs: median((run) => run.json.ms),
    };
  }
}

function time(text: string, parse: (text: string) => unknown): { ms: number; mbPerS: number } {
  const start = performance.now();
  parse(text);
  const ms = performance.now() - start;
  return { ms, mbPerS: Buffer.byteLength(text) / 1e3 / ms };
}

function jsonParser(): (text: string) => unknown {
  const fromBench = createRequire(resolve(".bench/package.json"));
  const service = fromBench("vscode-json-languageservice").getLanguageService({});
  const { TextDocument } = fromBench("vscode-languageserver-textdocument");
  return (text) => service.parseJSONDocument(TextDocument.create("bench:///house.json", "json", 1, text));
}
