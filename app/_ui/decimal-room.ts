/** Digits before and after the decimal mark that a column of printed numbers needs: the `align` of `Quantity`. */
export function decimalRoom(values: readonly (string | number | null | undefined)[]): {
  readonly integer: number;
  readonly fraction: number;
} {
  let integer = 1;
  let fraction = 0;
  for (const value of values) {
    if (value === null || value === undefined) continue;
    const [whole = "", part = ""] = String(value).split(".");
    integer = Math.max(integer, whole.length);
    fraction = Math.max(fraction, part.length);
  }
  return { integer, fraction };
}
