import type { WindowAssessment } from "@/lib/metrology/stability/stability-types";

type Series = { readonly seconds: ArrayLike<number>; readonly celsius: ArrayLike<number> };

/** The references' mean at their last readings, and when that was; null before any reading. */
export const lastTemperature = (
  series: readonly Series[],
): { readonly celsius: number; readonly seconds: number } | null => {
  const last = series.flatMap(({ seconds, celsius }) => {
    const index = celsius.length - 1;
    return index < 0 ? [] : [{ celsius: celsius[index] as number, seconds: seconds[index] as number }];
  });
  if (last.length === 0) return null;
  return {
    celsius: last.reduce((sum, one) => sum + one.celsius, 0) / last.length,
    seconds: Math.max(...last.map(({ seconds }) => seconds)),
  };
};

/** The setpoint a person at the furnace is at: the one nearest to the last temperature. */
export const currentSetpoint = <S extends { readonly celsius: number }>(
  setpoints: readonly S[],
  celsius: number | null,
): S | null =>
  setpoints.reduce<S | null>(
    (nearest, next) =>
      celsius === null
        ? (nearest ?? next)
        : nearest === null || Math.abs(next.celsius - celsius) < Math.abs(nearest.celsius - celsius)
          ? next
          : nearest,
    null,
  );

/** A stored assessment read back; it was written by `decideWindow`. */
export const readAssessment = (text: string): WindowAssessment & { readonly reason: string } =>
  JSON.parse(text) as WindowAssessment & { readonly reason: string };
