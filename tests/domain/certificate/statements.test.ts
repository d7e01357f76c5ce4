import { describe, expect, it } from "vitest";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "../../support/certificate-parts";
import { measuredPoint } from "../../support/evaluated-point";

/* What a certificate claims about U and about its reference functions, by what its points are. */

const point = (celsius: number, change: Partial<MeasuredPoint> = {}): MeasuredPoint => ({
  ...measuredPoint({
    sensor: "T-000123",
    setpoint: String(celsius),
    type: "K",
    celsius,
    error: 0.7,
    rule: "guarded",
  }),
  ...change,
});
const compose = (points: readonly MeasuredPoint[]) =>
  demand(composeCertificate(inventedParts({ points }), null));
const covered = (method: MeasuredPoint["coverage"]["method"], probability: number) => ({
  coverage: { policy: "dominant", method, probability, criterion: "invented" } as const,
});
const raised = {
  scope: { state: "inside", capabilityCelsius: 2, isRaised: true, source: "invented" } as const,
};

describe("the statement of uncertainty", () => {
  const of = (...points: readonly MeasuredPoint[]) => compose(points).uncertaintyStatement;
  const student = of(point(600), point(900));
  const degreesOfFreedom = /effective degrees of freedom/;

  it("speaks of degrees of freedom and 95.45 % where every k is Student's, as it always did", () => {
    expect(student).toBe(
      "U is the expanded uncertainty: the combined standard uncertainty multiplied by the coverage factor k printed in " +
        "the same row, which for the effective degrees of freedom of that row gives a coverage probability of " +
        "approximately 95 % (95.45 %). It was evaluated according to EA-4/02. It includes the thermocouple's behaviour " +
        "during this calibration, not its drift or transport afterwards.",
    );
  });

  it.each([
    ["one-dominant-rectangle", 0.95, /rectangular distribution \(EA-4\/02, S9\); coverage probability 95 %/],
    [
      "two-dominant-rectangles",
      0.95,
      /trapezoidal distribution \(EA-4\/02, S10\); coverage probability 95 %/,
    ],
    ["monte-carlo", 0.9545, /Monte Carlo \(JCGM 101:2008\).*coverage probability 95.45 %/],
  ] as const)("names %s alone, with its own probability", (method, probability, wanted) => {
    const text = of(point(600, covered(method, probability)), point(900, covered(method, probability)));
    expect(text).toMatch(wanted);
    expect(text).not.toMatch(degreesOfFreedom);
    expect(text).toContain("In every row: ");
  });

  it("names every method with its rows where they differ", () => {
    const text = of(point(600), point(900, covered("one-dominant-rectangle", 0.95)), point(1000));
    expect(text).toMatch(/At 600 °C, 1000 °C: k is that of Student's t .* 95.45 %\./);
    expect(text).toMatch(/At 900 °C: one rectangularly .* 95 %\./);
    expect(text).toContain("It was evaluated according to EA-4/02.");
  });

  it("says where U stands for the capability and not for k times u", () => {
    const text = of(point(600), point(900, raised));
    expect(text).toMatch(/At 900 °C: U as computed is smaller than .* capability.*not the product/);
    expect(student).not.toContain("capability");
  });
});

describe("the reference function (IEC 60584-1:2013 ends type K at 1300 °C)", () => {
  const texts = (content: ReturnType<typeof compose>) =>
    [content.method.description, ...content.conditions].filter((text) => text.includes("reference function"));

  it("is the standard's up to 1300 °C", () => {
    const content = compose([point(1000), point(1300)]);
    expect(texts(content)).toHaveLength(2);
    for (const text of texts(content)) {
      expect(text).toContain("IEC 60584-1:2013");
      expect(text).not.toContain("Monograph");
    }
    expect(content.rows.map(({ remark }) => remark).join()).not.toContain("Monograph");
  });

  it("is NIST Monograph 175's above, said in the row, the method and the conditions", () => {
    const content = compose([point(1000), point(1350)]);
    for (const text of texts(content))
      expect(text).toContain("IEC 60584-1:2013 (at 1350 °C: NIST Monograph 175)");
    const [inside, beyond] = content.rows;
    expect(inside?.remark).not.toContain("Monograph");
    expect(beyond?.remark).toContain("Reference function of NIST Monograph 175");
  });

  it("names no standard where every point lies beyond it", () => {
    for (const text of texts(compose([point(1350)]))) {
      expect(text).toContain("NIST Monograph 175");
      expect(text).not.toContain("IEC 60584-1");
    }
  });
});
