import type { TableChoice } from "@/lib/views/sensor-function";

/** Steps of the correction table that can be chosen, in degrees of its unit. */
export const steps = [10, 25, 50, 100] as const;

/** What the address says of the table; anything it does not know is as if it were not there. */
export const readTableChoice = (
  query: Readonly<Record<string, string | string[] | undefined>>,
): TableChoice => ({
  unit: query.unit === "celsius" || query.unit === "fahrenheit" ? query.unit : null,
  step: steps.find((step) => String(step) === query.step) ?? 50,
});
