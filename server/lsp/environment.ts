export interface Files {
  /** The URIs of every file of the house below a folder, whatever the order. */
  list(folder: string): Promise<string[]>;
  /** A file's text; absent where it cannot be read (gone, no permission). */
  read(uri: string): Promise<string | undefined>;
}

/** All that the server takes from outside besides its connection: so small that an editor's worker can give it too. */
export interface Environment extends Files {
  /** Milliseconds, for taking turns. */
  now(): number;
  /** Lets waiting messages be taken first. */
  nextTurn(): Promise<void>;
  /** Where the rules' page stands, as a URI without a fragment; absent where it is not shipped. */
  readonly rulesPage?: string;
}
