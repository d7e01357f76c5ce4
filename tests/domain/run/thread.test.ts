import { describe, expect, it } from "vitest";
import { nextStep, type RunProgress } from "@/lib/domain/run/thread";

const abandoned: RunProgress = {
  ...{ state: "abandoned", tipsPassed: false, gatePassed: false, hasReadings: false },
  ...{ openSetpoints: 1, evaluation: "none" },
};

describe("what comes next of a run", () => {
  it("keeps readings of an abandoned one only where there are some", () => {
    expect(nextStep(abandoned)).toBe("The run was abandoned.");
    expect(nextStep({ ...abandoned, hasReadings: true })).toContain("its readings are kept");
  });
});
