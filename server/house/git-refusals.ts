/** What git refuses, and what to do about it: one table for whoever runs it. */

/** In sentences. */
export interface Refusal {
  readonly problem: string;
  readonly todo: string;
}

/** What no row knows is left to git to explain. Matched in English, so that git has to be run with `LC_ALL=C`. */
const rows: readonly { readonly says: RegExp; readonly problem?: string; todo(folder: string): string }[] = [
  {
    says: /not a git repository/,
    problem: "This folder is in no git repository, so there is nothing to compare it with.",
    todo: () => "Run `git init` and commit the specs, or go to a folder that is in one.",
  },
  {
    says: /dubious ownership/,
    problem: "git refuses this folder, since it is another account's.",
    todo: (folder) => `If you trust it: git config --global --add safe.directory "${folder}".`,
  },
  {
    says: /promisor|could not fetch|unable to read|bad object|missing|not a tree object/,
    todo: () => "Part of the history is not here: `git fetch` brings it, `git fsck` says what is broken.",
  },
];

/** `said`: what git printed to standard error before it ended with a fault. */
export function refusalOf(said: string, folder: string): Refusal {
  const row = rows.find(({ says }) => says.test(said));
  const [first] = said.trim().split("\n");
  return {
    problem: row?.problem ?? `git says: ${first || "nothing, and ended with a fault"}`,
    todo: row?.todo(folder) ?? "`git status` in the same folder may say more.",
  };
}

export const gitNotStarted: Refusal = {
  problem: "The git program could not be started.",
  todo: "Install git, or put it on the PATH.",
};

/** A shallow clone may not have it yet. */
export function noSuchRevision(revision: string, isShallow: boolean): Refusal {
  return {
    problem: `There is no revision “${revision}” here.`,
    todo: isShallow ? "This clone is shallow: fetch more of its history first." : "Name a commit, a branch or a tag, such as HEAD~1.",
  };
}

export const nothingCommitted: Refusal = { problem: "Nothing is committed here yet.", todo: "Commit the specs once, then compare." };
