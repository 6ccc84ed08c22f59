/** Long work takes turns: it gives way to what a person waits for. */
import type { Environment } from "./environment.ts";

const turnMs = 8;

/** A function to be awaited between pieces of work: it gives way once its turn is over, and answers whether it did. */
export function turns({ now, nextTurn }: Pick<Environment, "now" | "nextTurn">): () => Promise<boolean> {
  let since = now();
  return async () => {
    if (now() - since < turnMs) return false;
    await nextTurn();
    since = now();
    return true;
  };
}
