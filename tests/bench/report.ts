/** Measured figures as the tables of README.md. A ratio is ours ÷ theirs: below 1 is faster or smaller than theirs. */
import { cpus, loadavg, totalmem } from "node:os";
import type { EngineSpeed } from "./engine.ts";
import type { ColdStart, Opened } from "./measure.ts";
import type { ParseSpeed } from "./parse.ts";
import { percentile } from "./percentile.ts";

export interface EditRow {
  /** "1 file", "one file of 1,000 entries" */
  readonly what: string;
  readonly edits: number;
  readonly times: { readonly ours: readonly number[]; readonly bare: readonly number[]; readonly json: readonly number[] };
  /** Resident memory at the end, MB: ours with the folder read and one file open, the others with all open. */
  readonly rssMb: { readonly ours: number; readonly bare: number; readonly json: number };
}

export interface OpenRow {
  readonly files: number;
  readonly ours: Opened;
  readonly bare: Opened;
  readonly json: Opened;
  /** Ours reading the folder by itself. */
  readonly folder: Opened;
}

export interface Figures {
  readonly cold: Readonly<Record<"ours" | "bare" | "json" | "jsonFromNpm", readonly ColdStart[]>>;
  readonly edits: readonly EditRow[];
  readonly opens: readonly OpenRow[];
  readonly parses: readonly ParseSpeed[];
}

export function report({ cold, edits, opens, parses }: Figures): string {
  const at = (key: keyof ColdStart) => {
    const of = (runs: readonly ColdStart[]) =>
      percentile(
        runs.map((run) => run[key]),
        0.5,
      );
    const [ours, bare, json, npm] = [of(cold.ours), of(cold.bare), of(cold.json), of(cold.jsonFromNpm)];
    return [ms(ours), ms(bare), ms(json), ms(npm), ratio(ours, json), ratio(ours, bare)];
  };
  return [
    machine(),
    "### Cold start",
    `Process started → answer, one small file, ms, median of ${cold.ours.length} runs. All are bundled but the last JSON column.`,
    table(
      ["", "Mutchkin", "bare", "JSON", "JSON as from npm", "÷ JSON", "÷ bare"],
      [
        ["`initialize` answered", ...at("answered")],
        ["first diagnostics", ...at("diagnosed")],
      ],
    ),
    "### Edit → diagnostics",
    "One key in one pour of an open document, each changing what is found; ms, p50 / p95.",
    table(
      ["", "edits", "Mutchkin", "bare", "JSON", "p95 ÷ JSON", "p95 ÷ bare"],
      edits.map(({ what, edits: count, times: { ours, bare, json } }) => [
        what,
        String(count),
        spread(ours),
        spread(bare),
        spread(json),
        ratio(percentile(ours, 0.95), percentile(json, 0.95)),
        ratio(percentile(ours, 0.95), percentile(bare, 0.95)),
      ]),
    ),
    "### Opened cold → all diagnostics",
    "Every file handed over with `didOpen`, then each one's diagnostics asked for; ms from the first message sent to the last answer. The last column is Mutchkin alone, from its process's start: it reads the folder from the disk by itself, nothing is open, and the whole house's diagnostics are asked for once.",
    table(
      ["files", "Mutchkin", "bare", "JSON", "÷ JSON", "÷ bare", "folder read by Mutchkin"],
      opens.map(({ files, ours, bare, json, folder }) => [
        count(files),
        ms(ours.ms),
        ms(bare.ms),
        ms(json.ms),
        ratio(ours.ms, json.ms),
        ratio(ours.ms, bare.ms),
        `${ms(folder.ms)} (${count(folder.findings)} findings)`,
      ]),
    ),
    "### Memory",
    "Resident, MB, at the end of the edits: Mutchkin has read the folder and has one file open; the others know only what is open, so have all open. Second column: Mutchkin with all open, right after opening them.",
    table(
      ["", "Mutchkin", "Mutchkin, all open", "bare", "JSON", "÷ JSON"],
      edits.map(({ what, rssMb }, row) => [
        what,
        mb(rssMb.ours),
        mb(opens[row]?.ours.rssMb ?? Number.NaN),
        mb(rssMb.bare),
        mb(rssMb.json),
        ratio(rssMb.ours, rssMb.json),
      ]),
    ),
    "### Reading text to a tree",
    "1,000 entries that were not read before; MB of its own text in a second, and ms for the same entries (the JSON text is about twice as long). Median. Mutchkin: to the lossless tree; equal lines are read once and remembered, from the runs before too, so the first row is mostly remembering and the second is reading. JSON: `parseJSONDocument` of the JSON service.",
    table(
      ["text", "Mutchkin MB/s", "JSON MB/s", "Mutchkin ÷ JSON", "Mutchkin ms", "JSON ms"],
      parses.map(({ text, ours, json, oursMs, jsonMs }) => [
        text,
        ours.toFixed(1),
        json.toFixed(1),
        ratio(ours, json),
        ms(oursMs),
        ms(jsonMs),
      ]),
    ),
    "### Against the aims",
    aims({ cold, edits, opens, parses }),
  ].join("\n\n");
}

