/** Names by the platform's own tables: countries and currencies in English. Every browser's worker has them, too. */

export const countryNames = new Intl.DisplayNames(["en"], { type: "region" });
export const currencyNames = new Intl.DisplayNames(["en"], { type: "currency" });
