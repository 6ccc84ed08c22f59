/** All that a command takes from outside, and where it prints: the process it runs in, or a test's stand-in. */
import { createRequire } from "node:module";
import { join } from "node:path";
import { styleText } from "node:util";
import { type Look, plainLook } from "../reports/sheet.ts";
import { disk, type Files } from "./files.ts";

export interface Terminal {
  readonly files: Files;
  readonly currentFolder: string;
  /** What was asked for. */
  print(text: string): void;
  /** What went wrong. */
  complain(text: string): void;
  /** How far a long command is; an empty text takes it away. Shown only to somebody who watches. */
  progress(text: string): void;
  readonly look: Look;
  /** A person reads along: long lines are broken. Otherwise a line stays whole, to be searched in. */
  readonly watched: boolean;
  /** An internal error is shown with where it happened. */
  readonly debug: boolean;
  startServer(): void;
  /** The day it is here: `2026-11-28`. */
  today(): string;
}

type Format = Parameters<typeof styleText>[0];

const widest = 100;
const severityFormats: Readonly<Record<Parameters<Look["severity"]>[0], Format>> = {
  error: ["bold", "red"],
  warning: ["bold", "yellow"],
  information: "cyan",
  hint: "dim",
};

export function processTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  const colours = stdout.isTTY && !env.NO_COLOR && env.TERM !== "dumb";
  const set = (format: Format, text: string) => (colours ? styleText(format, text) : text);
  // A reader that has seen enough, such as `head`, is no fault.
  stdout.on("error", (cause: NodeJS.ErrnoException) => {
    if (cause.code !== "EPIPE") throw cause;
  });
  return {
    files: disk,
    currentFolder: process.cwd(),
    print: (text) => stdout.write(text),
    complain: (text) => stderr.write(text),
    progress: stderr.isTTY ? oneLineOn(stderr) : () => undefined,
    look: {
      width: stdout.isTTY ? Math.min(stdout.columns || widest, widest) : plainLook.width,
      strong: (text) => set("bold", text),
      faint: (text) => set("dim", text),
      severity: (severity, text) => set(severityFormats[severity], text),
    },
    watched: Boolean(stdout.isTTY),
    debug: env.MUTCHKIN_DEBUG === "1",
    // The Swedish form of a date is year, month and day.
    today: () => new Date().toLocaleDateString("sv-SE"),
    // The server is a program of its own, built beside this one; it reads `--stdio` from the command line itself.
    startServer: () => createRequire(__filename)(join(__dirname, "server.js")),
  };
}

const betweenTellingsMs = 100;
/** Quicker than this is not worth a flicker. */
const patienceMs = 300;

/** One line that is written over and over, and cleared at the end. */
function oneLineOn(stream: NodeJS.WriteStream): (text: string) => void {
  let next = performance.now() + patienceMs;
  let shown = false;
  return (text) => {
    const now = performance.now();
    if (text ? now < next : !shown) return;
    next = now + betweenTellingsMs;
    shown = text !== "";
    stream.write(`\r\u001b[K${text}`);
  };
}
