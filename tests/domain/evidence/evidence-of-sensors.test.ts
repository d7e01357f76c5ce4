import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { evidenceOfSensors } from "@/lib/domain/evidence/evidence-of-sensors";
import { Evidence } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";

const states = [{ sensor: "X3", setpoint: "600", state: "invalid" as const, reason: "open at 600 °C" }];

const whole = Evidence.parse({
  ...buildEvidence({
    sensors: ["K", "N", "S"],
    nominals: [600, 900],
    furnace: (seconds) => 600 + 0.001 * seconds,
  }),
  windows: [{ setpoint: "600", fromSeconds: 0, toSeconds: 900 }],
  states,
});

const evaluated = (evidence: Evidence) => {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.evaluation.points;
};

describe("the evidence of some of a run's sensors", () => {
  it.each([["X1"], ["X2"], ["X3"], ["X1", "X3"]])(
    "gives %s %s the results of the whole, to the bit",
    (...ids) => {
      const own = evaluated(evidenceOfSensors(whole, ids));
      expect(own).toEqual(evaluated(whole).filter(({ sensor }) => ids.includes(sensor)));
      expect(own).toHaveLength(2 * ids.length);
    },
  );

  it("holds nothing of the others: no name, no channel, no state", () => {
    const own = evidenceOfSensors(whole, ["X1"]);
    const text = JSON.stringify(own);
    for (const foreign of ["X2", "X3", "serial-2", "serial-3", '"103"', '"104"', "open at"])
      expect(text).not.toContain(foreign);
    expect(own.scans.channels.map(({ channel }) => channel)).toEqual(["101", "102", "105"]);
  });

  it("says the rule and the digits of its own sensor where it has them, never another's", () => {
    const [first, ...others] = whole.sensors;
    const ruled = {
      ...whole,
      sensors: [
        { ...first!, decisionRule: { kind: "simple" as const }, uncertaintyDigits: 1 as const },
        ...others,
      ],
    };
    expect(evidenceOfSensors(ruled, ["X1"])).toMatchObject({
      decisionRule: { kind: "simple" },
      rounding: { uncertaintyDigits: 1 },
    });
    expect(evidenceOfSensors(ruled, ["X2"]).decisionRule).toEqual(whole.decisionRule);
  });
});
