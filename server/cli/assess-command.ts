/** `mutchkin assess`: drinks and preps with their figures. */
import type { Entry } from "../../grammar/tree.ts";
import type { House } from "../house/house.ts";
import { fold } from "../house/names.ts";
import { askFor, nearestOf } from "../house/nearest.ts";
import { settingsOf } from "../house/settings.ts";
import { assessEntries } from "../reports/assess.ts";
import { assessText, type Sheet } from "../reports/assess-text.ts";
import { cautionsIn } from "../reports/cautions-in.ts";
import { prepsIn } from "../reports/preps-in.ts";
import { exitCodes } from "./exit-codes.ts";
import { openHouse } from "./session.ts";
import type { Terminal } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface AssessOptions {
  readonly format: "text" | "json";
  /** Only the drink of this name. */
  readonly drink?: string;
  /** The sum behind every figure. */
  readonly explain?: boolean;
}

/** Prints the figures; answers the exit code. Findings are shown beside them and are no reason to fail: `check` is for that. */
export function assessCommand(paths: readonly string[], { format, drink, explain = false }: AssessOptions, terminal: Terminal): number {
  const session = openHouse(paths, terminal);
  const { house } = session;
  const asked = session.documents.flatMap((document) => document.tree.entries);
  const entries = drink === undefined ? asked : withPreps(house, drinksNamed(drink, asked));
  const report = assessEntries(house, entries, {
    ...session,
    explained: explain,
    progress: (done) => session.progress(done, entries.length),
  });
  const complete = session.finish();
  terminal.print(
    format === "json"
      ? `${JSON.stringify(report, null, 2)}\n`
      : assessText(
          report,
          { ...ofHouse(house, entries), atLength: drink !== undefined || explain, cautions: cautionsIn(house, entries) },
          terminal.look,
        ),
  );
  return complete ? exitCodes.clean : exitCodes.failed;
}

function drinksNamed(name: string, entries: readonly Entry[]): readonly Entry[] {
  const drinks = entries.filter((entry) => entry.kind === "drink" && entry.name);
  const found = drinks.filter((entry) => fold(entry.name!.text) === fold(name));
  if (found.length > 0) return found;
  const near = nearestOf(
    name,
    drinks.map((entry) => entry.name!.text),
  );
  throw new UsageError(`There is no drink “${name}” here.`, askFor(near, "`mutchkin assess` without `--drink` lists all of them."));
}

function withPreps(house: House, drinks: readonly Entry[]): readonly Entry[] {
  return [...drinks, ...new Set(drinks.flatMap((drink) => prepsIn(house, drink)))];
}

/** The one house that all are of, and the unit that its people read; millilitres where there are several. */
function ofHouse(house: House, entries: readonly Entry[]): Pick<Sheet, "house" | "measure"> {
  const scopes = new Set(entries.map((entry) => house.scopeOf(entry)));
  const [scope] = scopes;
  const name = scope?.houses[0]?.name?.text;
  if (!scope || scopes.size > 1) return { measure: { units: "ml", ounceMl: 30 } };
  return { measure: settingsOf(house, scope), ...(name && { house: name }) };
}
