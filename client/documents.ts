/** What the server serves. No scheme is named, so that untitled, remote and virtual documents are served too. */
export const documents = [{ language: "mutchkin" }, { language: "markdown" }];

/** Texts as they once were: what they declare must not stand beside what is declared now. */
export const pastSchemes = ["git", "mutchkin-then"];
