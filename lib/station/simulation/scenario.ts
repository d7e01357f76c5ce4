import type { UncertaintyInput } from "@/lib/domain/evidence/uncertainty-input";
import type { FurnaceProgram } from "./furnace-profile";

/**
 * The demonstration laboratory's run: AN INVENTED SCENARIO. People, companies, serial numbers and figures are ours;
 * nothing here is published. Two type S references, sensors of types K, N and S of two customers in one load.
 */

const rectangular = (
  halfWidth: number,
  unit: "celsius" | "microvolt" | "relative",
  source: string,
): UncertaintyInput => ({ kind: "rectangular", halfWidth, unit, source });

const invented = "invented for the demonstration laboratory";

export type SimulatedSensor = {
  readonly id: string;
  readonly serial: string;
  readonly customer: "A" | "B";
  readonly type: "K" | "N" | "S";
  readonly construction: string;
  readonly protection: "alumina-sheath" | "metal-sheath";
  readonly toleranceClass: "1" | "2";
  readonly place: string;
  readonly channel: string;
  readonly immersionMillimetre: number;
};

export const program: FurnaceProgram = {
  setpointsCelsius: [300, 500, 700, 900, 1100],
  startCelsius: 23,
  rampCelsiusPerMinute: 10,
  dwellSeconds: 2700,
};

/** Seconds between scans, and between the channels of one scan: each reading has its own time. */
export const scanInterval = 10;
export const channelInterval = 0.4;

export const sensors: readonly SimulatedSensor[] = [
  {
    id: "K1",
    serial: "HX-K-4471",
    customer: "A",
    type: "K",
    construction: "Mineral-insulated, 3 mm, alloy 600 sheath, insulated junction",
    protection: "metal-sheath",
    toleranceClass: "1",
    place: "1",
    channel: "102",
    immersionMillimetre: 380,
  },
  {
    id: "K2",
    serial: "HX-K-4472",
    customer: "A",
    type: "K",
    construction: "Mineral-insulated, 3 mm, alloy 600 sheath, insulated junction",
    protection: "metal-sheath",
    toleranceClass: "1",
    place: "2",
    channel: "103",
    immersionMillimetre: 380,
  },
  {
    id: "S1",
    serial: "HX-S-0093",
    customer: "A",
    type: "S",
    construction: "0.5 mm wire in twin-bore alumina, closed alumina sheath",
    protection: "alumina-sheath",
    toleranceClass: "2",
    place: "3",
    channel: "104",
    immersionMillimetre: 400,
  },
  {
    id: "N1",
    serial: "OB-2218",
    customer: "B",
    type: "N",
    construction: "Mineral-insulated, 4.5 mm, alloy sheath, insulated junction",
    protection: "metal-sheath",
    toleranceClass: "1",
    place: "4",
    channel: "105",
    immersionMillimetre: 380,
  },
  {
    id: "N2",
    serial: "OB-2219",
    customer: "B",
    type: "N",
    construction: "Mineral-insulated, 4.5 mm, alloy sheath, insulated junction",
    protection: "metal-sheath",
    toleranceClass: "2",
    place: "5",
    channel: "106",
    immersionMillimetre: 380,
  },
  {
    id: "S2",
    serial: "OB-0417",
    customer: "B",
    type: "S",
    construction: "0.5 mm wire in twin-bore alumina, closed alumina sheath",
    protection: "alumina-sheath",
    toleranceClass: "1",
    place: "6",
    channel: "107",
    immersionMillimetre: 400,
  },
];

/** The references, with the deviations their certificates state (E_ref − E_table, µV). */
export const references = [
  {
    id: "REF-S-01",
    serial: "EM-S-2031",
    place: "centre A",
    channel: "101",
    certificate: "NTL-26-10431",
    deviations: [
      [250, -0.9],
      [400, -1.7],
      [600, -2.6],
      [800, -3.4],
      [1000, -4.4],
      [1150, -5.3],
    ],
  },
  {
    id: "REF-S-02",
    serial: "EM-S-2032",
    place: "centre B",
    channel: "108",
    certificate: "NTL-26-10432",
    deviations: [
      [250, 0.6],
      [400, 1.2],
      [600, 2.1],
      [800, 3.3],
      [1000, 4.1],
      [1150, 4.6],
    ],
  },
] as const;

export const zeroChannel = { place: "shorted", channel: "120" } as const;

