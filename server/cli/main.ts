/** The command line as a program. */
import { run } from "./program.ts";
import { processTerminal } from "./terminal.ts";

run(process.argv.slice(2), processTerminal()).then((code) => {
  // Not `process.exit`: what is still being printed is printed, and a started server lives on.
  process.exitCode = code;
});
