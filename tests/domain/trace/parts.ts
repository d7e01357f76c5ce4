import type { EvaluatedContribution, MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { TraceCalibration, TraceParts, TraceStandard } from "@/lib/domain/trace/trace-parts";
import { measuredPoint } from "../../support/evaluated-point";

/** Invented parts of a certificate's chain: one reference, one voltmeter, two setpoints. */

export const calibration = (change: Partial<TraceCalibration> = {}): TraceCalibration => ({
  id: "cal-ref",
  certificate: "CAL-REF-1",
  issuer: "Invented Institute",
  accreditation: "",
  route: "nmi",
  performedOn: "2026-01-10",
  dueOn: "2027-01-10",
  findings: { kind: "reference", expanded: 0.3, unit: "celsius", coverageFactor: 2, points: [] },
  statement: "",
  documentSha256: null,
  parents: [],
  inHouse: null,
  ...change,
});

export const reference = (change: Partial<TraceCalibration> = {}): TraceStandard => ({
  role: "reference",
  equipment: { id: "ref", tag: "REF-1", kind: "reference", description: "Type S reference", serial: "1" },
  calibration: calibration(change),
});

export const voltmeter = (change: Partial<TraceCalibration> = {}): TraceStandard => ({
  role: "voltmeter",
  equipment: { id: "vm", tag: "VM-1", kind: "voltmeter", description: "Voltmeter", serial: "2" },
  calibration: calibration({
    id: "cal-vm",
    certificate: "CAL-VM-1",
    issuer: "Invented Electrical",
    route: "accredited",
    findings: { kind: "voltmeter", expandedMicrovolt: 2, coverageFactor: 2 },
    ...change,
  }),
});

const shares = [
  ["reference.calibration", 0.2],
  ["reference.drift", 0.1],
  ["furnace.axial", 0.15],
  ["reference.repeatability", 0.05],
] as const;
const ownShares = [
  ["voltmeter.calibration@sensor", 0.1],
  ["sensor.inhomogeneity", 0.4],
] as const;

const withShares = (point: MeasuredPoint): MeasuredPoint => {
  const [pattern] = point.temperatureBudget.contributions as [EvaluatedContribution];
  const line = ([key, share]: readonly [string, number]) => ({ ...pattern, key, share });
  return {
    ...point,
    expandedCelsius: 1.2,
    temperatureBudget: { ...point.temperatureBudget, contributions: shares.map(line) },
    emfBudget: {
      ...point.emfBudget,
      // The first stage as one line of the second: its parts are told already.
      contributions: [
        ...ownShares.map(line),
        { ...pattern, kind: "stage", key: "furnace.temperature", share: 0.5 },
      ],
    },
  };
};

const result = (celsius: number, position: number) => ({
  id: `result-${celsius}`,
  setpointId: `setpoint-${celsius}`,
  position,
  setpoint: `${celsius} °C`,
  point: withShares(
    measuredPoint({
      sensor: "T-000001",
      setpoint: `s${position}`,
      type: "K",
      celsius,
      error: 0.4,
      rule: "simple",
    }),
  ),
});

export const parts = (change: Partial<TraceParts> = {}): TraceParts => ({
  certificate: "C-2026-0009",
  issuer: "Invented Laboratory",
  performedFrom: "2026-03-02",
  performedTo: "2026-03-03",
  sensor: "T-000001",
  run: {
    id: "run",
    number: "R-2026-0001",
    evaluationId: "evaluation",
    furnace: "F-1 Tube furnace, bare tube",
    characterisedOn: "2026-01-01",
    characterisedUntil: "2027-01-01",
  },
  results: [result(600, 1), result(1000, 2)],
  ofRun: [reference(), voltmeter()],
  ofSensor: [],
  ...change,
});
