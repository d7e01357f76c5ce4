import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { TypeLetter } from "@/lib/domain/evidence/schema";

/** One invented measured point; its strings are its numbers rounded to the digits of U. */
export const measuredPoint = (given: {
  readonly sensor: string;
  readonly setpoint: string;
  readonly type: TypeLetter;
  readonly celsius: number;
  readonly error: number;
  readonly rule: "none" | "simple" | "guarded";
}): MeasuredPoint => {
  const { celsius, error } = given;
  const contribution = {
    kind: "input" as const,
    key: "reference.calibration",
    label: "Reference calibration",
    symbol: "δt_R",
    estimate: null,
    standardUncertainty: 0.15,
    unit: "°C" as const,
    distribution: "normal" as const,
    degreesOfFreedom: null,
    sensitivity: 1,
    sensitivityUnit: "1",
    effect: 0.15,
    variance: 0.0225,
    share: 0.06,
    excludes: [],
    source: "certificate CAL-R-S1, invented",
  };
  const stated = given.rule !== "none";
  const tolerance = 0.004 * celsius;
  const acceptance = given.rule === "guarded" ? tolerance - 1.27 : tolerance;
  return {
    state: "measured",
    sensor: given.sensor,
    setpoint: given.setpoint,
    type: given.type,
    nominalCelsius: celsius,
    references: [
      { reference: "R-S1", emfMicrovolt: 9000, deviationMicrovolt: -5, celsius: celsius + 0.1 },
      { reference: "R-S2", emfMicrovolt: 9001, deviationMicrovolt: -5, celsius: celsius + 0.2 },
    ],
    referenceCelsius: celsius + 0.15,
    carriedCelsius: -0.15,
    readings: 61,
    zeroMicrovolt: 0,
    indicatedMicrovolt: 41000,
    emfAtNominalMicrovolt: 41000 + 39 * error,
    tableMicrovolt: 41000,
    deviationMicrovolt: 39 * error,
    errorCelsius: error,
    seebeckMicrovoltPerCelsius: 39,
    temperatureBudget: { unit: "°C", contributions: [contribution], combined: 0.6, degreesOfFreedom: null },
    emfBudget: {
      unit: "µV",
      contributions: [
        {
          ...contribution,
          key: "sensor.inhomogeneity",
          label: "Sensor inhomogeneity",
          unit: "µV",
          standardUncertainty: 8,
          effect: 8,
          variance: 64,
          share: 0.1,
        },
      ],
      combined: 24.7,
      degreesOfFreedom: null,
    },
    shared: [],
    combinedMicrovolt: 24.7,
    degreesOfFreedom: null,
    coverageFactor: 2,
    coverage: {
      policy: "student",
      method: "student",
      probability: 0.9545,
      criterion: "Student's t, invented",
    },
    expandedMicrovolt: 49.4,
    expandedCelsius: 1.27,
    dominant: "reference.calibration",
    conformity: {
      // What the error bears out: one that says otherwise is not signed.
      state: stated ? (Math.abs(error) <= acceptance ? "pass" : "conditional-pass") : "no-statement",
      tolerance: stated ? { standard: "IEC 60584-1:2013", class: "1", celsius: tolerance } : null,
      acceptanceCelsius: stated ? acceptance : null,
      probability: stated ? 0.999 : null,
      printed: {
        tolerance: stated ? tolerance.toFixed(1) : null,
        probability: stated ? "99.9 %" : null,
      },
    },
    scope: { state: "not-stated", capabilityCelsius: null, isRaised: false, source: null },
    printed: {
      nominalCelsius: celsius.toFixed(1),
      referenceCelsius: (celsius + 0.15).toFixed(1),
      emfMicrovolt: (41000 + 39 * error).toFixed(0),
      deviationMicrovolt: (39 * error).toFixed(0),
      expandedMicrovolt: "49",
      errorCelsius: error.toFixed(1),
      correctionCelsius: (-error).toFixed(1),
      expandedCelsius: "1.3",
      coverageFactor: "2.00",
      degreesOfFreedom: "∞",
    },
  };
};

const calibration = (tag: string) => ({
  certificate: `CAL-${tag}`,
  issuer: "Invented National Institute",
  performedOn: "2026-01-10",
  dueOn: "2027-01-10",
});
const zero = { kind: "zero", reason: "invented" } as const;

/** The parts of an evidence that review and certificate read. */
export const evidenceHead = (rule: "none" | "simple" | "guarded") => ({
  format: "emfolio-evidence",
  version: 2,
  configuration: {
    furnace: "F-1 Tube furnace",
    kind: "equalising-block",
    name: "Block of six",
    characterisation: {
      uniformity: zero,
      axial: zero,
      radial: zero,
      gradient: zero,
      statement: "± 1.0 °C over 50 mm at 1000 °C, invented",
    },
  },
  references: ["R-S1", "R-S2"].map((tag) => ({
    id: tag,
    serial: `SN-${tag}`,
    type: "S",
    protection: "alumina-sheath",
    calibration: calibration(tag),
    correction: { kind: "points", points: [{ celsius: 300, deviationMicrovolt: -3 }] },
    interpolation: zero,
    calibrationUncertainty: zero,
    drift: zero,
    inhomogeneity: zero,
  })),
  voltmeter: {
    id: "V-1",
    serial: "SN-V-1",
    calibration: { ...calibration("V-1"), accreditation: "INV 0001" },
    corrections: [],
    calibrationUncertainty: zero,
    drift: zero,
    resolution: zero,
  },
  scanner: { id: "X-1", serial: "SN-X-1", calibration: calibration("X-1"), parasitic: zero },
  junctions: [
    {
      id: "J-1",
      serial: "SN-J-1",
      celsius: 0,
      calibration: calibration("J-1"),
      uncertainty: zero,
      spread: zero,
    },
  ],
  decisionRule: rule === "guarded" ? { kind: "guarded", guardBandRatio: 1 } : { kind: rule },
  rounding: { uncertaintyDigits: 2 },
});
