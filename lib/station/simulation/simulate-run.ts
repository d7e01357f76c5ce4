import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { drawTruth, type Truth } from "./draw-truth";
import type { FurnaceResponse } from "./furnace-profile";
import { randomFrom } from "./random";
import {
  absent,
  correlation,
  inputs,
  program,
  references,
  sensorInputs,
  sensors,
  zeroChannel,
} from "./scenario";
import { simulateScans } from "./simulate-scans";

export type SimulatedRun = {
  /** The evidence as a laboratory would hold it, its windows still to be proposed. */
  readonly evidence: EvidenceInput;
  readonly truth: Truth;
  /** True emf of a sensor at a setpoint's nominal temperature, reference junction at 0 °C, µV. */
  readonly trueEmfMicrovolt: (sensorId: string, celsius: number) => number;
};

/** Start of the simulated run: a fixed date, so that calibrations are in date and bytes stay the same. */
const startedAt = "2026-10-14T06:30:00Z";

const certificateOf = (certificate: string, issuer: string, performedOn: string, dueOn: string) => ({
  certificate,
  issuer,
  performedOn,
  dueOn,
  note: "invented for the demonstration laboratory",
});

/** The evidence of the scenario with these readings, its windows still to be proposed. */
export const evidenceOf = (seed: number, channels: ReturnType<typeof simulateScans>): EvidenceInput => ({
  format: "emfolio-evidence",
  version: 2,
  title: `Simulated run, seed ${seed}`,
  origin: "simulated",
  source: "Readings from a seeded generator with known truth; people, companies and figures are invented.",
  sensors: sensors.map((sensor) => ({
    id: sensor.id,
    serial: sensor.serial,
    type: sensor.type,
    construction: sensor.construction,
    protection: sensor.protection,
    tolerance: { standard: "IEC 60584-1:2013", class: sensor.toleranceClass },
    ...sensorInputs(sensor.type),
    ...absent.sensor,
  })),
  configuration: {
    furnace: "F1",
    kind: "bare-tube",
    name: "Bare tube, bundle round the references",
    characterisation: {
      performedOn: "2026-03-10",
      validUntil: "2027-03-10",
      uniformity: inputs.uniformity,
      ...absent.characterisation,
      statement:
        "Any place of the bundle against the references' mean, half range, 40 mm about the measuring junctions, 300 °C to 1100 °C (invented)",
    },
  },
  load: [
    ...references.map((reference) => ({
      place: reference.place,
      item: { kind: "reference" as const, id: reference.id },
      channel: reference.channel,
      junction: "ICE-01",
      immersionMillimetre: 400,
      tipCheckRiseMicrovolt: 42,
    })),
    ...sensors.map((sensor) => ({
      place: sensor.place,
      item: { kind: "sensor" as const, id: sensor.id },
      channel: sensor.channel,
      junction: "ICE-01",
      immersionMillimetre: sensor.immersionMillimetre,
      tipCheckRiseMicrovolt: sensor.type === "S" ? 38 : 260,
    })),
    { ...zeroChannel, item: { kind: "shorted" as const }, junction: "ICE-01" },
  ],
  references: references.map((reference) => ({
    id: reference.id,
    serial: reference.serial,
    type: "S" as const,
    protection: "alumina-sheath" as const,
    calibration: certificateOf(
      reference.certificate,
      "Northfell Thermometry Laboratory (invented)",
      "2026-02-18",
      "2027-02-18",
    ),
    correction: {
      kind: "points" as const,
      points: reference.deviations.map(([celsius, deviationMicrovolt]) => ({
        celsius,
        deviationMicrovolt,
      })),
    },
    calibrationUncertainty: inputs.referenceCalibration,
    interpolation: absent.line,
    drift: inputs.referenceDrift,
    inhomogeneity: inputs.referenceInhomogeneity,
  })),
  referenceRepeatability: inputs.referenceRepeatability,
  heaterPickup: absent.line,
  stability: absent.line,
  correlation,
  comparison: { zero: { kind: "none", reason: "the parasitic emf is in the budget instead" }, carryOrder: 1 },
  coverage: "student",
  voltmeter: {
    id: "VM-01",
    serial: "70418",
    calibration: certificateOf(
      "CE-26-2207",
      "Calder Electrical Standards (invented)",
      "2026-04-02",
      "2027-04-02",
    ),
    corrections: [],
    calibrationUncertainty: inputs.voltmeterCalibration,
    drift: inputs.voltmeterDrift,
    resolution: inputs.voltmeterResolution,
  },
  scanner: {
    id: "SC-01",
    serial: "S-3390",
    calibration: certificateOf("INT-26-018", "the laboratory itself (invented)", "2026-06-11", "2026-12-11"),
    parasitic: inputs.scannerParasitic,
  },
  junctions: [
    {
      id: "ICE-01",
      serial: "IP-7",
      celsius: 0,
      calibration: certificateOf(
        "INT-26-021",
        "the laboratory itself (invented)",
        "2026-06-15",
        "2026-12-15",
      ),
      uncertainty: inputs.junction,
      spread: absent.line,
    },
  ],
  setpoints: program.setpointsCelsius.map((celsius) => ({ id: `SP${celsius}`, nominalCelsius: celsius })),
  scans: {
    startedAt,
    channels: channels.map((channel) => ({ ...channel, polarity: channel.seconds.map(() => 1 as const) })),
  },
  windows: [],
  sensitivities: "reference-functions",
  decisionRule: { kind: "guarded", guardBandRatio: 1 },
  rounding: { uncertaintyDigits: 2 },
});

/** One full run with known truth. The same seed gives the same readings, bit for bit. */
export const simulateRun = (seed: number): SimulatedRun => {
  const random = randomFrom(seed);
  const truth = drawTruth(random, program.setpointsCelsius.length);
  const response: FurnaceResponse = {
    overshootCelsius: 2 + 4 * random.uniform(),
    settlingSeconds: 160 + 120 * random.uniform(),
    offsetCelsius: random.rectangular(0.8),
    creepCelsiusPerHour: random.rectangular(0.15),
  };
  return {
    evidence: evidenceOf(seed, simulateScans(program, response, truth, random)),
    truth,
    trueEmfMicrovolt: trueEmf(truth),
  };
};

/** Table value and the drawn deviation of a sensor, µV: what a perfect calibration would find. */
export const trueEmf =
  (truth: Truth) =>
  (sensorId: string, celsius: number): number => {
    const sensor = sensors.find((candidate) => candidate.id === sensorId);
    const own = truth.sensors.get(sensorId);
    if (!sensor || !own) throw new RangeError(`no sensor ${sensorId} in the scenario`);
    const table = emf(referenceFunctions[sensor.type], celsius);
    if (!table.ok) throw new RangeError(table.problem.message);
    return table.value + own.deviationMicrovolt(celsius);
  };
