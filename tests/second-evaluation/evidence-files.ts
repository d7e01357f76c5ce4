import exampleS5 from "@/lib/domain/evidence/examples/ea4-02-s5.json";
import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { Evidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { EvidenceV1 } from "@/lib/domain/evidence/schema-v1";
import type { UncertaintyInput } from "@/lib/domain/evidence/uncertainty-input";
import { upgradeEvidence } from "@/lib/domain/evidence/upgrade-evidence";
import { matchedRun } from "@/lib/station/simulation/matched-run";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { buildEvidence, microvoltOf, type Scene } from "@/tests/domain/evidence/build-evidence";

const fahrenheit = (degrees: number): number => ((degrees - 32) * 5) / 9;
const source = "invented for a test";
const rectangular = (halfWidth: number, unit: "celsius" | "microvolt" | "relative"): UncertaintyInput => ({
  kind: "rectangular",
  halfWidth,
  unit,
  source,
});

/** As a technician would accept them: every proposal as it stands. */
const withWindows = (evidence: EvidenceInput): EvidenceInput => ({
  ...evidence,
  windows: proposeWindows(Evidence.parse(evidence)).map(({ setpoint, proposal }) => {
    if (proposal.kind === "none") throw new Error(`${evidence.title}, ${setpoint}: ${proposal.reason}`);
    return { setpoint, fromSeconds: proposal.window.fromSeconds, toSeconds: proposal.window.toSeconds };
  }),
});

const built = (scene: Scene, change: (evidence: EvidenceInput) => Partial<EvidenceInput>): EvidenceInput => {
  const evidence = buildEvidence(scene);
  return { ...evidence, ...change(evidence) };
};

/** A furnace that creeps: the references' emf has to be carried to the sensors' moment. */
const drifting = (from: number, perSecond: number) => (seconds: number) => from + perSecond * seconds;

type Correction = EvidenceInput["references"][number]["correction"];
const corrected =
  (...corrections: readonly Correction[]) =>
  ({ references }: EvidenceInput): Partial<EvidenceInput> => ({
    references: references.map((reference, at) => ({
      ...reference,
      correction: corrections[at % corrections.length] ?? reference.correction,
    })),
  });

const everyLine = (evidence: EvidenceInput): Partial<EvidenceInput> => ({
  sensors: evidence.sensors.map((sensor, at) => ({
    ...sensor,
    lead: rectangular(4, "microvolt"),
    immersion: rectangular(0.2, "celsius"),
    shunting: { ...rectangular(0.001, "relative"), fromCelsius: 800 } as UncertaintyInput,
    hysteresis: { kind: "standard", standard: 0.3, unit: "celsius", degreesOfFreedom: 4, source },
    inhomogeneity: { kind: "tolerance-share", share: 0.2, toleranceClass: at % 2 ? "1" : "2", source },
    cable: { lot: "L-1", correctionMicrovolt: -3.7 },
  })),
  references: evidence.references.map((reference, at) => ({
    ...reference,
    interpolation: rectangular(0.8, "microvolt"),
    drift: {
      kind: "by-use",
      perYear: { rateCelsius: -0.2, halfWidthCelsius: 0.1 },
      perHour: { rateCelsius: -0.001, halfWidthCelsius: 0.0005 },
      hours: 120,
      isCorrected: at === 0,
      source,
    },
  })),
  configuration: {
    ...evidence.configuration,
    characterisation: {
      ...evidence.configuration.characterisation,
      uniformity: { kind: "zero", reason: source },
      axial: {
        kind: "by-temperature",
        at: [
          { celsius: 300, halfWidthCelsius: 0.2, standardCelsius: 0.05 },
          { celsius: 700, halfWidthCelsius: 0.5, standardCelsius: 0.1 },
          { celsius: 1100, halfWidthCelsius: 0.4, standardCelsius: 0.3 },
        ],
        source,
      },
      radial: rectangular(0.3, "celsius"),
      gradient: rectangular(0.1, "celsius"),
    },
  },
  load: evidence.load.map((place, at) => (at === 1 ? { ...place, offsetCelsius: 0.35 } : place)),
  heaterPickup: rectangular(0.4, "microvolt"),
  stability: rectangular(0.08, "celsius"),
});

/** One block's thermometer for reference 1 and the sensors, an ice point of its own for reference 2. */
const twoJunctions = ({ junctions, load }: EvidenceInput): Partial<EvidenceInput> => {
  const [junction] = junctions;
  if (!junction) throw new Error("The scene has no junction.");
  const block = { ...junction, block: "B", spread: rectangular(0.03, "celsius") };
  return {
    junctions: [
      { ...block, id: "J", celsius: 22.4 },
      { ...block, id: "J-2", celsius: 22.4 },
      { ...junction, id: "ICE", celsius: 22.4, uncertainty: rectangular(0.08, "celsius") },
    ],
    load: load.map((place, at) => ({
      ...place,
      junction: at === load.length - 1 ? "ICE" : at % 2 === 0 ? "J" : "J-2",
    })),
  };
};

const correlated: EvidenceInput["correlation"] = {
  voltmeter: { coefficient: 1, reason: source },
  junction: { coefficient: 0.9, reason: source },
  references: {
    calibration: { coefficient: 1, reason: source },
    drift: { coefficient: 0.3, reason: source },
    own: { coefficient: 0, reason: source },
  },
};

/** Nearly nothing is left of U, so that hundredths of a microvolt are printed, and terms too small to see elsewhere. */
const fine = ({
  sensors,
  references,
  voltmeter,
  configuration,
  junctions,
}: EvidenceInput): Partial<EvidenceInput> => {
  const small = rectangular(0.002, "celsius");
  const none: UncertaintyInput = { kind: "zero", reason: source };
  return {
    correlation: correlated,
    sensors: sensors.map((sensor) => ({
      ...sensor,
      repeatability: { kind: "standard", standard: 0.02, unit: "microvolt", degreesOfFreedom: 7, source },
      inhomogeneity: none,
      shunting: { ...rectangular(0.01, "relative"), fromCelsius: 800 } as UncertaintyInput,
    })),
    references: references.map((one) => ({
      ...one,
      calibrationUncertainty: small,
      drift: none,
      inhomogeneity: none,
    })),
    referenceRepeatability: none,
    voltmeter: {
      ...voltmeter,
      calibrationUncertainty: rectangular(0.01, "microvolt"),
      drift: none,
      resolution: none,
    },
    scanner: { id: "C", serial: "scanner-1", calibration: null, parasitic: none },
    configuration: {
      ...configuration,
      characterisation: { ...configuration.characterisation, uniformity: small },
    },
    junctions: junctions.map((junction) => ({ ...junction, uncertainty: small })),
  };
};

/** The voltmeter as its certificate corrects it, waves on every channel, and U to one digit. */
const metered = ({ voltmeter, sensors, scans }: EvidenceInput): Partial<EvidenceInput> => ({
  correlation: correlated,
  voltmeter: {
    ...voltmeter,
    corrections: [
      { microvolt: 0, correctionMicrovolt: 3.1 },
      { microvolt: 20_000, correctionMicrovolt: -18.6 },
      { microvolt: 60_000, correctionMicrovolt: -42.7 },
    ],
  },
  sensors: sensors.map((sensor) => ({ ...sensor, uncertaintyDigits: 1 })),
  scans: {
    ...scans,
    channels: scans.channels.map((channel, at) => ({
      ...channel,
      microvolts: channel.microvolts.map(
        (value, i) => value + 2.1 * Math.sin(0.37 * i + at) + 0.9 * Math.cos(0.071 * i * (at + 1)),
      ),
    })),
  },
});

/** The only voltage there is on a shorted channel is the scanner's own. */
const shorted = ({ load, scans }: EvidenceInput): Partial<EvidenceInput> => {
  const [first] = scans.channels;
  if (!first) throw new Error("The scene has no channel.");
  return {
    comparison: { zero: { kind: "shorted-channel", channel: "199" }, carryOrder: 2 },
    load: [...load, { place: "shorted", item: { kind: "shorted" }, channel: "199", junction: "J" }],
    scans: {
      ...scans,
      channels: [
        ...scans.channels,
        { ...first, channel: "199", microvolts: first.microvolts.map((_, i) => 1.3 + 0.001 * i) },
      ],
    },
  };
};

const scoped = ({ sensors }: EvidenceInput): Partial<EvidenceInput> => ({
  rounding: { uncertaintyDigits: 1 },
  scope: [
    { type: "K", fromCelsius: 0, toCelsius: 800, expandedCelsius: 2.34, source },
    { type: "N", fromCelsius: 0, toCelsius: 1200, expandedCelsius: 0.4, source },
  ],
  sensors: sensors.map((sensor, at) => (at === 3 ? { ...sensor, outsideScope: source } : sensor)),
});

const points = (...all: readonly (readonly [number, number])[]): Correction => ({
  kind: "points",
  points: all.map(([celsius, deviationMicrovolt]) => ({ celsius, deviationMicrovolt })),
});

const referencesOfR = (evidence: EvidenceInput): Partial<EvidenceInput> => ({
  scans: {
    ...evidence.scans,
    channels: evidence.scans.channels.map((channel, at, { length }) =>
      at > 0 && at < length - 1
        ? channel
        : { ...channel, microvolts: channel.microvolts.map(() => microvoltOf("R", 903.1 + at / 50)) },
    ),
  },
  references: evidence.references.map((reference) => ({ ...reference, type: "R" })),
  correlation: correlated,
});

/** Each of another kind; together well over a hundred results of types K, N, R and S. Invented but for S5. */
export const evidenceFiles = (): readonly EvidenceInput[] => [
  upgradeEvidence(EvidenceV1.parse(exampleS5)),
  ...Array.from({ length: 36 }, (_, seed) => matchedRun(seed + 1).evidence),
  ...[7, 11].map((seed) => withWindows(simulateRun(seed).evidence)),
  ...[600, 1400, 2000].map((ordered) =>
    built(
      { nominals: [fahrenheit(ordered)], errorCelsius: 0.83 },
      corrected(points([250, -1.2], [700, 2.3], [1150, 4.1])),
    ),
  ),
  built(
    { sensors: ["K", "N", "R", "S"], nominals: [850], furnace: drifting(846.2, 0.0021), errorCelsius: -1.27 },
    everyLine,
  ),
  built(
    {
      sensors: ["K", "N"],
      nominals: [400],
      errorCelsius: 0.31,
      furnace: drifting(400.9, -0.0013),
      junctionCelsius: 22.4,
    },
    twoJunctions,
  ),
  built({ sensors: ["K", "R"], nominals: [700], errorCelsius: -0.77, junctionCelsius: 22.4 }, (evidence) => {
    const { junctions = [], load } = twoJunctions(evidence);
    const doubtful = junctions.map((junction) => ({ ...junction, uncertainty: rectangular(0.6, "celsius") }));
    return { load, junctions: doubtful, correlation: correlated };
  }),
  built({ sensors: ["N", "K"], nominals: [300], furnace: drifting(296.1, 0.001) }, (evidence) => ({
    ...fine(evidence),
    ...shorted(evidence),
  })),
  built(
    { sensors: ["N", "S", "K"], nominals: [1000], errorCelsius: 0.46, furnace: drifting(999.2, 0.0006) },
    metered,
  ),
  built(
    {
      sensors: ["N", "K"],
      nominals: [950],
      errorCelsius: 1.13,
      furnace: drifting(946.5, 0.001),
      parasiticMicrovolt: 1.6,
    },
    shorted,
  ),
  built(
    { sensors: ["N", "S"], nominals: [500], errorCelsius: -0.45, isReversing: true, parasiticMicrovolt: 2.7 },
    shorted,
  ),
  built({ sensors: ["K", "N", "S", "K"], nominals: [760], errorCelsius: 0.94 }, scoped),
  built(
    { sensors: ["K", "N", "S"], nominals: [905.5], errorCelsius: 0.22, furnace: () => 903.1 },
    referencesOfR,
  ),
  built(
    { sensors: ["N", "R"], nominals: [660], errorCelsius: -0.58 },
    corrected(
      { kind: "polynomial", coefficientsMicrovolt: [0, 1.3e-3, 2.2e-6], fromCelsius: 200, toCelsius: 1100 },
      points([300, 1.9], [1000, -5.5]),
    ),
  ),
];
