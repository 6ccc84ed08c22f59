/** What `export` writes and `import` reads. */
export const exported = ["stock", "specs", "recipes"] as const;
export type Exported = (typeof exported)[number];
