import { found, type Outcome, refused } from "../outcome";

/** A reference at a place along the gradient, mm, with its temperature in °C and its standard uncertainty. */
export type PlacedReference = {
  readonly millimetre: number;
  readonly celsius: number;
  readonly standardUncertainty: number;
};

export type BetweenReferences = {
  readonly celsius: number;
  readonly gradientCelsiusPerMillimetre: number;
  /** With the correlation of the two references. */
  readonly standardUncertainty: number;
  /** Of the sensor's place: |gradient|·u(x), °C. Apart, as it is the sensor's own; and it is no part of uniformity. */
  readonly placeCelsius: number;
};

/**
 * Temperature at a sensor's place between two references by a straight line: t = (1 − λ)t₁ + λt₂, λ = (x − x₁)/(x₂ − x₁), u² =
 * (1 − λ)²u₁² + λ²u₂² + 2λ(1 − λ)r·u₁u₂ (JCGM 100:2008, eq. 16). What is corrected here must not stand in the budget again as
 * axial uniformity. °C and mm.
 * Problems: `not-finite`; `no-solution` for two references at one place; `outside-range` for a sensor that is not between
 * them; `not-applicable` for an uncertainty below 0 or a correlation beyond ±1.
 */
export function gradientBetween(
  first: PlacedReference,
  second: PlacedReference,
  correlation: number,
  sensor: { readonly millimetre: number; readonly standardMillimetre: number },
): Outcome<BetweenReferences> {
  const numbers = [first, second, sensor].flatMap((place) => Object.values(place));
  if (![...numbers, correlation].every(Number.isFinite)) {
    return refused("not-finite", "a place, a temperature or an uncertainty is not a number");
  }
  const uncertainties = [first.standardUncertainty, second.standardUncertainty, sensor.standardMillimetre];
  if (uncertainties.some((u) => u < 0) || Math.abs(correlation) > 1) {
    return refused("not-applicable", "uncertainties from zero up and a correlation from −1 to 1");
  }
  const length = second.millimetre - first.millimetre;
  if (length === 0) return refused("no-solution", "both references stand at one place");
  const share = (sensor.millimetre - first.millimetre) / length;
  if (share < 0 || share > 1) {
    return refused("outside-range", `the sensor at ${sensor.millimetre} mm is not between the references`);
  }
  const a = (1 - share) * first.standardUncertainty;
  const b = share * second.standardUncertainty;
  const gradient = (second.celsius - first.celsius) / length;
  return found({
    celsius: (1 - share) * first.celsius + share * second.celsius,
    gradientCelsiusPerMillimetre: gradient,
    standardUncertainty: Math.sqrt(Math.max(0, a * a + b * b + 2 * correlation * a * b)),
    placeCelsius: Math.abs(gradient) * sensor.standardMillimetre,
  });
}
