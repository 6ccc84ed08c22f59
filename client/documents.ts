/** What the server serves. No scheme is named, so that untitled, remote and virtual documents are served too. */
export const documents = [{ language: "mutchkin" }, { language: "markdown" }];
