import { ok, type Result, refuse } from "../refusal";

/** Currencies whose smallest unit is not a hundredth (ISO 4217, list one; from memory). */
const otherDigits: Readonly<Record<string, number>> = {
  ...{ JPY: 0, KRW: 0, ISK: 0, CLP: 0, VND: 0 },
  ...{ BHD: 3, JOD: 3, KWD: 3, OMR: 3, TND: 3 },
};

export const minorDigits = (currency: string): number => otherDigits[currency] ?? 2;

/** "1234.50": what a spreadsheet reads as a number. */
export const plainMoney = (minor: number, currency: string): string => {
  const digits = minorDigits(currency);
  const text = String(Math.abs(minor)).padStart(digits + 1, "0");
  const whole = text.slice(0, text.length - digits);
  return `${minor < 0 ? "-" : ""}${whole}${digits === 0 ? "" : `.${text.slice(-digits)}`}`;
};

/** "1 234.50", thousands set apart by a narrow space, as quantities are. */
export const groupedMoney = (minor: number, currency: string): string =>
  plainMoney(minor, currency).replace(/\B(?=(\d{3})+(?=\.|$))(?<!\.\d*)/g, "\u202f");

/** "GBP 1 234.50". */
export const formatMoney = (minor: number, currency: string): string =>
  `${currency} ${groupedMoney(minor, currency)}`;

/** What was typed in the currency as whole smallest units; never through a float. */
export const parseMoney = (typed: string, currency: string): Result<number> => {
  const digits = minorDigits(currency);
  const match = /^(\d{1,7})(?:[.,](\d+))?$/.exec(typed.trim());
  const fraction = match?.[2] ?? "";
  if (!match || fraction.length > digits)
    return refuse("invalid", "The price is not a sum of money. Nothing was stored.", {
      amount:
        digits === 0
          ? `Write a whole number of ${currency}.`
          : `Write the price in ${currency}, such as 42.50: no thousands sign, at most ${digits} digits after the point.`,
    });
  return ok(Number((match[1] ?? "0") + fraction.padEnd(digits, "0")));
};
