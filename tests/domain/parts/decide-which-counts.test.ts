import { describe, expect, it } from "vitest";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { decideWhichCounts } from "@/lib/domain/parts/decide-which-counts";
import { differenceOf } from "@/lib/domain/parts/difference";
import { measuredPoint } from "@/tests/support/evaluated-point";

const point = (celsius: number, error: number) =>
  measuredPoint({ sensor: "T-1", setpoint: String(celsius), type: "K", celsius, error, rule: "none" });
const invalid = (celsius: number): EvaluatedPoint => ({
  state: "invalid",
  sensor: "T-1",
  setpoint: String(celsius),
  type: "K",
  nominalCelsius: celsius,
  reason: "open",
});
const of = (run: string, points: readonly EvaluatedPoint[]) => ({ run, points });
const decide = (earlier: readonly EvaluatedPoint[], later: readonly EvaluatedPoint[]) =>
  decideWhichCounts("earlier-counts-if-they-agree", of("R-1", earlier), of("R-2", later));

describe("the difference of two measurements", () => {
  it("leaves out what the same references' certificates do to both", () => {
    // u = 1.27 / 2 each; of it 0.15 °C is the certificate of the references.
    const expected = 2 * Math.sqrt(2 * (0.635 ** 2 - 0.15 ** 2));
    expect(differenceOf(point(600, 0.1), point(600, 0.5)).expandedCelsius).toBeCloseTo(expected, 9);
  });

  it("keeps all of it where the references are others", () => {
    const other = {
      ...point(600, 0.5),
      references: [{ ...point(600, 0).references[0]!, reference: "R-S9" }],
    };
    expect(differenceOf(point(600, 0.1), other).expandedCelsius).toBeCloseTo(2 * Math.sqrt(2) * 0.635, 9);
  });
});

describe("which of two measurements counts", () => {
  it("is the later one, whatever they say, where the rule is so", () => {
    const which = decideWhichCounts("later-counts", of("R-1", [point(600, 0)]), of("R-2", [point(600, 9)]));
    expect(which).toMatchObject({ counts: "later", finding: null });
    expect(which.note).toMatch(/R-1.*R-2.*both are kept.*later one is reported/);
  });

  it("is the earlier one where they agree at each setpoint", () => {
    expect(decide([point(600, 0), point(1000, 1)], [point(600, 1.7), point(1000, 0)])).toMatchObject({
      counts: "earlier",
      finding: null,
    });
  });

  it("is the later one with a finding where one setpoint lies further apart than U of the difference", () => {
    const which = decide([point(600, 0), point(1000, 1)], [point(600, 0), point(1000, 2.8)]);
    expect(which.counts).toBe("later");
    expect(which.finding).toMatch(/does not confirm run R-1.*1000 °C/);
    expect(which.note).toMatch(/so the later one is reported/);
  });

  it("is the later one where the earlier has nothing there, or not everything", () => {
    expect(decide([invalid(600)], [point(600, 0)]).finding).toMatch(/no measured setpoint in common/);
    expect(decide([point(600, 0), invalid(1000)], [point(600, 0), point(1000, 0)]).finding).toMatch(
      /no result at 1000 °C/,
    );
  });
});
