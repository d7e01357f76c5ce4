import { z } from "zod";
import { ok, type Result, refuse } from "../refusal";

/** ISO 4217, as this machine's tables know it. */
const known: ReadonlySet<string> = new Set(Intl.supportedValuesOf("currency"));

export const Currency = z
  .string()
  .trim()
  .toUpperCase()
  .pipe(z.string().refine((code) => known.has(code), "Three letters, such as EUR (ISO 4217)."));

/** Amounts are stored in the smallest unit of the one currency: once there are any, another would change what they say. */
export const decideCurrency = (given: {
  readonly currency: string;
  readonly asked: string;
  readonly hasAmounts: boolean;
}): Result<null> => {
  if (given.asked === given.currency)
    return refuse("rule", `The laboratory reckons in ${given.currency} already. Nothing was changed.`);
  return given.hasAmounts
    ? refuse(
        "wrong-state",
        `Prices were recorded in ${given.currency}: in another currency they would be other sums. Nothing was changed; a laboratory keeps one currency here.`,
      )
    : ok(null);
};
