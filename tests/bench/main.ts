/**
 * The benchmark's run: every server side by side, each measurement of one server next to the same of
 * the others, so that whatever else the machine does falls on all of them.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { engineSpeed } from "./engine.ts";
import { type HouseFile, makeHouse, makeOneFile } from "./house.ts";
import { type ColdStart, coldStart, openAll, readFolder, Session } from "./measure.ts";
import { parseSpeeds } from "./parse.ts";
import { type EditRow, engineReport, type Figures, type OpenRow, oneFile, report } from "./report.ts";
import { bare, type Contender, json, jsonFromNpm, layOnDisk, ours, writeHouse } from "./servers.ts";

const { values: flags, positionals } = parseArgs({
  options: {
    sizes: { type: "string", default: "1,100,1000,10000" },
    edits: { type: "string", default: "200" },
    print: { type: "boolean", default: false },
    engine: { type: "boolean", default: false },
    "write-house": { type: "boolean", default: false },
  },
  allowPositionals: true,
});

if (flags["write-house"]) writeHouse(makeHouse(Number(positionals[0])), positionals[1]!);
else if (flags.engine) show("engine", engineReport(engineSpeed()));
else void run(); // A rejection ends the process with 1.

async function run() {
  const sizes = flags.sizes.split(",").map(Number);
  const edits = Number(flags.edits);
  const figures: Figures = {
    parses: say("parse speed", parseSpeeds()),
    cold: say("cold start", await coldStarts(9)),
    opens: await each(sizes, async (files) => say(`${files} files opened`, await openRow(files))),
    edits: [
      ...(await each(sizes, async (files) =>
        say(
          `edits, ${files} files`,
          await editRow(`${files.toLocaleString("en-GB")} file${files === 1 ? "" : "s"}`, makeHouse(files), edits),
        ),
      )),
      say("edits, one file", await editRow(oneFile, [makeOneFile(1000)], edits)),
    ],
  };
  show("measured", report(figures));
  show("engine", engineReport(engineSpeed()));
}

function show(part: "measured" | "engine", text: string) {
  console.log(`\n${text}`);
  if (!flags.print) writeBetweenMarkers("tests/bench/README.md", part, text);
}

async function coldStarts(runs: number): Promise<Figures["cold"]> {
  const files = makeHouse(1);
  const folder = layOnDisk(files);
  const all = { ours, bare, json, jsonFromNpm };
  const cold: Record<keyof typeof all, ColdStart[]> = { ours: [], bare: [], json: [], jsonFromNpm: [] };
  // The first round only warms the disk's cache.
  for (let round = 0; round <= runs; round++)
    for (const [name, contender] of Object.entries(all) as [keyof typeof all, Contender][]) {
      const start = await coldStart(contender, files, folder);
      if (round > 0) cold[name].push(start);
    }
  return cold;
}

async function openRow(files: number): Promise<OpenRow> {
  const house = makeHouse(files);
  return {
    files,
    ours: await openAll(ours, house),
    bare: await openAll(bare, house),
    json: await openAll(json, house),
    folder: await readFolder(ours, layOnDisk(house)),
  };
}

async function editRow(what: string, house: readonly HouseFile[], edits: number): Promise<EditRow> {
  const folder = layOnDisk(house);
  const started = {
    ours: await Session.start(ours, house, folder),
    bare: await Session.start(bare, house, folder),
    json: await Session.start(json, house, folder),
  };
  const sessions = Object.values(started);
  try {
    // In short turns, after one that does not count.
    const turn = 20;
    for (let done = -turn; done < edits; done += turn) {
      for (const session of sessions) await session.edit(turn, turns(done + turn));
      if (done < 0) for (const session of sessions) session.times.length = 0;
    }
    const of = <T>(take: (session: Session) => T) => ({ ours: take(started.ours), bare: take(started.bare), json: take(started.json) });
    return { what, edits: started.ours.times.length, times: of(({ times }) => times), rssMb: of(({ rssMb }) => rssMb) };
  } finally {
    await Promise.all(sessions.map((session) => session.end()));
  }
}

/** Evenly spread numbers in 0…1 (golden-section steps): the same pours for every server. */
function turns(from: number): () => number {
  let at = from;
  return () => (++at * 0.6180339887) % 1;
}

async function each<T, R>(items: readonly T[], run: (item: T) => Promise<R>): Promise<R[]> {
  const results: R[] = [];
  for (const item of items) results.push(await run(item));
  return results;
}

function say<T>(what: string, result: T): T {
  console.log(`${new Date().toISOString().slice(11, 19)} measured ${what}`);
  return result;
}

function writeBetweenMarkers(path: string, part: string, text: string) {
  const [begin, end] = [`<!-- begin: ${part} -->`, `<!-- end: ${part} -->`];
  const page = readFileSync(path, "utf8");
  const [before, after] = [page.indexOf(begin), page.indexOf(end)];
  if (before < 0 || after < before) throw new Error(`${path} has lost its markers ${begin} and ${end}`);
  writeFileSync(path, `${page.slice(0, before + begin.length)}\n\n${text}\n\n${page.slice(after)}`);
}
