/** The reference page of the protocol: its list of requests, from the rows that register them. */
import { printBetween, printTable } from "./markers.ts";

/** The page with its list printed anew; the rest stays as it is. */
export function requestsPage(page: string, rows: readonly { readonly method: string; readonly does: string }[]): string {
  const cells = rows.map(({ method, does }) => [`\`${method}\``, does]);
  return printBetween(page, "requests", printTable(["request", "what is answered"], cells));
}
