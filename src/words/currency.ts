/** Money as a region writes it: which currency is usual there, and amounts in it. */

/** ISO 4217 by regions of ISO 3166-1 in which people who might sell glass live; elsewhere the euro is offered first, and any can be chosen. */
const BY_REGION: Readonly<Record<string, string>> = {
  US: "USD",
  GB: "GBP",
  CH: "CHF",
  LI: "CHF",
  CA: "CAD",
  AU: "AUD",
  NZ: "NZD",
  JP: "JPY",
  SE: "SEK",
  NO: "NOK",
  DK: "DKK",
  IS: "ISK",
  PL: "PLN",
  CZ: "CZK",
  HU: "HUF",
  RO: "RON",
  TR: "TRY",
  IN: "INR",
  CN: "CNY",
  KR: "KRW",
  MX: "MXN",
  BR: "BRL",
  ZA: "ZAR",
  IL: "ILS",
};
const EURO = "EUR";

export const CURRENCIES: readonly string[] = [EURO, ...new Set(Object.values(BY_REGION))];

/** @param locale with a region, as `localeOf` gives it */
export function usualCurrency(locale: string): string {
  const { region } = new Intl.Locale(locale);
  return (region && BY_REGION[region]) || (locale === "en" ? "USD" : EURO);
}

/** "€60.00", "60,00 €": with the coins that the currency has. */
export const moneyIn = (locale: string, currency: string) => {
  const format = new Intl.NumberFormat(locale, { style: "currency", currency });
  return (amount: number): string => format.format(amount);
};

/** Decimals of the currency's amounts. */
export const coinDigits = (currency: string): number =>
  new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2;

/** "euro (EUR)" */
export const currencyName = (locale: string, currency: string): string =>
  `${new Intl.DisplayNames(locale, { type: "currency" }).of(currency) ?? currency} (${currency})`;
