export interface Files {
  /** The URIs of every file of the house below a folder, whatever the order. */
  list(folder: string): Promise<string[]>;
  /** A file's text; absent where it cannot be read (gone, no permission). */
  read(uri: string): Promise<string | undefined>;
}

/** A state that the texts of a folder were once in. */
export interface Revision {
  /** What it is called by when it is asked for again. */
  readonly name: string;
  /** The day that it was made on, `2026-11-28`; empty where that is not told, as is what was said of it. */
  readonly date: string;
  readonly subject: string;
}

export type RevisionKind = "branches" | "tags" | "commits";

export interface PastTexts {
  /** The commit's own name. */
  readonly commit: string;
  /** The folder that the commit is of, as a URI without a closing slash. */
  readonly top: string;
  /** The texts of the house's files by their URIs, as if they were in the folder now. */
  readonly texts: ReadonlyMap<string, string>;
  /** The URIs of files and of whole folders that the program is told to look away from now. */
  readonly ignored: readonly string[];
}

/** Why a revision cannot be had, in words for a person. */
export interface NoRevision {
  readonly problem: string;
}

/** What was once in a folder, by a program for versions. Whoever stops waiting ends the program, and gets a problem. */
export interface Revisions {
  /** The latest first. */
  list(folder: string, kind: RevisionKind, stop: AbortSignal): Promise<readonly Revision[] | NoRevision>;
  textsAt(folder: string, revision: string, stop: AbortSignal): Promise<PastTexts | NoRevision>;
  /** One file's text in a commit, by the commit's own name. */
  textAt(uri: string, commit: string, stop: AbortSignal): Promise<{ readonly text: string } | NoRevision>;
}

/** All that the server takes from outside besides its connection: so small that an editor's worker can give it too. */
export interface Environment extends Files {
  /** Milliseconds, for taking turns. */
  now(): number;
  /** Lets waiting messages be taken first. */
  nextTurn(): Promise<void>;
  /** Absent where no program can be run, as in a browser. */
  readonly revisions?: Revisions;
  /** Where the rules' page stands, as a URI without a fragment; absent where it is not shipped. */
  readonly rulesPage?: string;
}
