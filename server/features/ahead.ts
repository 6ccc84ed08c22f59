/** What a question about all texts will look at, piece by piece, so that whoever asks can take turns and stop. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { mentionsIn } from "./mentions.ts";
import { areUsersKnown, usesIn } from "./users.ts";

/** Names called everywhere: for references and renames. */
export const mentionsAhead = (house: House) => through(house, mentionsIn);
/** What everything is made with: for lenses and hierarchies. */
export const usesAhead = (house: House) => (areUsersKnown(house) ? [] : through(house, usesIn));

/** The texts may change between two pieces: what is gone by then is passed over, what came is looked at when it is asked for. */
function* through(house: House, look: (house: House, entry: Entry) => unknown): Generator<void> {
  for (const { tree } of [...house.documents()]) {
    for (const entry of tree.entries) {
      if (house.findDocumentOf(entry)) look(house, entry);
      yield;
    }
  }
}
