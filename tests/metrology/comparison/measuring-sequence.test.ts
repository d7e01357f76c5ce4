import { describe, expect, it } from "vitest";
import { averagePolarity } from "@/lib/metrology/comparison/average-polarity";
import {
  type MeasuringSequence,
  sequenceBalance,
  sequenceSteps,
} from "@/lib/metrology/comparison/measuring-sequence";
import { problemOf, resultOf } from "../result-of";

const bracketing: MeasuringSequence = {
  kind: "bracketing",
  first: "S1",
  sensors: ["X"],
  second: "S2",
  reversals: "after-each-bracket",
  brackets: 2,
};

describe("sequenceSteps", () => {
  it("is the sequence of EA-4/02 S5: S1 X S2 S2 X S1, reversed, and all again: four readings each", () => {
    const steps = resultOf(sequenceSteps(bracketing));
    expect(steps.slice(0, 6).map(({ item }) => item)).toEqual(["S1", "X", "S2", "S2", "X", "S1"]);
    expect(steps.map(({ polarity }) => polarity).join("")).toBe(
      [1, -1, 1, -1].map((p) => `${p}`.repeat(6)).join(""),
    );
    const readings = steps.filter(({ item }) => item === "X");
    expect(readings).toHaveLength(8);
  });

  it("goes through several sensors between the references, and back", () => {
    const steps = resultOf(
      sequenceSteps({ ...bracketing, sensors: ["X", "Y"], reversals: "none", brackets: 1 }),
    );
    expect(steps.map(({ item }) => item).join(" ")).toBe("S1 X Y S2 S2 Y X S1");
    expect(steps.every(({ polarity }) => polarity === 1)).toBe(true);
  });

  it("goes round and round in a continuous scan", () => {
    const steps = resultOf(sequenceSteps({ kind: "continuous", scan: ["S1", "zero", "X", "S2"], scans: 3 }));
    expect(steps).toHaveLength(12);
    expect(steps[5]).toEqual({ item: "zero", polarity: 1 });
  });

  it.each([0, 1.5, Number.NaN])("refuses %d brackets", (brackets) => {
    expect(problemOf(sequenceSteps({ ...bracketing, brackets }))).toBe("not-applicable");
  });

  it("refuses a sequence that reads nothing", () => {
    expect(problemOf(sequenceSteps({ ...bracketing, sensors: [] }))).toBe("not-applicable");
    expect(problemOf(sequenceSteps({ kind: "continuous", scan: [], scans: 1 }))).toBe("not-applicable");
  });
});

describe("sequenceBalance", () => {
  it("finds every item of a bracket at one mean place, so that a linear drift cancels", () => {
    const steps = resultOf(sequenceSteps({ ...bracketing, sensors: ["X", "Y", "Z"] }));
    const balance = resultOf(sequenceBalance(steps));
    expect(balance.cancelsLinearDrift).toBe(true);
    // The readings themselves: a furnace that drifts by 0.3 µV a step, leads that add 2 µV.
    const mean = (item: string): number => {
      const at = [...steps.entries()].filter(([, step]) => step.item === item);
      return resultOf(
        averagePolarity({
          seconds: at.map(([place]) => place),
          microvolts: at.map(([place, { polarity }]) => polarity * (1000 + 0.3 * place) + 2),
          polarity: at.map(([, { polarity }]) => polarity),
        }),
      ).microvolt;
    };
    for (const item of ["X", "Y", "Z", "S2"]) expect(mean(item)).toBeCloseTo(mean("S1"), 9);
  });

  it("sees that a scan in one direction does not", () => {
    const balance = resultOf(
      sequenceBalance(resultOf(sequenceSteps({ kind: "continuous", scan: ["S1", "X"], scans: 9 }))),
    );
    expect(balance.cancelsLinearDrift).toBe(false);
    expect(balance.centres.get("X")).toBe(9);
    expect(balance.centres.get("S1")).toBe(8);
  });

  it("refuses nothing at all", () => {
    expect(problemOf(sequenceBalance([]))).toBe("too-few");
  });
});
