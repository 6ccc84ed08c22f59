/** The ids that places of a book are linked by: the same words give the same id in every build. */

/** As the common Markdown sites make an anchor of a heading, so that links hold there too. */
export function slugOf(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}\p{Pc}\- ]/gu, "")
    .replaceAll(" ", "-");
}

/** Gives each text an id of its own: the second of the same words is `name-1`. */
export function slugger(taken: readonly string[] = []): (text: string) => string {
  const given = new Set(taken);
  return (text) => {
    const slug = slugOf(text) || "part";
    let id = slug;
    for (let count = 1; given.has(id); count++) id = `${slug}-${count}`;
    given.add(id);
    return id;
  };
}
