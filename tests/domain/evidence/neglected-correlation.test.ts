import { describe, expect, it } from "vitest";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";

/*
 * Confirms decisions/0010-two-stage-budget.md: an error of the shared voltmeter or junction acts on the
 * result through the sensor and, with the opposite sign, through the reference. Taking the two as
 * independent never lowers u.
 */

const types: readonly ThermocoupleType[] = ["K", "N", "R", "S"];

function slope(type: ThermocoupleType, celsius: number): number {
  const result = seebeck(referenceFunctions[type], celsius);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

describe("leaving out the correlation of a shared meter and junction", () => {
  const pairs = types.flatMap((sensor) => types.map((reference) => [sensor, reference] as const));

  it.each(pairs)("sensor %s against reference %s: never lowers u, 100 to 1200 °C", (sensor, reference) => {
    for (let t = 100; t <= 1200; t += 50) {
      const ratio = slope(sensor, t) / slope(reference, t);
      const meter = { direct: 1, throughReference: -ratio };
      const junction = { direct: -slope(sensor, 20), throughReference: slope(reference, 20) * ratio };
      for (const { direct, throughReference } of [meter, junction]) {
        const full = Math.abs(direct + throughReference);
        const independent = Math.sqrt(direct ** 2 + throughReference ** 2);
        expect(direct * throughReference).toBeLessThan(0);
        expect(independent).toBeGreaterThan(full);
      }
    }
  });

  it("type N against type R at 1000 °C: 3.1 taken as independent, 1.9 in truth", () => {
    const ratio = slope("N", 1000) / slope("R", 1000);
    expect(Math.sqrt(1 + ratio ** 2)).toBeCloseTo(3.1, 1);
    expect(Math.abs(1 - ratio)).toBeCloseTo(1.9, 1);
  });
});
