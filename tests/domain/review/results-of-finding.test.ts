import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { sensorsSpokenOf } from "@/lib/domain/gate/sensors-spoken-of";
import { decideOpened, openedState } from "@/lib/domain/review/decide-opened";
import { readEvidenceHead } from "@/lib/domain/review/evidence-head";
import { reviewExceptions } from "@/lib/domain/review/exceptions";
import { resultKey } from "@/lib/domain/review/result-name";
import { resultsOfFinding } from "@/lib/domain/review/results-of-finding";
import { buildEvidence } from "../evidence/build-evidence";

const sha256 = (bytes: Uint8Array) => Uint8Array.from(createHash("sha256").update(bytes).digest());

/** Evaluated by the engine, without tolerances; what must be opened of it. */
const review = (evidence: EvidenceInput) => {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { points, findings } = outcome.evaluation;
  const exceptions = reviewExceptions({
    ...{ points, findings, hasTypedReadings: false, movedWindowsCelsius: [] },
    findingPlaces: readEvidenceHead(JSON.stringify(evidence)),
  });
  const results = points.map(({ sensor, setpoint }) => ({ sensor, setpoint, label: `${setpoint} °C` }));
  return { results, findings, exceptions };
};
const named = ({ exceptions }: ReturnType<typeof review>, code: string): readonly string[] =>
  exceptions
    .filter(({ subject }) => subject === `Finding: ${code}`)
    .flatMap(({ point, others = [] }) => (point ? [point, ...others] : []))
    .map(({ sensor, setpoint }) => `${sensor} ${setpoint}`);

const built = buildEvidence({ sensors: ["K", "N", "S", "K", "N"], nominals: [600] });
const evidence: EvidenceInput = {
  ...built,
  sensors: built.sensors.map((sensor) => ({ ...sensor, tolerance: null })),
  decisionRule: { kind: "none" },
};

describe("a swap that the engine found, without tolerance and without an earlier calibration", () => {
  const channels = evidence.scans.channels.map((one) =>
    one.channel === "104"
      ? { ...one, channel: "106" }
      : one.channel === "106"
        ? { ...one, channel: "104" }
        : one,
  );
  const swapped = review({ ...evidence, scans: { ...evidence.scans, channels } });

  it("speaks of both sensors and of no other, and neither is signed unopened", () => {
    expect(named(swapped, "swapped channels")).toEqual(["X3 600", "X5 600"]);
    const given = { ...swapped, seed: Uint8Array.of(1), sha256 };
    const { mustOpen } = openedState({ ...given, opened: [] });
    for (const sensor of ["X3", "X5"]) {
      const opened = mustOpen.filter((one) => one.sensor !== sensor);
      expect(decideOpened({ ...given, opened, sensors: [sensor] })).toMatchObject({
        refusal: { code: "rule", message: expect.stringContaining(`${sensor} at 600 °C`) },
      });
    }
    expect(new Set(named(swapped, "deviation large"))).toEqual(new Set(["X3 600", "X5 600"]));
  });
});

it("sends whoever signs to each sensor of a setpoint, or to all there is, as the finding goes", () => {
  const apart = evidence.scans.channels.map((one) =>
    one.channel === "107" ? { ...one, microvolts: one.microvolts.map((value) => value + 15.3) } : one,
  );
  const found = review({ ...evidence, scans: { ...evidence.scans, channels: apart } });
  expect(named(found, "references disagree")).toHaveLength(5);
  const late = review({ ...evidence, scans: { ...evidence.scans, startedAt: "2028-03-01T08:00:00Z" } });
  expect(late.findings.map(({ code }) => code)).toContain("calibration-not-valid");
  expect(new Set(named(late, "calibration not valid")).size).toBe(5);
  const load = evidence.load.map((place, at) =>
    at === 2 ? { ...place, tipCheckRiseMicrovolt: null } : place,
  );
  expect(named(review({ ...evidence, load }), "tip check missing")).toEqual(["X2 600"]);
});

describe("where a path points", () => {
  const at = {
    sensors: [{ id: "T-1" }, { id: "T-10" }],
    setpoints: [{ id: "SP1" }, { id: "SP2" }],
    windows: [{ setpoint: "SP2" }, { setpoint: "SP1" }],
    junctions: [{ id: "J-1" }, { id: "J-2" }],
    load: [
      { channel: "101", junction: "J-1", item: { kind: "reference", id: "R-1" } },
      { channel: "102", junction: "J-1", item: { kind: "sensor", id: "T-1" } },
      { channel: "103", junction: "J-2", item: { kind: "sensor", id: "T-10" } },
      { channel: "104", junction: "J-2", item: { kind: "shorted" } },
    ],
  };
  const results = ["T-1", "T-10"].flatMap((sensor) =>
    ["SP1", "SP2"].map((setpoint) => ({ sensor, setpoint })),
  );
  it.each([
    ["windows[0]", "Setpoint SP2: it drifts", ["T-1 SP2", "T-10 SP2"]],
    ["load[2].tipCheckRiseMicrovolt", "low", ["T-10 SP1", "T-10 SP2"]],
    ["load[3].channel", "At setpoint SP1 the shorted channel 104 reads 3 µV", ["T-1 SP1", "T-10 SP1"]],
    ["load[0].tipCheckRiseMicrovolt", "low", ["T-1 SP1", "T-1 SP2", "T-10 SP1", "T-10 SP2"]],
    ["junctions[1].calibration.dueOn", "was due", ["T-10 SP1", "T-10 SP2"]],
    ["setpoints[1].nominalCelsius", "the deviation of sensor T-10 there", ["T-10 SP2"]],
    ["sensors[0]", "Sensor T-1 is off at setpoint SP2, more than", ["T-1 SP2"]],
    ["voltmeter.calibration.dueOn", "was due", ["T-1 SP1", "T-1 SP2", "T-10 SP1", "T-10 SP2"]],
  ])("%s (%s)", (path, message, expected) => {
    const found = resultsOfFinding({ code: "any", path, message }, at, results);
    expect(found.map((one) => resultKey(one).replace("\n", " "))).toEqual(expected);
  });

  it("and what the gate calls its subjects: by tag, place, channel or junction; a reference is beside all", () => {
    const places = [
      { kind: "reference", tag: "R-1", place: "A", channel: "101", junction: "J-1" },
      { kind: "sensor", tag: "T-1", place: "B", channel: "102", junction: "J-1" },
      { kind: "sensor", tag: "T-10", place: "C", channel: "103", junction: "J-2" },
    ];
    const of = (code: string, ...subjects: string[]) => {
      const spoken = sensorsSpokenOf({ code, subjects }, places);
      return spoken && [...spoken];
    };
    expect(of("immersion", "T-10")).toEqual(["T-10"]);
    expect(of("tips-warmed", "B", "C")).toEqual(["T-1", "T-10"]);
    expect(of("channel-zero", "103")).toEqual(["T-10"]);
    expect(of("junction-by-thermometer", "J-2")).toEqual(["T-10"]);
    expect(of("tips-warmed", "A", "B")).toBeNull();
    expect(of("warm-up")).toBeNull();
  });
});
