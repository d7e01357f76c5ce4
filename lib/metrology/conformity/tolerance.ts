import type { ThermocoupleType } from "../thermocouple/reference-functions";

/**
 * Tolerances of IEC 60584-1:2013 for K, N, R and S, reference junction at 0 °C: the larger of a fixed
 * part and a part that grows with temperature, evaluated over the whole range of the class. A table of
 * joins would be wrong in between: at 333 °C 0.75 % is 2.4975 °C, and class 2 is 2.5 °C.
 */
type ToleranceRule = {
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly fixedCelsius: number;
  /** Growing part: base + fraction·(|t| − origin), all in °C. */
  readonly baseCelsius: number;
  readonly fraction: number;
  readonly originCelsius: number;
};

export type ToleranceClass = "1" | "2" | "3";

export type Tolerance =
  | { readonly kind: "defined"; readonly celsius: number }
  | { readonly kind: "not-defined"; readonly reason: string };

function rule(
  from: number,
  to: number,
  fixed: number,
  fraction: number,
  base = 0,
  origin = 0,
): ToleranceRule {
  return {
    fromCelsius: from,
    toCelsius: to,
    fixedCelsius: fixed,
    baseCelsius: base,
    fraction,
    originCelsius: origin,
  };
}

const nickelBased = {
  // Class 1 ends at 1000 °C, and nothing is extrapolated above it.
  "1": rule(-40, 1000, 1.5, 0.004),
  "2": rule(-40, 1200, 2.5, 0.0075),
  "3": rule(-200, 40, 2.5, 0.015),
} as const;

const platinumBased = {
  // 1 °C up to 1100 °C, then 1 + 0.003·(t − 1100): the larger of the two everywhere.
  "1": rule(0, 1600, 1, 0.003, 1, 1100),
  "2": rule(0, 1600, 1.5, 0.0025),
  "3": null,
} as const;

const rules: Record<ThermocoupleType, Record<ToleranceClass, ToleranceRule | null>> = {
  K: nickelBased,
  N: nickelBased,
  R: platinumBased,
  S: platinumBased,
};

export const toleranceStandard = "IEC 60584-1:2013";

/** Tolerance (half-width, °C) at a temperature, or why the class has none there. */
export function tolerance(
  type: ThermocoupleType,
  toleranceClass: ToleranceClass,
  celsius: number,
): Tolerance {
  const found = rules[type][toleranceClass];
  if (!found) {
    return {
      kind: "not-defined",
      reason: `${toleranceStandard} has no class ${toleranceClass} for type ${type}`,
    };
  }
  if (!(celsius >= found.fromCelsius && celsius <= found.toCelsius)) {
    return {
      kind: "not-defined",
      reason: `${toleranceStandard} defines class ${toleranceClass} of type ${type} from ${found.fromCelsius} °C to ${found.toCelsius} °C, not at ${celsius} °C`,
    };
  }
  const growing = found.baseCelsius + found.fraction * (Math.abs(celsius) - found.originCelsius);
  return { kind: "defined", celsius: Math.max(found.fixedCelsius, growing) };
}