/** Every figure of the budget, once: the evidence states them and the simulation draws from them. */
export const figures = {
  referenceExpandedCelsius: 0.6,
  referenceDriftCelsius: 0.3,
  referenceInhomogeneity: 0.0002,
  voltmeterExpandedMicrovolt: 2,
  voltmeterDriftMicrovolt: 1,
  voltmeterStepMicrovolt: 0.1,
  scannerParasiticMicrovolt: 1,
  junctionCelsius: 0.05,
  uniformityCelsius: 0.5,
  referenceRepeatabilityCelsius: 0.05,
  repeatabilityDegreesOfFreedom: 12,
  noiseMicrovolt: 0.3,
  sensor: {
    K: { repeatabilityMicrovolt: 2, inhomogeneity: 0.001, leadMicrovolt: 4 },
    N: { repeatabilityMicrovolt: 2, inhomogeneity: 0.001, leadMicrovolt: 4 },
    S: { repeatabilityMicrovolt: 0.6, inhomogeneity: 0.0003, leadMicrovolt: 0 },
  },
} as const;

type Widened<T> = { readonly [K in keyof T]: T[K] extends number ? number : Widened<T[K]> };

/** The figures' shape with any numbers: `matched-run.ts` has numbers of its own. */
export type Figures = Widened<typeof figures>;

export const inputs = {
  referenceCalibration: {
    kind: "expanded",
    expanded: figures.referenceExpandedCelsius,
    coverageFactor: 2,
    unit: "celsius",
    source: `calibration certificates of the references, U with k = 2 (${invented})`,
  },
  referenceDrift: rectangular(
    figures.referenceDriftCelsius,
    "celsius",
    `history of the references since calibration (${invented})`,
  ),
  referenceInhomogeneity: rectangular(
    figures.referenceInhomogeneity,
    "relative",
    `0.02 % of the emf, common practice, no source (${invented})`,
  ),
  referenceRepeatability: {
    kind: "standard",
    standard: figures.referenceRepeatabilityCelsius,
    unit: "celsius",
    degreesOfFreedom: figures.repeatabilityDegreesOfFreedom,
    source: `pooled from 13 earlier runs (${invented})`,
  },
  voltmeterCalibration: {
    kind: "expanded",
    expanded: figures.voltmeterExpandedMicrovolt,
    coverageFactor: 2,
    unit: "microvolt",
    source: `calibration certificate of the voltmeter (${invented})`,
  },
  voltmeterDrift: rectangular(
    figures.voltmeterDriftMicrovolt,
    "microvolt",
    `drift between the voltmeter's calibrations (${invented})`,
  ),
  voltmeterResolution: rectangular(figures.voltmeterStepMicrovolt / 2, "microvolt", "half of the last digit"),
  scannerParasitic: rectangular(
    figures.scannerParasiticMicrovolt,
    "microvolt",
    `shorted-channel check of the scanner (${invented})`,
  ),
  junction: rectangular(
    figures.junctionCelsius,
    "celsius",
    `check of the ice point by thermometer (${invented})`,
  ),
  uniformity: rectangular(
    figures.uniformityCelsius,
    "celsius",
    `characterisation of the configuration (${invented})`,
  ),
} as const satisfies Readonly<Record<string, UncertaintyInput>>;

export const sensorInputs = (
  type: SimulatedSensor["type"],
): { repeatability: UncertaintyInput; inhomogeneity: UncertaintyInput; lead: UncertaintyInput } => {
  const own = figures.sensor[type];
  return {
    repeatability: {
      kind: "standard",
      standard: own.repeatabilityMicrovolt,
      unit: "microvolt",
      degreesOfFreedom: figures.repeatabilityDegreesOfFreedom,
      source: `pooled from 13 earlier runs with type ${type} (${invented})`,
    },
    inhomogeneity: rectangular(
      own.inhomogeneity,
      "relative",
      `${own.inhomogeneity * 100} % of the emf, rule of the laboratory, common practice, no source`,
    ),
    lead:
      own.leadMicrovolt === 0
        ? { kind: "zero", reason: "the sensor's own wires run to the reference junction unbroken" }
        : rectangular(own.leadMicrovolt, "microvolt", `extension cable by lot (${invented})`),
  };
};

const nothing = { kind: "zero", reason: "the simulated furnace has nothing of this kind" } as const;

/** What the simulation leaves out: every such line stands at zero, with that reason. */
export const absent = {
  line: nothing,
  sensor: { immersion: nothing, shunting: nothing, hysteresis: nothing },
  characterisation: {
    axial: { kind: "zero", reason: "included in the combined uniformity of the configuration" },
    radial: { kind: "zero", reason: "included in the combined uniformity of the configuration" },
    gradient: { kind: "zero", reason: "no gradient between places is corrected" },
  },
} as const;

/** What is drawn once for all, and what for each reference alone (`draw-truth.ts`). */
export const correlation = {
  voltmeter: { coefficient: 1, reason: "one voltmeter on one range, one draw for all channels" },
  junction: { coefficient: 1, reason: "one ice point for all channels" },
  references: {
    calibration: { coefficient: 1, reason: "certificates of one laboratory, one draw for all references" },
    drift: { coefficient: 0, reason: "each reference drifts by a draw of its own" },
    own: { coefficient: 0, reason: "each reference and channel has draws of its own" },
  },
} as const;
