/** Money as it is written: digits and sign of a currency, by the platform's own tables. */
import { isCurrencyCode } from "../../grammar/currencies.ts";

const formats = new Map<string, Intl.NumberFormat>();

/** How amounts of a currency are written; without one, or with one that nobody knows, as plain numbers with two decimals. */
export function moneyFormat(currency: string | undefined): Intl.NumberFormat {
  const key = currency && isCurrencyCode(currency) ? currency : "";
  let format = formats.get(key);
  if (!format) {
    format = key
      ? new Intl.NumberFormat("en", { style: "currency", currency: key, currencyDisplay: "narrowSymbol" })
      : new Intl.NumberFormat("en", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
    formats.set(key, format);
  }
  return format;
}

/** Whether a sign or a code, as written beside an amount, is that of the currency. A house that states none takes any. */
export function isOf(written: string | undefined, currency: string | undefined): boolean {
  if (!written || !currency || written.toUpperCase() === currency) return true;
  return moneyFormat(currency)
    .formatToParts(0)
    .some(({ type, value }) => type === "currency" && value === written);
}
