/** What the process answers to the shell. `--help` lists them too. */
export const exitCodes = { clean: 0, findings: 1, failed: 2 } as const;
