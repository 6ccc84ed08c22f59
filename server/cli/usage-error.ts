/** A command that cannot be carried out as it was given: what is wrong with it, and what to write instead. */
export class UsageError extends Error {
  constructor(
    what: string,
    readonly todo: string,
  ) {
    super(what);
  }
}
