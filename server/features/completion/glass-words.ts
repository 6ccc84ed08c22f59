/** The words behind a glass that mean something. One row each. */
export const glassWords = [
  { word: "chilled", doc: "As cold as the fridge." },
  { word: "frozen", doc: "As cold as the freezer." },
  { word: "warm", doc: "From a hot cupboard, or rinsed with hot water." },
  { word: "at", doc: "At the degrees that follow: `at -8 C`." },
] as const;
