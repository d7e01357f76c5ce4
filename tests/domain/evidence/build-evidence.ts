import type { EvidenceInput, TypeLetter } from "@/lib/domain/evidence/schema";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";

/** An invented run for tests: two type S references, sensors of any types, readings without noise. */
export type Scene = {
  readonly sensors?: readonly TypeLetter[];
  readonly nominals?: readonly number[];
  /** Furnace temperature at a time, °C. */
  readonly furnace?: (seconds: number) => number;
  readonly junctionCelsius?: number;
  /** Error of each sensor in °C. */
  readonly errorCelsius?: number;
  readonly scans?: number;
  readonly scanSeconds?: number;
  /** Leads reversed on every other scan. */
  readonly isReversing?: boolean;
  /** Does not change sign with the leads. */
  readonly parasiticMicrovolt?: number;
};

const zero = (reason: string) => ({ kind: "zero", reason }) as const;
const rectangular = (halfWidth: number, unit: "celsius" | "microvolt" | "relative") =>
  ({ kind: "rectangular", halfWidth, unit, source: "invented for a test" }) as const;

const calibration = {
  certificate: "T-1",
  issuer: "Invented laboratory",
  performedOn: "2026-01-10",
  dueOn: "2027-01-10",
};

export function microvoltOf(type: ThermocoupleType, celsius: number): number {
  const result = emf(referenceFunctions[type], celsius);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

function sensor(type: TypeLetter, index: number): EvidenceInput["sensors"][number] {
  return {
    id: `X${index + 1}`,
    serial: `serial-${index + 1}`,
    type,
    protection: referenceFunctions[type].isNoble ? "alumina-sheath" : "metal-sheath",
    tolerance: { standard: "IEC 60584-1:2013", class: "2" },
    repeatability: {
      kind: "standard",
      standard: 1.5,
      unit: "microvolt",
      degreesOfFreedom: 9,
      source: "invented",
    },
    inhomogeneity: rectangular(0.0005, "relative"),
    lead: zero("no lead: the wires reach the junction"),
    immersion: zero("none here"),
    shunting: zero("none here"),
    hysteresis: zero("none here"),
  };
}

function reference(id: string): EvidenceInput["references"][number] {
  return {
    id,
    serial: `reference-${id}`,
    type: "S",
    protection: "alumina-sheath",
    calibration,
    correction: {
      kind: "points",
      points: [
        { celsius: 250, deviationMicrovolt: 0 },
        { celsius: 1150, deviationMicrovolt: 0 },
      ],
    },
    interpolation: zero("none here"),
    calibrationUncertainty: {
      kind: "expanded",
      expanded: 0.4,
      coverageFactor: 2,
      unit: "celsius",
      source: "invented",
    },
    drift: rectangular(0.15, "celsius"),
    inhomogeneity: rectangular(0.0002, "relative"),
  };
}

export function buildEvidence(scene: Scene = {}): EvidenceInput {
  const types = scene.sensors ?? ["K", "N", "S"];
  const nominals = scene.nominals ?? [600];
  const scanSeconds = scene.scanSeconds ?? 10;
  const scans = scene.scans ?? 90;
  const items = [
    { kind: "reference" as const, id: "R1", type: "S" as const, error: 0 },
    ...types.map((type, i) => ({
      kind: "sensor" as const,
      id: `X${i + 1}`,
      type,
      error: scene.errorCelsius ?? 0,
    })),
    { kind: "reference" as const, id: "R2", type: "S" as const, error: 0 },
  ];
  const furnace = scene.furnace ?? (() => nominals[0] ?? 600);
  return {
    format: "emfolio-evidence",
    version: 2,
    title: "Invented run",
    origin: "simulated",
    sensors: types.map(sensor),
    configuration: {
      furnace: "Tube furnace",
      kind: "bare-tube",
      name: "Bundle",
      characterisation: {
        uniformity: rectangular(0.4, "celsius"),
        axial: zero("none here"),
        radial: zero("none here"),
        gradient: zero("none here"),
        statement: "±0.4 °C over 40 mm, half range",
      },
    },
    load: items.map((item, i) => ({
      place: `${i + 1}`,
      item: { kind: item.kind, id: item.id },
      channel: `${101 + i}`,
      junction: "J",
      tipCheckRiseMicrovolt: 80,
    })),
    references: [reference("R1"), reference("R2")],
    referenceRepeatability: {
      kind: "standard",
      standard: 0.05,
      unit: "celsius",
      degreesOfFreedom: 9,
      source: "invented",
    },
    heaterPickup: zero("none here"),
    stability: zero("none here"),
    correlation: {
      voltmeter: { coefficient: 0, reason: "neglected" },
      junction: { coefficient: 0, reason: "neglected" },
      references: {
        calibration: { coefficient: 1, reason: "one observation" },
        drift: { coefficient: 1, reason: "one observation" },
        own: { coefficient: 1, reason: "one observation" },
      },
    },
    comparison: { zero: { kind: "none", reason: "not taken off" }, carryOrder: 1 },
    coverage: "student",
    voltmeter: {
      id: "V",
      serial: "meter-1",
      calibration,
      corrections: [],
      calibrationUncertainty: {
        kind: "expanded",
        expanded: 1,
        coverageFactor: 2,
        unit: "microvolt",
        source: "invented",
      },
      drift: rectangular(0.5, "microvolt"),
      resolution: rectangular(0.05, "microvolt"),
    },
    scanner: { id: "C", serial: "scanner-1", calibration: null, parasitic: rectangular(0.5, "microvolt") },
    junctions: [
      {
        id: "J",
        celsius: scene.junctionCelsius ?? 0,
        calibration: null,
        uncertainty: rectangular(0.05, "celsius"),
        spread: zero("none here"),
      },
    ],
    setpoints: nominals.map((nominalCelsius) => ({ id: `${nominalCelsius}`, nominalCelsius })),
    scans: {
      startedAt: "2026-06-01T08:00:00+02:00",
      channels: items.map((item, channel) => {
        // One second from channel to channel: references first and last in the scan.
        const seconds = Array.from({ length: scans }, (_, i) => i * scanSeconds + channel);
        const polarity = seconds.map((_, i) => (scene.isReversing && i % 2 === 1 ? -1 : 1) as 1 | -1);
        return {
          channel: `${101 + channel}`,
          seconds,
          polarity,
          microvolts: seconds.map((t, i) => {
            const net =
              microvoltOf(item.type, furnace(t) + item.error) -
              microvoltOf(item.type, scene.junctionCelsius ?? 0);
            return (polarity[i] as number) * net + (scene.parasiticMicrovolt ?? 0);
          }),
        };
      }),
    },
    windows: nominals.map((nominal) => ({
      setpoint: `${nominal}`,
      fromSeconds: 0,
      toSeconds: scans * scanSeconds,
    })),
    sensitivities: "reference-functions",
    decisionRule: { kind: "guarded", guardBandRatio: 1 },
    rounding: { uncertaintyDigits: 2 },
  };
}
