import { ok, type Result, refuse } from "../refusal";
import type { TypedReading } from "./schema";

const parts = ["seconds", "channel", "microvolts", "polarity"] as const;

/** Readings typed by hand are typed twice; the two entries must agree in every figure, in the same order. */
export const compareEntries = (
  first: readonly TypedReading[],
  second: readonly TypedReading[],
): Result<readonly TypedReading[]> => {
  const fields: Record<string, string> = {};
  for (let row = 0; row < Math.max(first.length, second.length); row += 1) {
    const one = first[row];
    const other = second[row];
    if (!one || !other) {
      fields[`second.${row}.microvolts`] = `The ${one ? "second" : "first"} entry has no reading ${row + 1}.`;
      continue;
    }
    for (const part of parts)
      if (!Object.is(one[part], other[part]))
        fields[`second.${row}.${part}`] =
          `The entries differ: ${String(one[part])} and ${String(other[part])}. Look at the record and correct the wrong one.`;
  }
  return Object.keys(fields).length > 0
    ? refuse("invalid", "The two entries do not agree. Nothing was stored.", fields)
    : ok(first);
};
