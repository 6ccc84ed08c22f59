/** `mutchkin book --changes-since`: for the book's editor, what prints differently since a revision. */
import { bookChanges } from "../reports/book/changes.ts";
import { bookPlace, readBookAt } from "./book-read.ts";
import { exitCodes } from "./exit-codes.ts";
import { filesAt } from "./files-at.ts";
import { gather } from "./gather.ts";
import { gitIn } from "./git.ts";
import { openHouse } from "./session.ts";
import type { Terminal } from "./terminal.ts";

/** Prints the report; answers the exit code. That something changed is no fault. */
export function changesCommand(asked: string, since: string, terminal: Terminal): number {
  const { files, currentFolder } = terminal;
  const git = gitIn(currentFolder);
  const then = filesAt(git, git.commit(since), currentFolder);
  const session = openHouse([asked], terminal);
  const place = bookPlace(session, asked);
  const old = gather(then, currentFolder, [asked], () => undefined);
  const report = bookChanges({
    before: readBookAt(old, bookPlace(old, asked), then),
    after: readBookAt(session, place, files),
    since,
    pathOf: (uri) => session.pathOf(uri),
    progress: (done, all) => terminal.progress(`Comparing ${done} of ${all}`),
  });
  const complete = session.finish();
  terminal.print(report);
  return complete ? exitCodes.clean : exitCodes.failed;
}
