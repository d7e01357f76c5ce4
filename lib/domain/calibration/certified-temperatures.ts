import type { FindingsOf } from "./findings";

/** Where a certificate was measured; for an equation, which does not say, its ends and its middle. */
export const certifiedTemperatures = (findings: FindingsOf<"reference">): readonly number[] => {
  if (!findings.equation) return findings.points.map(({ celsius }) => celsius);
  const { fromCelsius, toCelsius } = findings.equation;
  return [fromCelsius, (fromCelsius + toCelsius) / 2, toCelsius];
};
