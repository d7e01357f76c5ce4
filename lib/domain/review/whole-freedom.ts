import { typeset } from "@/lib/metrology/reporting/typeset";
import { truncatedDegreesOfFreedom } from "@/lib/metrology/uncertainty/coverage-factor";

/** Degrees of freedom as the result states them, cut to a whole number: budget and result never differ by one. */
export const wholeFreedom = (value: number | null): string =>
  value === null ? "∞" : typeset(`${truncatedDegreesOfFreedom(value)}`);
