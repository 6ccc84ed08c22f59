/** What a recipe says of a drink in words of our own choice, so that it is read back for what it was. */

/** Behind an ingredient. */
export const forGarnish = ", to garnish";
export const forRim = ", for the rim";
/** The section of the instructions that is in the closed words of a `method`. */
export const methodSection = "Method";
/** The category of what is made ahead. */
export const prepCategory = "prep";

/** The last step of a method. */
export function serveIn(glass: string): string {
  return `Serve in: ${glass}.`;
}

export const served = /^Serve in: (.+)\.$/;
