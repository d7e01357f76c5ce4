import { describe, expect, it } from "vitest";
import { junctionSensitivity } from "@/lib/metrology/comparison/reference-junction";
import {
  sharedCorrelation,
  sharedJunctionCorrelation,
  sharedMeterCorrelation,
  sharedOriginCorrelation,
} from "@/lib/metrology/standard/shared-correlation";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { problemOf, resultOf } from "../result-of";

describe("correlation of what shares an error", () => {
  it("of two references of one origin is u²/(u₁·u₂), and 1 where they have nothing of their own", () => {
    expect(resultOf(sharedOriginCorrelation(0.1, 0.15, 0.2))).toBeCloseTo(0.01 / 0.03, 12);
    expect(resultOf(sharedOriginCorrelation(0.15, 0.15, 0.15))).toBe(1);
    expect(resultOf(sharedOriginCorrelation(0, 0.15, 0.15))).toBe(0);
  });

  it("of a reference and a sensor on one meter follows the signs of their sensitivities", () => {
    // A voltmeter that reads high makes the reference hotter, and the sensor's emf at the nominal smaller and larger.
    const meter = 1;
    const reference = { standardUncertainty: 0.2, sensitivity: 0.0866 };
    const sensor = { standardUncertainty: 2, sensitivity: -1 };
    expect(resultOf(sharedMeterCorrelation(meter, reference, sensor))).toBeCloseTo(-0.0866 / 0.4, 12);
    expect(resultOf(sharedMeterCorrelation(meter, reference, reference))).toBeCloseTo(
      (0.0866 / 0.2) ** 2,
      12,
    );
  });

  it("of two channels of one block takes S at the junction over S at the tip", () => {
    const { S, K } = referenceFunctions;
    const s = resultOf(junctionSensitivity(S, 0, 1000));
    const k = resultOf(junctionSensitivity(K, 0, 1000));
    const r = resultOf(
      sharedJunctionCorrelation(
        0.05,
        { standardUncertainty: 0.2, sensitivity: s },
        { standardUncertainty: 0.4, sensitivity: k },
      ),
    );
    expect(r).toBeCloseTo((0.468 * 1.012 * 0.0025) / 0.08, 4);
  });

  it("adds all that is shared, by name, and nothing else", () => {
    const first = {
      standardUncertainty: 2,
      parts: [
        { key: "origin", effect: 1 },
        { key: "meter", effect: 0.5 },
        { key: "own", effect: 1 },
      ],
    };
    const second = {
      standardUncertainty: 1,
      parts: [
        { key: "origin", effect: 0.5 },
        { key: "meter", effect: -0.2 },
      ],
    };
    expect(resultOf(sharedCorrelation(first, second))).toBeCloseTo((0.5 - 0.1) / 2, 12);
    expect(resultOf(sharedCorrelation(second, first))).toBeCloseTo(0.2, 12);
  });

  it("refuses no uncertainty, more shared than there is, and what is no number", () => {
    expect(problemOf(sharedOriginCorrelation(0.1, 0, 0.1))).toBe("not-applicable");
    expect(problemOf(sharedOriginCorrelation(0.2, 0.3, 0.1))).toBe("not-applicable");
    expect(problemOf(sharedOriginCorrelation(Number.NaN, 0.3, 0.1))).toBe("not-finite");
    expect(problemOf(sharedOriginCorrelation(0.1, 0.3, Number.NaN))).toBe("not-finite");
  });
});
