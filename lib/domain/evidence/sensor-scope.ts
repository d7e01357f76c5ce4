import type { Evidence } from "./schema";

/** The scope as it holds for one sensor: none of it where its results are reported outside, whatever the type. */
export const sensorScope = (
  scope: Evidence["scope"],
  sensor: { readonly outsideScope?: string | undefined } | undefined,
): Evidence["scope"] => (scope && sensor?.outsideScope !== undefined ? [] : scope);
