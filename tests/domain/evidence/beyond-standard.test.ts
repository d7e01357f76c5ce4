import { describe, expect, it } from "vitest";
import type { TypeLetter } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";
import { evaluate } from "./measured";

/** Invented references that reach 1400 °C. */
const at = (nominal: number, type: TypeLetter) => {
  const evidence = buildEvidence({ sensors: [type], nominals: [nominal] });
  return evaluate({
    ...evidence,
    references: evidence.references.map((reference) => ({
      ...reference,
      correction: {
        kind: "points",
        points: [250, 1400].map((celsius) => ({ celsius, deviationMicrovolt: 0 })),
      },
    })),
  }).findings.filter(({ code }) => code === "beyond-iec-60584-1");
};

describe("a result beyond the range of IEC 60584-1:2013", () => {
  it("is a finding for type K above 1300 °C, and the function's source is named", () => {
    const [finding, ...others] = at(1310, "K");
    expect(others).toEqual([]);
    expect(finding?.path).toBe("setpoints[0].nominalCelsius");
    expect(finding?.message).toMatch(/type K \(to 1300 °C\).*NIST Monograph 175/);
  });

  it("is none at 1300 °C, nor for a type that the standard takes further", () => {
    expect(at(1300, "K")).toEqual([]);
    expect(at(1310, "S")).toEqual([]);
  });
});
