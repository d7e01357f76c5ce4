/** What a form sends is text; these read it into what an operation's schema expects, which then judges it. */

export const text = (data: FormData, name: string): string => {
  const value = data.get(name);
  return typeof value === "string" ? value.trim() : "";
};

/** Not trimmed: spaces are part of a password. */
export const secret = (data: FormData, name: string): string => {
  const value = data.get(name);
  return typeof value === "string" ? value : "";
};

export const optionalText = (data: FormData, name: string): string | undefined =>
  text(data, name) || undefined;

const decimal = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i;

/** "0.25" or "0,25" (one separator only, so no thousands are guessed). Anything else is NaN, which schemas refuse. */
export const parseDecimal = (typed: string): number => {
  const plain = typed.trim().replace(/\u2212/g, "-");
  return decimal.test(plain) ? Number(plain.replace(",", ".")) : Number.NaN;
};

export const number = (data: FormData, name: string): number => parseDecimal(text(data, name));

export const optionalNumber = (data: FormData, name: string): number | undefined =>
  text(data, name) === "" ? undefined : number(data, name);

export const flag = (data: FormData, name: string): boolean => data.get(name) !== null;

export const list = (data: FormData, name: string): string[] =>
  data.getAll(name).flatMap((value) => (typeof value === "string" && value !== "" ? [value] : []));

/**
 * Repeated rows, named `points.0.celsius`, `points.1.celsius` … as zod names them in its messages. Rows keep their
 * index; a row with nothing in it is left out only at the end, so that no message points at another row.
 */
export const rows = (data: FormData, name: string, columns: readonly string[]): Record<string, string>[] => {
  const pattern = new RegExp(`^${name.replaceAll(".", "\\.")}\\.(\\d{1,4})\\.`);
  const indexes = [...data.keys()].flatMap((key) => pattern.exec(key)?.[1] ?? []).map(Number);
  const count = Math.max(-1, ...indexes) + 1;
  const all = Array.from({ length: count }, (_, index) =>
    Object.fromEntries(columns.map((column) => [column, text(data, `${name}.${index}.${column}`)])),
  );
  const last = all.findLastIndex((row) => Object.values(row).some((value) => value !== ""));
  return all.slice(0, last + 1);
};
