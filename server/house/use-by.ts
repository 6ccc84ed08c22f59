/** Until when what is made is good, and what of it takes long, as far as that is stated. It is never worked out from sugar, acid or strength. */
import type { Entry } from "../../grammar/tree.ts";
import { batchFor } from "./calls.ts";
import { findFieldIn } from "./entry.ts";
import type { House } from "./house.ts";
import { type Keeping, shortestKeeping } from "./keeping.ts";
import { secondsIn, stepsOf } from "./method.ts";

export interface UseBy {
  /** Absent where it does not say how long it keeps. */
  readonly date?: string;
  /** As written: `14 days chilled`. */
  readonly keeps?: string;
  /** Where it says nothing itself: the shortest of what goes in, which may be no help. */
  readonly shortest?: Keeping;
}

/** Its own statement; the shorter end of a range. */
export function useByOf(house: House, entry: Entry, made: string): UseBy {
  const own = shortestKeeping(house, entry);
  if (own) return { date: later(made, own.seconds), keeps: own.text };
  const parts = batchFor(house, entry).calls.flatMap((call) => (call.entry && shortestKeeping(house, call.entry)) ?? []);
  const [shortest] = parts.sort((one, other) => one.seconds - other.seconds);
  return shortest ? { shortest } : {};
}

const format = new Intl.DateTimeFormat("en", { year: "numeric", month: "2-digit", day: "2-digit", timeZone: "UTC" });

/** A day so much later; hours that fill no day leave it the same. */
export function later(date: string, seconds: number): string {
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  const days = Math.floor(seconds / secondsIn.day!);
  const parts = format.formatToParts(Date.UTC(year, month - 1, day + days));
  return (["year", "month", "day"] as const).map((type) => parts.find((part) => part.type === type)!.value).join("-");
}

/** What has to be begun in time: the steps of a prep that take an hour or longer, as they are written. */
export function longStepsOf(house: House, entry: Entry): string[] {
  const method = entry.kind === "prep" ? findFieldIn(entry, "method") : undefined;
  const steps = method ? stepsOf(house, method) : [];
  return steps.filter(({ seconds }) => seconds && seconds.value >= secondsIn.hour!).map(({ item }) => item.text);
}
