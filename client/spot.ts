/**
 * A line of a text, as it stands now or in a commit, and the commands that lead there. Any page and any file may hold a
 * link that runs a command with whatever it likes, so what is handed over is looked at before anything is opened.
 */
export interface Spot {
  readonly uri: string;
  readonly line: number;
  readonly commit?: string;
}

export const openPlaceCommand = "mutchkin.openPlace";
export const openBesideCommand = "mutchkin.openBeside";

/** A spot in a text of the kind that the server names; absent for anything else. */
export function spotFrom(value: unknown): Spot | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const { uri, line, commit } = value as Readonly<Record<string, unknown>>;
  if (typeof uri !== "string" || !text.test(uri) || climbs(uri)) return undefined;
  if (typeof line !== "number" || !Number.isSafeInteger(line) || line < 0 || line > lastLine) return undefined;
  if (commit === undefined) return { uri, line };
  return typeof commit === "string" && commitName.test(commit) ? { uri, line, commit } : undefined;
}

/** What was never saved has no ending. */
const text = /^(?:untitled:[^?#]+|[a-z][a-z\d+.-]*:\/\/[^?#]*\.(?:drink|md|markdown))$/i;
const commitName = /^(?:[0-9a-f]{40}|[0-9a-f]{64})$/;
/** What an editor counts to. */
const lastLine = 2 ** 31 - 1;

/** The editor takes a path for inside a folder by how it begins. */
function climbs(uri: string): boolean {
  try {
    return decodeURIComponent(uri).split(/[\\/]/).includes("..");
  } catch {
    return true;
  }
}