/** One drink by the engine alone; times the plain sum. */
export function engineReport({ sum, values, figures, met }: EngineSpeed): string {
  const row = (what: string, us: number) => [what, us < 1 ? us.toFixed(2) : us.toFixed(1), count(Math.round(us / sum))];
  return [
    machine(),
    table(
      ["eight pours, shaken", "µs", "times the plain sum"],
      [
        row("volumes × strengths ÷ volume, as a spreadsheet has it", sum),
        row("all figures", values),
        row("all figures, each with its uncertainty", figures),
        row("the same, of ingredients that are met for the first time", met),
      ],
    ),
    `Aim for all figures with their uncertainties: at most 50 µs; reached: ${figures <= 50 ? "yes" : "**no**"}.`,
  ].join("\n\n");
}

function aims({ cold, edits, opens, parses }: Figures): string {
  const median = (key: "ours" | "json") =>
    percentile(
      cold[key].map((run) => run.diagnosed),
      0.5,
    );
  const p95 = (what: string) => percentile(edits.find((row) => row.what === what)?.times.ours ?? [], 0.95);
  const largest = opens.find((row) => row.files === 10_000)?.ours.ms ?? Number.NaN;
  const rows: [string, number, number, (value: number) => string, "at most" | "at least"][] = [
    ["p95 of an edit in a house of 10,000 files, ms", 5, p95("10,000 files"), ms, "at most"],
    ["p95 of an edit in one file of 1,000 entries, ms", 5, p95(oneFile), ms, "at most"],
    ["10,000 files opened cold to all diagnostics, ms", 1500, largest, ms, "at most"],
    ["cold start to first diagnostics ÷ JSON's (bundled)", 1.3, median("ours") / median("json"), (value) => value.toFixed(2), "at most"],
    ...parses.map(
      ({ text, ours }) =>
        [`reading, ${text}, MB/s`, 20, ours, (value: number) => value.toFixed(1), "at least"] satisfies (typeof rows)[number],
    ),
  ];
  return table(
    ["", "aim", "here", "reached"],
    rows.map(([what, aim, here, show, sense]) => [
      what,
      `${sense} ${aim}`,
      Number.isNaN(here) ? "not measured" : show(here),
      Number.isNaN(here) ? "?" : (sense === "at most" ? here <= aim : here >= aim) ? "yes" : "**no**",
    ]),
  );
}

export const oneFile = "one file of 1,000 entries";

function machine(): string {
  const load = loadavg()[0]!.toFixed(1);
  return `Node ${process.versions.node}, ${cpus().length} × ${cpus()[0]?.model ?? "CPU"}, ${Math.round(totalmem() / 2 ** 30)} GiB; load of the machine at the end ${load}. Absolute figures are this machine's; the ratios are what to look at.`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [line(head), line(head.map((_, column) => (column === 0 ? "---" : "---:"))), ...rows.map(line)].join("\n");
}

const ms = (value: number) => (value < 10 ? value.toFixed(1) : count(Math.round(value)));
const mb = (value: number) => (Number.isNaN(value) ? "?" : value.toFixed(0));
const count = (value: number) => value.toLocaleString("en-GB");
const ratio = (ours: number, theirs: number) => (Number.isNaN(ours / theirs) ? "?" : (ours / theirs).toFixed(2));
const spread = (times: readonly number[]) => `${ms(percentile(times, 0.5))} / ${ms(percentile(times, 0.95))}`;
