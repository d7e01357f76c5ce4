import { describe, expect, it } from "vitest";
import { fitSensor } from "@/lib/domain/evidence/fit-sensor";
import { coefficientCovariance, deviationAt } from "@/lib/metrology/deviation/deviation-at";
import { buildEvidence } from "./build-evidence";
import { measured } from "./measured";

/** Invented sensors without noise; voltmeter and junction shared with the references. */
const shared = { coefficient: 0.9, reason: "invented for a test" };
const pointsOf = (errorAt: (celsius: number) => number) =>
  [300, 500, 700, 900, 1100].flatMap((nominal) => {
    const evidence = buildEvidence({ sensors: ["N"], nominals: [nominal], errorCelsius: errorAt(nominal) });
    if (evidence.version !== 2) throw new Error("the correlation stands in version 2");
    return measured({
      ...evidence,
      correlation: { ...evidence.correlation, voltmeter: shared, junction: shared },
    });
  });
const functionOf = (measuredPoints: ReturnType<typeof pointsOf>) => {
  const outcome = fitSensor(measuredPoints);
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};
const points = pointsOf((celsius) => 0.0015 * celsius);
const fitted = functionOf(points);

describe("the deviation function of a sensor", () => {
  it("goes through zero at 0 °C and by the points within twice their own uncertainty, at a degree that is shown", () => {
    expect(fitted.coefficients[0]).toBe(0);
    expect(fitted.isDegreeRuleMet).toBe(true);
    expect(fitted.degreesTried.filter(({ isChosen }) => isChosen).map(({ degree }) => degree)).toEqual([
      fitted.degree,
    ]);
    for (const { normalisedResidual } of fitted.points)
      expect(Math.abs(normalisedResidual)).toBeLessThanOrEqual(2);
  });

  it("says so where the allowed degrees do not follow the points, and takes the scatter into U", () => {
    const offset = functionOf(pointsOf(() => 1.2));
    expect(offset.isDegreeRuleMet).toBe(false);
    expect(offset.scatterFactor).toBeGreaterThan(1);
  });

  it("keeps what the points share: u at a point is far above what independent points would give", () => {
    const middle = points[2];
    if (!middle) throw new Error("no point");
    const at = deviationAt(fitted, 700);
    if (!at.ok) throw new Error(at.problem.message);
    const ratio = at.value.standardUncertainty / middle.combinedMicrovolt;
    // Five independent points and two coefficients would give about √(2/5) of a point's u.
    expect(ratio).toBeGreaterThan(0.8);
    expect(ratio).toBeLessThan(1.1);
  });

  it("carries a variance for each coefficient, and for none that is fixed at zero", () => {
    const covariance = coefficientCovariance(fitted);
    expect(covariance[0]?.[0]).toBe(0);
    for (let i = 1; i <= fitted.degree; i += 1) expect(covariance[i]?.[i]).toBeGreaterThan(0);
  });

  it("gives nothing above the highest or below the lowest measured point", () => {
    expect(deviationAt(fitted, 1101)).toMatchObject({ ok: false, problem: { kind: "outside-range" } });
    expect(deviationAt(fitted, 299)).toMatchObject({ ok: false, problem: { kind: "outside-range" } });
  });

  it("says why a sensor with too few setpoints has none", () => {
    const outcome = fitSensor(points.slice(0, 2));
    expect(outcome).toMatchObject({ ok: false, problem: { kind: "too-few" } });
  });

  it("takes a shared voltmeter's error at its net effect, as each point's own budget does", () => {
    for (const point of points) {
      const single = fitSensor([point, ...points.filter((other) => other !== point)]);
      if (!single.ok) throw new Error(single.problem.message);
      const { points: fittedPoints, common } = single.value;
      const index = fittedPoints.findIndex(({ celsius }) => celsius === point.nominalCelsius);
      const residual = fittedPoints[index];
      const shared = common.find(({ x }) => x === point.nominalCelsius)?.y ?? Number.NaN;
      const own = Math.abs((residual?.residual ?? 0) / (residual?.normalisedResidual ?? 1));
      // V's diagonal is the point's u_c², its covariance row included.
      expect(Math.sqrt(shared * shared + own * own) / point.combinedMicrovolt).toBeCloseTo(1, 6);
    }
  });
});
